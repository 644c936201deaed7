import { html, nothing, svg, type TemplateResult } from 'lit-html';
import type { PlanView } from '../../../server/http/contract.ts';
import { barScale } from '../../drawing/bar-scale.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { figureButton } from '../../panels/figure-button.ts';

export type Coat = PlanView['recipes'][number]['coats'][number];

/** What each coat of a step takes: the range its coverage leaves open, and the amount reckoned with. */
export function renderCoats(
  book: ScreenBook,
  recipeId: string,
  coats: readonly Coat[],
  most: number,
): TemplateResult | typeof nothing {
  const wet = coats.filter((coat) => coat.method !== null);
  if (wet.length === 0) return nothing;
  return html`<ul class="coats">
    ${wet.map((coat, index) => renderWet(book, `recipes/${recipeId}/coats/${coat.id}`, coat, most, wet.length === 1 ? '' : `Coat ${index + 1}`))}
  </ul>`;
}

/** What a dry step uses up: pieces of abrasive, pass by pass. */
export function renderPieces(
  book: ScreenBook,
  recipeId: string,
  coats: readonly Coat[],
): TemplateResult | typeof nothing {
  const dry = coats.filter((coat) => coat.method === null && coat.pieces !== null);
  if (dry.length === 0) return nothing;
  return html`<span class="dry-pieces">
    ${dry.map((coat, index) => {
      const at = `recipes/${recipeId}/coats/${coat.id}/pieces`;
      return html`${index === 0 ? nothing : ' + '}${figureButton(at, book.formats.count(coat.pieces), `Pieces, pass ${index + 1}`)}`;
    })}
    ${dry.length === 1 && dry[0]?.pieces === 1 ? 'piece' : 'pieces'}
  </span>`;
}

function renderWet(book: ScreenBook, at: string, coat: Coat, most: number, name: string): TemplateResult {
  const { formats, settings } = book;
  const { coverageChoice } = settings;
  // Low coverage takes the most liquid, so the numbers run from high coverage to low.
  const columns = [
    ['high', 'litresAtHighCoverage', 'least'],
    ['typical', 'litresAtTypicalCoverage', 'typical'],
    ['low', 'litresAtLowCoverage', 'most'],
  ] as const;
  const ranged = coat.litresAtHighCoverage !== coat.litresAtLowCoverage;
  const label = name === '' ? coat.name : `${name}, ${coat.name}`;
  return html`<li class="coat">
    <span class="coat-name">${name}</span>
    ${rangeBar(coat, most)}
    <span class="coat-numbers ${ranged ? '' : 'single'}">
      ${columns
        .filter(([choice]) => ranged || choice === coverageChoice)
        .map(([choice, field, word]) => {
          const chosen = choice === coverageChoice;
          const path = `${at}/${chosen ? 'litres' : field}`;
          const value = chosen ? coat.litres : coat[field];
          return html`<span class=${chosen ? 'chosen' : ''}
            >${figureButton(path, formats.volume(value), `${label}, ${word}`)}<small>${ranged ? word : ''}</small></span
          >`;
        })}
    </span>
    ${shares(book, at, coat)}
  </li>`;
}

/** A line from the least to the most liquid, a tick at typical coverage, a dot at what is reckoned with. */
function rangeBar(coat: Coat, most: number): TemplateResult {
  const scale = barScale(most);
  const {
    litresAtHighCoverage: least,
    litresAtTypicalCoverage: typical,
    litresAtLowCoverage: top,
    litres,
  } = coat;
  if (least === null || top === null || litres === null) return html`<span class="range"></span>`;
  return html`<svg class="range" aria-hidden="true">
    <line class="track" x1="0" x2="100%" y1="50%" y2="50%" />
    <line class="reach" x1="${scale(least)}%" x2="${scale(top)}%" y1="50%" y2="50%" />
    ${typical === null ? nothing : svg`<line class="tick" x1="${scale(typical)}%" x2="${scale(typical)}%" y1="20%" y2="80%" />`}
    <circle cx="${scale(litres)}%" cy="50%" r="4.5" />
  </svg>`;
}

/** How the coat's liquid falls on products, where there is more than one; thinner and mixes beside. */
function shares({ formats }: ScreenBook, at: string, coat: Coat): TemplateResult | typeof nothing {
  const parts = coat.shares.length > 1 ? coat.shares : [];
  const mixes = coat.mixes !== null && coat.mixes > 1;
  if (parts.length === 0 && !mixes) return nothing;
  return html`<span class="coat-shares">
    ${parts.map(
      (share) =>
        html`<span>${share.name} ${figureButton(`${at}/shares/${share.id}/litres`, formats.volume(share.litres), share.name)}</span>`,
    )}
    ${mixes ? html`<span>${figureButton(`${at}/mixes`, formats.count(coat.mixes), 'Mixes')} mixes within the pot life</span>` : nothing}
  </span>`;
}
