import { scaleLinear } from 'd3-scale';
import { html, nothing, svg, type TemplateResult } from 'lit-html';
import type { LedgerAnswer } from '../../../server/http/contract.ts';
import type { Formats } from '../../format/formats.ts';
import { actions } from '../../state/store.ts';
import { dayOf, dayText, shortDayText } from './day-text.ts';

type SpendPoint = LedgerAnswer['series'][number];
type Spent = 'orderedMinor' | 'paidMinor';

export interface SpendChart {
  /** In order of date, one a day; each counts on from the one before. */
  readonly points: readonly SpendPoint[];
  /** Drawn across as the line not to be crossed; null when there is no budget. */
  readonly budgetMinor: number | null;
  readonly formats: Formats;
  /** The last day of the axis: today, or later. */
  readonly untilDate: string;
}

/** Lines across the chart: about so many. */
const LINES = 4;
/** Room above the highest value, as a share of it. */
const HEADROOM = 1.06;

/** The day the reader looks at, as days since the chart's first; null for the last one. */
let lookedAt: number | null = null;

/**
 * Money over time, ordered and paid, as steps that only purchases make. The drawing stretches with the page; its words do
 * not. A slider below walks through the days, so that every value can be read with the keyboard or a finger.
 */
export function spendChart(chart: SpendChart): TemplateResult {
  const { points, budgetMinor, formats, untilDate } = chart;
  const first = points[0];
  if (first === undefined) return html``;
  const start = dayOf(first.date) - 1;
  const days = Math.max(dayOf(untilDate), dayOf(points.at(-1)?.date ?? untilDate)) - start;
  const values = points.flatMap(({ orderedMinor, paidMinor }) => [orderedMinor, paidMinor]);
  const most = Math.max(budgetMinor ?? 0, ...values, 1);
  const x = scaleLinear().domain([0, days]).range([0, 100]);
  const y = scaleLinear()
    .domain([Math.min(0, ...values), most * HEADROOM])
    .range([100, 0]);
  const day = Math.min(lookedAt ?? days, days);
  const at = points.findLast(({ date }) => dayOf(date) - start <= day) ?? null;
  const ordered = at?.orderedMinor ?? 0;
  const paid = at?.paidMinor ?? 0;
  const words = `${dayText(start + day)}: ${formats.money(ordered)} ordered, ${formats.money(paid)} paid`;
  const line = (of: Spent): string => steps(points, of, start, days, x, y);
  return html`<figure class="spend" aria-label="Spent over time">
    <figcaption>
      <output>By ${dayText(start + day)}: <b>${formats.money(paid)}</b> paid, <b>${formats.money(ordered)}</b> ordered</output>
      <ul class="legend" aria-label="Lines">
        <li><span class="key line-paid"></span>paid</li>
        <li><span class="key line-ordered"></span>ordered</li>
        ${budgetMinor === null ? nothing : html`<li><span class="key line-budget"></span>budget ${formats.money(budgetMinor)}</li>`}
      </ul>
    </figcaption>
    <div class="spend-plot" aria-hidden="true">
      ${y
        .ticks(LINES)
        .map(
          (value) => html`<span class="spend-tick" style="top: ${y(value)}%">${formats.money(value)}</span>`,
        )}
      <div class="spend-drawing">
        <svg viewBox="0 0 100 100" preserveAspectRatio="none">
          ${y.ticks(LINES).map((value) => svg`<line class="rule" x1="0" x2="100" y1=${y(value)} y2=${y(value)} />`)}
          <path class="under" d="${line('paidMinor')} V ${y(0)} H 0 Z" />
          <path class="line ordered" d=${line('orderedMinor')} />
          <path class="line paid" d=${line('paidMinor')} />
          ${
            budgetMinor === null
              ? nothing
              : svg`<line class="budget" x1="0" x2="100" y1=${y(budgetMinor)} y2=${y(budgetMinor)} />`
          }
          <line class="looked-at" x1=${x(day)} x2=${x(day)} y1="0" y2="100" />
        </svg>
        <span class="spend-dot" style="left: ${x(day)}%; top: ${y(paid)}%"></span>
      </div>
    </div>
    <div class="spend-days">
      <input
        type="range"
        min="0"
        max=${days}
        step="1"
        .value=${String(day)}
        aria-label="Day to look at"
        aria-valuetext=${words}
        @input=${(event: Event) => look(Number((event.currentTarget as HTMLInputElement).value))}
      />
      <span>${shortDayText(start)}</span><span>${shortDayText(start + days)}</span>
    </div>
  </figure>`;
}

function look(day: number): void {
  lookedAt = day;
  actions.redraw();
}

/** A step on each day of spending, level in between, to the end of the axis. */
function steps(
  points: readonly SpendPoint[],
  of: Spent,
  start: number,
  days: number,
  x: (day: number) => number,
  y: (minor: number) => number,
): string {
  const climbs = points.map(
    (point) => `H ${x(dayOf(point.date) - start).toFixed(2)} V ${y(point[of]).toFixed(2)}`,
  );
  return `M 0 ${y(0).toFixed(2)} ${climbs.join(' ')} H ${x(days).toFixed(2)}`;
}
