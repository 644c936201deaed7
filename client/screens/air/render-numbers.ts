import { html, nothing, type TemplateResult } from 'lit-html';
import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stat } from '../../fields/stat.ts';
import type { AirBook } from './air-book.ts';

/** The numbers behind the verdict; each opens its working. */
export function renderNumbers({ formats }: ScreenBook, { plan, times, percent }: AirBook): TemplateResult {
  const { fire, health } = plan;
  const flow = (value: number | null): string => formats.figure(value, 'm3/h');
  const cautious = fire.cautious;
  return html`<section class="panel" aria-labelledby="air-numbers">
    <header><div><h2 id="air-numbers">Fresh air and limits</h2></div></header>
    <div class="body">
      <dl class="stats">
        ${stat('Fresh air needed', 'air/needed', flow(plan.needed), { lead: true, below: 'the larger of fire and health' })}
        ${stat('Fresh air there is', 'air/airflow', flow(plan.airflow), { lead: true, ...(plan.airChangesPerHour === null ? {} : { below: html`${trimmedText(plan.airChangesPerHour, 1)} air changes an hour` }) })}
        ${stat('Room', 'air/volumeM3', formats.figure(plan.volumeM3, 'm3'))}
      </dl>
      <h3 class="group-title">For your lungs: times the health limit; it must stay under 1</h3>
      <dl class="stats">
        ${stat('At its worst', 'air/health/peakIndex', times(health.peakIndex), { lead: true, below: 'against limits for a shift' })}
        ${stat('Worst 8 hours', 'air/health/eightHourIndex', times(health.eightHourIndex), { below: 'on average' })}
        ${stat('Worst 15 minutes', 'air/health/shortTermIndex', times(health.shortTermIndex), { below: 'against short-term limits' })}
        ${stat('Ceiling', 'air/health/ceilingIndex', times(health.ceilingIndex), { below: 'limits never to be passed' })}
        ${stat('Fresh air for this', 'air/health/needed', flow(health.needed), { below: 'exact solution' })}
        ${stat('By formula', 'air/health/steadyState', flow(health.steadyState), { below: 'steady state, beside it' })}
        ${stat('Clear after last coat', 'air/health/airOut', health.neverAirsOut ? 'never' : formats.figure(health.airOut, 'min'), { below: health.airOut === 0 ? 'the last coat stays under' : 'and stays clear' })}
      </dl>
      <h3 class="group-title">Against fire: percent of the lower explosive limit; under 10 % is the target, 25 % the ceiling</h3>
      <dl class="stats">
        ${stat('At its worst', 'air/fire/peakPercent', percent(fire.peakPercent), { lead: true, ...(fire.verdict === 'cannot-tell' && fire.peakPercent !== null ? { below: 'by the known part' } : {}) })}
        ${stat('Fresh air for this', 'air/fire/needed', flow(fire.needed), { below: 'exact solution' })}
        ${
          cautious === null
            ? nothing
            : html`${stat('With a stand-in', 'air/fire/cautious/peakPercent', percent(cautious.peakPercent), { below: 'lowest limit found elsewhere' })}
              ${stat('Air for that', 'air/fire/cautious/needed', flow(cautious.needed), { below: 'a stand-in, not an answer' })}`
        }
      </dl>
      ${cautious === null ? nothing : html`<p class="aside-words">Stand-in: ${cautious.assumed.join('; ')}.</p>`}
      <h3 class="group-title">Heat that goes out with the air</h3>
      <dl class="stats">
        ${stat('While the fan runs', 'air/heatW', formats.figure(plan.heatW, 'W'), plan.heatW === null ? { below: 'enter the temperature outside' } : {})}
        ${stat('While coats are wet', 'air/heatKwh', formats.figure(plan.heatKwh, 'kWh'))}
        ${stat('Costs', 'air/heatCost', formats.money(plan.heatCost), plan.heatCost === null ? { below: 'enter the price of heat' } : {})}
      </dl>
    </div>
  </section>`;
}
