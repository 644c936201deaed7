import { html, type TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { setupPanel } from './render-setup.ts';
import { checkSetting, differenceSetting } from './setup-fields.ts';

/** What is assumed of drying, named as assumptions. */
export function renderDrying(book: ScreenBook): TemplateResult {
  return setupPanel(
    'drying',
    'Drying: adjustable assumptions',
    'No published rule for this was found. Label times are taken to be for 22 °C and 50 % humidity; a coat you have timed yourself is the better guide.',
    html`<div class="setup-grid">
      ${differenceSetting(book, 'dryingDoublesPerC', 'Twice as fast per', 1, 'warmer air; common practice, no source')}
      ${checkSetting(book, 'dryingUsesHumidity', 'Damp air slows waterborne coats', 'By how much more water the air can take up (vapour-pressure deficit).')}
    </div>`,
  );
}
