import { html, nothing, type TemplateResult } from 'lit-html';
import { actions } from '../../state/store.ts';
import type { AirBook, AirDayView } from './air-book.ts';
import { drawCurves } from './draw-curves.ts';

/** The day and the point looked at; null for the worst day and its worst point. */
let chosenDay: string | null = null;
let chosenPoint: number | null = null;

/** The vapour over a day, with its limits. */
export function renderCurves(air: AirBook): TemplateResult {
  const { days } = air.plan;
  const worst = days.reduce((most, day) => (severity(day) > severity(most) ? day : most));
  const day = days.find(({ id }) => id === chosenDay) ?? worst;
  const highest = day.points.reduce((most, point) => (point.index > most.index ? point : most));
  const at = Math.min(chosenPoint ?? day.points.indexOf(highest), day.points.length - 1);
  const point = day.points[at] ?? highest;
  const words = `${air.clock.time(point.minute)}: ${air.times(point.index)} the health limit, ${air.percent(point.percent)} of the explosive limit${basisWords(day)}`;
  return html`<section class="panel" aria-labelledby="air-curves">
    <header><div><h2 id="air-curves">Vapour over the day</h2><p>${air.clock.longDay(day.fromMinute)}. ${overWords(air, day)}</p></div></header>
    <div class="body">
      ${renderDays(air, day)}
      <figure class="air-plot" aria-label="Vapour on ${air.clock.longDay(day.fromMinute)}">
        ${renderLegend(day)}
        ${drawCurves(air, day, point)}
        <figcaption>
          <label class="look-at">Time to look at
            <input
              type="range"
              min="0"
              max=${day.points.length - 1}
              step="1"
              .value=${String(at)}
              aria-valuetext=${words}
              @input=${(event: Event) => look(Number((event.currentTarget as HTMLInputElement).value))}
            />
          </label>
          <output>${words}</output>
        </figcaption>
      </figure>
      ${day.healthComplete ? nothing : html`<p class="aside-words">Something is not known and left out of the curve: the air can only be worse.</p>`}
    </div>
  </section>`;
}

function renderDays({ plan, clock, times }: AirBook, chosen: AirDayView): TemplateResult {
  return html`<fieldset class="air-days">
    <legend>Day</legend>
    ${plan.days.map(
      (day) => html`<label class=${day.over.length > 0 ? 'over' : ''}>
        <input
          type="radio"
          name="air-day"
          value=${day.id}
          .checked=${day.id === chosen.id}
          @change=${() => choose(day.id)}
        />
        <span>${clock.day(day.fromMinute)}<b>${times(day.peakIndex)}</b></span>
      </label>`,
    )}
  </fieldset>`;
}

function renderLegend(day: AirDayView): TemplateResult {
  const key = (name: string, words: string) =>
    html`<li><svg viewBox="0 0 24 10" aria-hidden="true"><line class=${name} x1="0" x2="24" y1="5" y2="5" /></svg>${words}</li>`;
  return html`<ul class="air-legend">
    ${key('health-line', 'times the health limit')} ${key('health-limit', 'health limit')}
    ${key('fire-line', `% of the explosive limit${basisWords(day)}`)} ${key('fire-target', '10 %, target')} ${key('fire-ceiling', '25 %, ceiling')}
    <li><svg viewBox="0 0 10 10" aria-hidden="true"><path class="coat-mark" d="M5 1 9 9H1z" /></svg>a coat begins</li>
  </ul>`;
}

function basisWords({ fireBasis }: AirDayView): string {
  if (fireBasis === 'cautious') return ' (stand-in limit)';
  return fireBasis === 'part' ? ' (known part)' : '';
}

function overWords({ clock }: AirBook, day: AirDayView): string {
  if (day.over.length === 0)
    return day.healthComplete ? 'The vapour stays under the health limit all day.' : '';
  const spans = day.over.map(({ fromMinute, toMinute }) => clock.span(fromMinute, toMinute));
  return `Over the health limit from ${spans.join(', and from ')}.`;
}

function severity(day: AirDayView): number {
  return Math.max(day.peakIndex ?? 0, (day.peakPercent ?? 0) / 10);
}

function choose(day: string): void {
  chosenDay = day;
  chosenPoint = null;
  actions.redraw();
}

function look(point: number): void {
  chosenPoint = point;
  actions.redraw();
}
