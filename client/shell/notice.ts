import { html, nothing, type TemplateResult } from 'lit-html';
import type { Change } from '../../server/http/contract.ts';
import { fieldWords } from '../panels/place-words.ts';
import { type AppState, actions, type Notice } from '../state/store.ts';
import { icon } from './icons.ts';

/** How long a mere word stays; errors stay until dismissed. */
const INFO_STAYS_MS = 6000;
/** Longer when there is something to decide. */
const OFFER_STAYS_MS = 20_000;
/** How many kept entries the notice spells out. */
const SPELT_OUT = 3;

let timed: Notice | null = null;

/** What the user should know, read out politely, with the edit that was not taken and a way to apply it again. */
export function renderNotice({ notice }: AppState): TemplateResult {
  if (notice !== null && notice !== timed && notice.kind === 'info')
    setTimeout(
      () => {
        if (timed === notice) actions.dismissNotice();
      },
      notice.offer === undefined ? INFO_STAYS_MS : OFFER_STAYS_MS,
    );
  timed = notice;
  return html`<div class="notices" role="status" aria-live="polite">
    ${
      notice === null
        ? nothing
        : html`<div class="notice ${notice.kind}">
          <div class="notice-words">
            <strong>${notice.text}</strong>
            ${notice.again === undefined ? nothing : html`<span class="kept">Not applied yet: ${keptWords(notice.again.changes)}</span>`}
            ${notice.wayOut === undefined ? nothing : html`<span>${notice.wayOut}</span>`}
          </div>
          ${
            notice.again === undefined
              ? nothing
              : html`<button class="button" @click=${() => void actions.applyAgain()}>Apply again</button>`
          }
          ${
            notice.offer === undefined
              ? nothing
              : html`<button class="button" @click=${() => take(notice)}>${notice.offer.label}</button>`
          }
          <button class="button plain icon" aria-label="Dismiss" @click=${actions.dismissNotice}>${icon('close')}</button>
        </div>`
    }
  </div>`;
}

function take({ offer }: Notice): void {
  actions.dismissNotice();
  offer?.carryOut();
}

/** The typed values and their fields, so that they can be read and typed again if need be. */
function keptWords(changes: readonly Change[]): string {
  const texts = changes.flatMap((change) =>
    change.op === 'update' || change.op === 'insert' || change.op === 'settings'
      ? Object.entries(change.values)
          .filter(([, value]) => value !== '')
          .map(([field, value]) => `${fieldWords(field)} “${String(value)}”`)
      : [`${change.op} of a row`],
  );
  const more = texts.length - SPELT_OUT;
  return `${texts.slice(0, SPELT_OUT).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
