import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { figureButton } from '../../panels/figure-button.ts';
import type { AirBook } from './air-book.ts';

/** Every liquid of every coat, in order of time. */
export function renderCoats({ formats }: ScreenBook, { plan, clock, times }: AirBook): TemplateResult {
  const coats = plan.coats.toSorted((one, other) => one.startMinute - other.startMinute);
  return html`<section class="panel" aria-labelledby="air-coats">
    <header><div><h2 id="air-coats">What each coat gives off</h2><p>Alone: how high the vapour would stand were this coat alone in the air.</p></div></header>
    <div class="body flush air-coats">
      ${stackTable(
        'What each coat gives off',
        [
          ['When'],
          ['Coat', 'wide'],
          ['Liquid', 'number'],
          ['Vapour', 'number'],
          ['Alone, × health limit', 'number'],
        ],
        repeat(
          coats,
          ({ id }) => id,
          ({ id, name, startMinute, litres, vapourG, peakIndex }) => {
            const at = (field: string): string => `air/coats/${encodeURIComponent(id)}/${field}`;
            return html`<tr role="row">
              ${stackCell('When', clock.moment(startMinute))} ${stackCell('Coat', name, 'lead')}
              ${stackCell('Liquid', figureButton(at('litres'), formats.volume(litres)), 'number')}
              ${stackCell('Vapour', figureButton(at('vapourG'), formats.figure(vapourG, 'g')), 'number')}
              ${stackCell('Alone, × health limit', figureButton(at('peakIndex'), times(peakIndex)), 'number')}
            </tr>`;
          },
        ),
      )}
    </div>
  </section>`;
}
