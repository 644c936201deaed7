import { html, nothing, type TemplateResult } from 'lit-html';
import { actions } from '../../state/store.ts';
import type { CalendarBook } from './calendar-book.ts';

/** What is in the way when nothing fits, and changes that were tried and free it; a button makes one. */
export function renderBlocks({ answer, plan, clock }: CalendarBook): TemplateResult | typeof nothing {
  if (plan.blocks.length === 0) return nothing;
  return html`<section class="standing-box error" aria-labelledby="blocks-title">
    <h2 id="blocks-title">What is in the way</h2>
    ${plan.blocks.map(
      ({ message, waysOut }, block) => html`<p>${message}</p>
        ${
          waysOut.length === 0
            ? html`<p>No single change that was tried is enough: change several at once.</p>`
            : html`<ul class="ways-out">
              ${waysOut.map((way, index) => {
                const changes = answer.wayOutChanges[block]?.[index] ?? [];
                return html`<li>
                  <span>${way.message} <small>then ready ${clock.moment(way.readyToAssembleMinute)}</small></span>
                  ${
                    changes.length === 0
                      ? nothing
                      : html`<button
                          type="button"
                          class="button"
                          aria-label="Do this: ${way.message}"
                          @click=${() => void actions.change(changes, way.message.replace(/\.$/, '').toLowerCase())}
                        >
                          Do this
                        </button>`
                  }
                </li>`;
              })}
            </ul>`
        }`,
    )}
  </section>`;
}
