import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { RuleRow } from '../../../server/http/contract.ts';
import type { Product, ProductKind } from '../../../server/planning/product.ts';
import type { UsageRule } from '../../../server/planning/project-input.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { textInput } from '../../fields/text-input.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { choicesFrom, PER_WORDS } from './words.ts';

const KINDS: readonly ProductKind[] = [
  'consumable',
  'glue',
  'filler',
  'abrasive',
  'thinner',
  'finish',
  'hardware',
];

const PER_UNIT: Readonly<Record<UsageRule['per'], string>> = {
  'finish-area': 'm²',
  'coat-area': 'm²',
  'banding-metre': 'm',
  part: 'piece',
  project: 'project',
};

/** What is used at a rate: rags, glue, filler, gloves. */
export function renderRules(book: ScreenBook): TemplateResult {
  const { rules } = book.project.rows;
  return html`<section class="panel" aria-labelledby="rules-title">
    <header>
      <div>
        <h2 id="rules-title">Used along the way</h2>
        <p>Rags, glue, filler and the like, reckoned by area, by metre of banding, by piece or for the whole project.</p>
      </div>
      ${addAct('rules', 'Add', () => void add())}
    </header>
    <div class="body flush">
      ${
        rules.length === 0
          ? html`<p class="nothing-yet" data-list="rules" tabindex="-1">Nothing is reckoned this way yet.</p>`
          : stackTable(
              'Used along the way',
              [
                ['Product', 'wide'],
                ['For each'],
                ['Amount', 'number'],
                ['Unit'],
                ['Project needs', 'number'],
                ['Remove', 'acts'],
              ],
              repeat(
                rules,
                ({ id }) => id,
                (rule) => ruleRow(book, rule),
              ),
              { list: 'rules' },
            )
      }
    </div>
  </section>`;
}

function ruleRow(book: ScreenBook, rule: RuleRow): TemplateResult {
  const { catalogue, problems, products, project, formats } = book;
  const at = (field: string) => ({ table: 'rules', id: rule.id, field }) as const;
  const product = products.get(rule.productId);
  const name = product?.name ?? 'this line';
  const need = project.plan.needs.find(({ id }) => id === rule.productId);
  return html`<tr role="row" data-row="rules/${rule.id}">
    ${stackCell(
      'Product',
      choiceInput({
        place: at('productId'),
        label: 'Product used',
        value: rule.productId,
        choices: productChoices(catalogue, KINDS, rule.productId, 'not chosen'),
        save: saveField('rules', rule.id, 'productId'),
        problems,
      }),
      'wide',
    )}
    ${stackCell(
      'For each',
      choiceInput({
        place: at('per'),
        label: `What ${name} is reckoned by`,
        value: rule.per,
        choices: choicesFrom(PER_WORDS),
        save: saveField('rules', rule.id, 'per'),
        problems,
      }),
    )}
    ${stackCell(
      'Amount',
      textInput({
        place: at('rate'),
        label: `Amount of ${name}`,
        text: rule.rate === null ? '' : String(rule.rate),
        placeholder: catalogueRate(product, rule.per) ?? 'rate?',
        read: (typed) => readOptionalNumber(typed, { least: 0, most: 1_000_000 }),
        save: saveField('rules', rule.id, 'rate'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell('Unit', html`<span class="rule-unit">${product?.unit ?? ''} per ${PER_UNIT[rule.per]}</span>`)}
    ${stackCell(
      'Project needs',
      need === undefined || product === undefined
        ? ''
        : figureButton(`needs/${need.id}/need`, formats.amount(need.need, product.unit), `Need of ${name}`),
      'number',
    )}
    ${stackCell('', removeAct('rules', rule.id, name), 'acts')}
  </tr>`;
}

/** The catalogue's own rate, shown where none is typed. Pieces such as rags are known by the area one serves. */
function catalogueRate(product: Product | undefined, per: UsageRule['per']): string | null {
  const { usePerMetre, usePerArea, areaPerPiece } = product?.figures ?? {};
  if (per === 'part' || per === 'project') return null;
  if (per === 'banding-metre')
    return usePerMetre?.typical == null ? null : `${usePerMetre.typical} (catalogue)`;
  if (usePerArea?.typical != null) return `${usePerArea.typical} (catalogue)`;
  return areaPerPiece?.typical == null ? null : `1 per ${areaPerPiece.typical} m²`;
}

async function add(): Promise<void> {
  focusRow(
    'rules',
    await addRow('rules', { productId: '', per: 'finish-area', rate: null }, 'add a usage rule'),
  );
}
