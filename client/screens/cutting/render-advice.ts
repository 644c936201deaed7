import './search.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import type { AdviceView } from '../../../server/http/contract.ts';
import { actions } from '../../state/store.ts';

/** What small changes would save, each worked out on a plan of its own. */
export function renderAdvice(advice: readonly AdviceView[]): TemplateResult | typeof nothing {
  if (advice.length === 0) return nothing;
  return html`<section class="cutting-advice">
    <h3>Worth knowing</h3>
    <ul>
      ${advice.map(
        ({ sentence, partIds: [partId] }) => html`<li>
        ${sentence}
        ${
          partId === undefined
            ? nothing
            : html`<button type="button" class="link" @click=${() => showPart(partId)}>Go to the part</button>`
        }
      </li>`,
      )}
    </ul>
  </section>`;
}

function showPart(id: string): void {
  actions.selectPart(id);
  actions.goTo({ table: 'parts', id, field: 'name' });
}
