import '../../fields/fields.css';
import './ledger.css';
import './paper-ledger.ts';
import { html, nothing, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import { answerProblems } from '../../fields/answer-problems.ts';
import { arrive } from '../../fields/arrive.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { screenIcon } from '../../fields/screen-icons.ts';
import { heldFigure } from '../../panels/held-figure.ts';
import { printPaper } from '../../paper/print-paper.ts';
import { icon } from '../../shell/icons.ts';
import { type AppState, actions } from '../../state/store.ts';
import { renderBudget } from './render-budget.ts';
import { renderComparison } from './render-comparison.ts';
import { renderCostShares } from './render-cost-shares.ts';
import { renderHours } from './render-hours.ts';
import { renderOrderMoney } from './render-order-money.ts';
import { renderPayments } from './render-payments.ts';
import { renderPrices } from './render-prices.ts';
import { spendChart } from './spend-chart.ts';

/** What the project may cost, costs, and will have cost at the end. */
export function renderLedgerScreen(state: AppState): TemplateResult {
  const plain = screenBook(state);
  if (plain === null) return html``;
  actions.wantAnswer('ledger');
  actions.wantAnswer('attachments');
  arrive(state);
  const { ledger } = state;
  const book = ledger === null ? plain : { ...plain, problems: [...plain.problems, ...ledger.problems] };
  return html`<section class="page ledger-screen" aria-labelledby="ledger-title" data-current=${ledger?.revision === book.project.revision ? 'yes' : 'no'}>
    <div class="page-head">
      <div>
        <h1 id="ledger-title">Ledger</h1>
        ${
          ledger === null
            ? html`<p role="status">The account is being drawn up.</p>`
            : html`<p role="status" class="ledger-answer">${answerWords(book, ledger)}</p>`
        }
      </div>
      <button type="button" class="button" @click=${() => printPaper('ledger')}>${screenIcon('print')} Print</button>
    </div>
    ${ledger === null ? nothing : renderAll(book, ledger)}
  </section>`;
}

function renderAll(book: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  return html`${answerProblems(ledger.problems)} ${renderStanding(book, ledger)} ${renderBudget(book, ledger)}
  ${
    ledger.series.length === 0
      ? nothing
      : html`<section class="panel" aria-labelledby="spend-title">
        <header><h2 id="spend-title">Spent over time</h2></header>
        <div class="body">
          ${spendChart({ points: ledger.series, budgetMinor: ledger.totals.budget.value, formats: book.formats, untilDate: ledger.today })}
        </div>
      </section>`
  }
  ${renderOrderMoney(book, ledger)} ${renderPayments(book, ledger)} ${renderComparison(book, ledger)} ${renderHours(book)}
  ${renderCostShares(book, ledger)} ${renderPrices(book, ledger)}`;
}

/** The account in one sentence. */
function answerWords({ formats }: ScreenBook, { forecast, totals }: LedgerAnswer): TemplateResult {
  const left = totals.left.value;
  const end =
    forecast.value === null
      ? 'What it will have cost at the end is not known yet.'
      : `At the end it will have cost about ${formats.money(forecast.value)}.`;
  return html`${formats.money(totals.paid.value)} paid of ${formats.money(totals.ordered.value)} ordered. ${end}
  ${
    left === null
      ? nothing
      : left < 0
        ? html`<span class="chip warning">${icon('problem')} over the budget</span>`
        : html`<span class="chip good">${icon('check')} within the budget</span>`
  }`;
}

function renderStanding({ formats, settings }: ScreenBook, ledger: LedgerAnswer): TemplateResult {
  const { totals } = ledger;
  const one = (name: string, path: string, figure: LedgerAnswer['forecast'], below = '', lead = false) =>
    html`<div class="stat ${lead ? 'lead' : ''}">
      <dt>${name}</dt>
      <dd>${heldFigure(formats, `ledger/${path}`, figure, name)}${below === '' ? nothing : html`<small>${below}</small>`}</dd>
    </div>`;
  return html`<dl class="stats ledger-standing">
    ${one('Forecast', 'forecast', ledger.forecast, settings.taxPercent === null ? 'before tax' : 'with tax', true)}
    ${totals.budget.value === null ? nothing : one('Budget', 'totals/budget', totals.budget)}
    ${totals.budget.value === null ? nothing : one('Left of the budget', 'totals/left', totals.left, 'without contingency')}
    ${one('Ordered', 'totals/ordered', totals.ordered)} ${one('Paid', 'totals/paid', totals.paid)}
    ${one('Still to pay', 'totals/open', totals.open, 'of what is ordered')}
    ${one('Still to order', 'totals/toOrder', totals.toOrder)}
    ${one('Contingency', 'contingency', ledger.contingency, `${settings.contingencyPercent} % of what is to order`)}
  </dl>`;
}
