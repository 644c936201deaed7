import './panels.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { UNKNOWN_TEXT } from '../../server/planning/display/constants.ts';
import { actions } from '../state/store.ts';

/**
 * A computed number that opens its working. `at` is the figure's path, `text` the number as the project prints it;
 * `name` says what it is where no heading beside it does.
 */
export function figureButton(at: string, text: string, name?: string): TemplateResult {
  return html`<button
    type="button"
    class="figure ${text === UNKNOWN_TEXT ? 'unknown' : ''}"
    data-figure=${at}
    aria-haspopup="dialog"
    aria-label=${name === undefined ? nothing : `${name}: ${text}`}
    title="How this was worked out"
    @click=${() => void actions.openWorking(at)}
  >${text}</button>`;
}
