import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { setRefusal } from '../../fields/faults.ts';
import { fieldState } from '../../fields/field-message.ts';
import { focusAct } from '../../fields/focus-row.ts';
import { placeKey } from '../../fields/place.ts';
import { saveSetting } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { icon } from '../../shell/icons.ts';
import { reordered } from './reordered.ts';

const PLACE = { table: 'settings', id: null, field: 'bandingOrder' } as const;

/** The order in which edges are banded; buttons or Alt with the arrow keys move an edge. */
export function renderBandingOrder({ settings, problems }: ScreenBook): TemplateResult {
  const order = settings.bandingOrder;
  const { message } = fieldState(problems, PLACE);
  const move = async (from: number, to: number, ...acts: string[]): Promise<void> => {
    const edge = order[from];
    if (edge === undefined || to < 0 || to >= order.length) return;
    setRefusal(PLACE, await saveSetting<readonly string[]>('bandingOrder')(reordered(order, from, to)));
    focusAct('order', edge, ...acts);
  };
  return html`<div class="field setting-wide" role="group" aria-labelledby="order-label">
    <span id="order-label">Order of banding</span>
    <ol class="order" data-at=${placeKey(PLACE)} tabindex="-1">
      ${repeat(
        order,
        (edge) => edge,
        (edge, index) => html`<li
          data-row="order/${edge}"
          @keydown=${(event: KeyboardEvent) => {
            if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
            event.preventDefault();
            const up = event.key === 'ArrowUp';
            void move(index, index + (up ? -1 : 1), up ? 'up' : 'down', up ? 'down' : 'up');
          }}
        >
          <span>${index + 1}. ${edge}</span>
          <button
            type="button"
            class="button plain icon"
            data-act="up"
            aria-label="Band the ${edge} edge earlier"
            title="Earlier (Alt+Up)"
            ?disabled=${index === 0}
            @click=${() => void move(index, index - 1, 'up', 'down')}
          >
            ${icon('up')}
          </button>
          <button
            type="button"
            class="button plain icon"
            data-act="down"
            aria-label="Band the ${edge} edge later"
            title="Later (Alt+Down)"
            ?disabled=${index === order.length - 1}
            @click=${() => void move(index, index + 1, 'down', 'up')}
          >
            ${icon('down')}
          </button>
        </li>`,
      )}
    </ol>
    ${message === nothing ? nothing : message}
    <small>the last one is seen most: its strip covers the others' ends</small>
  </div>`;
}
