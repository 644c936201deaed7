import { html, nothing, svg, type TemplateResult } from 'lit-html';
import type { BudgetRow, Change, LedgerAnswer } from '../../../server/http/contract.ts';
import { barScale } from '../../drawing/bar-scale.ts';
import { saveChanges } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { actions } from '../../state/store.ts';
import { CATEGORY_WORDS } from '../buy/words.ts';

type Heading = LedgerAnswer['headings'][number];
type Amount = Exclude<keyof Heading, 'id'>;

const SPENDING = ['planned', 'ordered', 'paid', 'forecast'] as const satisfies readonly Amount[];

/** Headings without any money are shown too. Nothing of this is stored. */
let showAll = false;

/** Budget, plan and spending by heading, as bars on one scale and as numbers. */
export function renderBudget(book: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  const { formats } = book;
  const used = ledger.headings.filter(hasMoney);
  const shown = showAll || used.length === 0 ? ledger.headings : used;
  const scale = barScale(
    Math.max(
      0,
      ...ledger.headings.flatMap(({ budget, forecast, ordered, paid }) =>
        [budget, forecast, ordered, paid].map(({ value }) => value ?? 0),
      ),
    ),
  );
  const total = (field: Amount, name: string) =>
    stackCell(
      name,
      heldFigure(formats, `ledger/totals/${field}`, ledger.totals[field], `${name}, all headings`),
      'number',
    );
  return html`<section class="panel" aria-labelledby="budget-title">
    <header>
      <div>
        <h2 id="budget-title">Budget by heading</h2>
        <p>Enter what each heading may cost; leave it empty for no budget. Amounts include tax; delivery stands under Other.</p>
      </div>
      ${
        used.length === ledger.headings.length || used.length === 0
          ? nothing
          : html`<button type="button" class="button" aria-pressed=${showAll ? 'true' : 'false'} @click=${toggle}>All headings</button>`
      }
    </header>
    <div class="body flush">
      <ul class="legend" aria-label="What the bars show">
        <li><span class="key paid"></span>paid</li>
        <li><span class="key ordered"></span>ordered</li>
        <li><span class="key forecast"></span>forecast</li>
        <li><span class="key budget"></span>budget</li>
      </ul>
      ${stackTable(
        'Budget by heading',
        [
          ['Heading', 'wide'],
          ['Budget', 'number'],
          ['Planned', 'number'],
          ['Ordered', 'number'],
          ['Paid', 'number'],
          ['Forecast', 'number'],
          ['Left', 'number'],
        ],
        shown.map((heading) => headingRow(book, heading, scale)),
        {
          list: 'budgets',
          extraClass: 'budget-table',
          foot: html`<tr role="row">
            ${stackCell('', 'All headings', 'lead')} ${total('budget', 'Budget')} ${total('planned', 'Planned')}
            ${total('ordered', 'Ordered')} ${total('paid', 'Paid')} ${total('forecast', 'Forecast')} ${total('left', 'Left')}
          </tr>`,
        },
      )}
    </div>
  </section>`;
}

function hasMoney(heading: Heading): boolean {
  return heading.budget.value !== null || SPENDING.some((field) => heading[field].value !== 0);
}

function toggle(): void {
  showAll = !showAll;
  actions.redraw();
}

function headingRow(book: ScreenBook, heading: Heading, scale: (value: number) => number): TemplateResult {
  const { formats } = book;
  const words = CATEGORY_WORDS[heading.id];
  const amount = (field: Amount, name: string) =>
    stackCell(
      name,
      heading[field].value === null && field === 'left'
        ? html`<span class="none">no budget</span>`
        : heldFigure(formats, `ledger/headings/${heading.id}/${field}`, heading[field], `${name}, ${words}`),
      'number',
    );
  const over = (heading.left.value ?? 0) < 0;
  return html`<tr role="row" data-heading=${heading.id} class=${over ? 'over' : ''}>
    ${stackCell(
      'Heading',
      html`<span class="item">${words}</span>${over ? html` <span class="chip warning">over</span>` : nothing}${bar(heading, scale)}`,
      'lead',
    )}
    ${stackCell('Budget', budgetInputs(book, heading), 'number')} ${amount('planned', 'Planned')}
    ${amount('ordered', 'Ordered')} ${amount('paid', 'Paid')} ${amount('forecast', 'Forecast')} ${amount('left', 'Left')}
  </tr>`;
}

/** Paid lies on ordered, ordered on the forecast; the budget is a line across. The numbers beside it say the same. */
function bar({ budget, forecast, ordered, paid }: Heading, scale: (value: number) => number): TemplateResult {
  const part = (name: string, value: number | null) =>
    svg`<rect class=${name} width="${scale(Math.max(0, value ?? 0))}%" height="100%" />`;
  return html`<svg class="budget-bar" aria-hidden="true">
    ${part('forecast', forecast.value)} ${part('ordered', ordered.value)} ${part('paid', paid.value)}
    ${
      budget.value === null
        ? nothing
        : svg`<line class="budget" x1="${scale(budget.value)}%" x2="${scale(budget.value)}%" y1="0" y2="100%" />`
    }
  </svg>`;
}

function budgetInputs(book: ScreenBook, heading: Heading): unknown {
  const rows = book.project.rows.budgets.filter(({ category }) => category === heading.id);
  return rows.length === 0
    ? budgetInput(book, heading, null)
    : rows.map((row) => budgetInput(book, heading, row));
}

function budgetInput(
  { settings, problems }: ScreenBook,
  heading: Heading,
  row: BudgetRow | null,
): TemplateResult {
  const words = CATEGORY_WORDS[heading.id].toLowerCase();
  return html`<span data-row=${row === null ? nothing : `budgets/${row.id}`}
    >${textInput<number | null>({
      place: { table: 'budgets', id: row?.id ?? `for-${heading.id}`, field: 'amountMinor' },
      label: `Budget for ${words}, ${settings.currency}`,
      text: moneyInput(row?.amountMinor ?? null, settings.currency),
      placeholder: 'none',
      read: (typed) => readMoney(typed, settings.currency),
      save: (amountMinor) => saveChanges(changes(heading, row, amountMinor), `set the budget for ${words}`),
      problems,
      numeric: true,
    })}</span
  >`;
}

function changes(
  { id: category }: Heading,
  row: BudgetRow | null,
  amountMinor: number | null,
): readonly Change[] {
  if (row === null)
    return amountMinor === null
      ? []
      : [{ op: 'insert', table: 'budgets', values: { category, amountMinor } }];
  return amountMinor === null
    ? [{ op: 'delete', table: 'budgets', id: row.id }]
    : [{ op: 'update', table: 'budgets', id: row.id, values: { amountMinor } }];
}
