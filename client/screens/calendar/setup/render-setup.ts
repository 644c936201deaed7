import { html, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { renderArrivals } from './render-arrivals.ts';
import { renderClimate } from './render-climate.ts';
import { renderDaysOff } from './render-days-off.ts';
import { renderDrying } from './render-drying.ts';
import { renderHours } from './render-hours.ts';
import { renderShop } from './render-shop.ts';

/** What the plan is made from: when there are hands, how much room, what air, and what is assumed of drying. */
export function renderSetup(book: ScreenBook): TemplateResult {
  return html`<div>
      <h2 id="setup-title" class="setup-title" tabindex="-1">Shop set-up</h2>
      <p>The plan follows from what stands here. Every change is taken at once, planned anew, and can be undone.</p>
    </div>
    <div class="setup-columns">
      ${renderHours(book)} ${renderShop(book)} ${renderClimate(book)} ${renderDrying(book)} ${renderDaysOff(book)} ${renderArrivals(book)}
    </div>`;
}

/** One subject of the set-up. */
export function setupPanel(
  id: string,
  title: string,
  words: string,
  body: TemplateResult,
  flush = false,
): TemplateResult {
  return html`<section class="panel" aria-labelledby="setup-${id}">
    <header>
      <div><h3 id="setup-${id}">${title}</h3><p>${words}</p></div>
    </header>
    <div class="body ${flush ? 'flush' : ''}">${body}</div>
  </section>`;
}
