import { html, nothing, type TemplateResult } from 'lit-html';
import type { BuyingAnswer } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { heldFigure } from '../../panels/held-figure.ts';

/** Why these suppliers: what the choice comes to, what no choice can beat, and what choosing line by line would cost. */
export function renderChoice(
  { formats }: ScreenBook,
  { choice, baskets }: BuyingAnswer,
): TemplateResult | typeof nothing {
  if (baskets.length === 0) return nothing;
  const { total, bound, lineByLine, proven } = choice;
  const number = (field: 'total' | 'bound' | 'lineByLine', name: string) =>
    heldFigure(formats, `buying/choice/${field}`, choice[field], name);
  const saves = total.value !== null && lineByLine.value !== null && lineByLine.value > total.value;
  return html`<section class="panel choice" aria-labelledby="choice-title">
    <div class="body">
      <h2 id="choice-title">Why these suppliers</h2>
      <p>
        Goods, delivery and surcharges together come to ${number('total', 'Goods, delivery and surcharges')} before tax.
        ${
          proven
            ? 'It is proven that no other choice of suppliers costs less.'
            : bound.value === null
              ? ''
              : html`No choice can cost less than ${number('bound', 'Least any choice can cost')}; whether one between exists is not settled.`
        }
        ${
          saves
            ? html`Each line bought where it is cheapest would come to ${number('lineByLine', 'Each line where it is cheapest')}, so
              choosing together saves the difference.`
            : 'Each line bought where it is cheapest would cost the same.'
        }
      </p>
    </div>
  </section>`;
}
