import { html, nothing, type TemplateResult } from 'lit-html';
import { AIR_CAUTIONS } from '../../../server/planning/display/air-cautions.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { addPaper, paperHead } from '../../paper/print-paper.ts';
import { getState } from '../../state/store.ts';
import { type AirBook, airBook } from './air-book.ts';

/** The air check for the shop's wall: the answer, the days over the limit, what is missing, and the cautions. */
addPaper({ name: 'air', screen: 'air', make: paperAir });

function paperAir(book: ScreenBook): TemplateResult | null {
  const { air: answer } = getState();
  if (answer === null) return null;
  const air = airBook(book, answer);
  const { plan, clock, times, percent } = air;
  const flow = (value: number | null): string => book.formats.figure(value, 'm3/h');
  return html`${paperHead(book, 'Air check', html`<p><b>${plan.headline}</b> ${plan.sentences.join(' ')}</p>`)}
    <section class="big-words">
      <h2>Whatever the figures say</h2>
      <ul>${AIR_CAUTIONS.map((caution) => html`<li>${caution}</li>`)}</ul>
    </section>
    <section>
      <h2>Fresh air</h2>
      <table><tbody>
        <tr><td>Needed</td><td class="number">${flow(plan.needed)}</td></tr>
        <tr><td>There is</td><td class="number">${flow(plan.airflow)}</td></tr>
        <tr><td>At its worst, times the health limit</td><td class="number">${times(plan.health.peakIndex)}</td></tr>
        <tr><td>At its worst, of the lower explosive limit</td><td class="number">${percent(plan.fire.peakPercent)}${plan.fire.cautious === null ? '' : ` (with a stand-in ${percent(plan.fire.cautious.peakPercent)})`}</td></tr>
      </tbody></table>
    </section>
    ${list(
      'What is not known',
      plan.problems.map(({ message, wayOut }) => `${message} ${wayOut}`),
    )}
    ${list(
      'Any one of these would do',
      plan.suggestions.map(({ text }) => text),
    )}
    ${plan.days.length === 0 ? nothing : daysPart(air)}
    <section>
      <h2>When the piece may come indoors</h2>
      <p>${plan.indoors.earliestMinute === null || plan.indoors.latestMinute === null ? 'Not known.' : `Between ${clock.day(plan.indoors.earliestMinute)} and ${clock.day(plan.indoors.latestMinute)}.`} Low confidence: published advice runs from a day to months.</p>
    </section>`;
}

function list(title: string, lines: readonly string[]): TemplateResult | typeof nothing {
  if (lines.length === 0) return nothing;
  return html`<section><h2>${title}</h2><ul>${lines.map((line) => html`<li>${line}</li>`)}</ul></section>`;
}

function daysPart({ plan, clock, times, percent }: AirBook): TemplateResult {
  return html`<section>
    <h2>Day by day</h2>
    <table>
      <thead><tr><th>Day</th><th class="number">× health limit</th><th class="number">of the explosive limit</th><th>Over the health limit</th></tr></thead>
      <tbody>
        ${plan.days.map(
          (day) => html`<tr>
            <td>${clock.day(day.fromMinute)}</td><td class="number">${times(day.peakIndex)}</td><td class="number">${percent(day.peakPercent)}</td>
            <td>${day.over.map(({ fromMinute, toMinute }) => clock.span(fromMinute, toMinute)).join(', ')}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
