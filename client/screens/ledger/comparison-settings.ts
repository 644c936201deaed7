import { html, type TemplateResult } from 'lit-html';
import { labelled } from '../../fields/labelled.ts';
import type { Place } from '../../fields/place.ts';
import { saveSetting } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber } from '../../format/read-number.ts';

/** What the forecast and the comparison stand on, entered once for the project. */
export function comparisonSettings({ problems, settings }: ScreenBook): TemplateResult {
  const place = (field: string): Place => ({ table: 'settings', id: null, field });
  const money = (field: 'rateMinorPerHour' | 'readyMadeMinor', label: string, help: string): TemplateResult =>
    labelled(
      place(field),
      label,
      textInput<number | null>({
        place: place(field),
        label,
        text: moneyInput(settings[field], settings.currency),
        placeholder: 'not said',
        read: (typed) => readMoney(typed, settings.currency),
        save: saveSetting(field),
        problems,
        numeric: true,
      }),
      help,
    );
  return html`<div class="form-grid">
    ${labelled(
      place('contingencyPercent'),
      'Contingency, %',
      textInput<number>({
        place: place('contingencyPercent'),
        label: 'Contingency, %',
        text: String(settings.contingencyPercent),
        read: (typed) => readNumber(typed.replace(/\s*%$/, ''), { least: 0, most: 100 }),
        save: saveSetting('contingencyPercent'),
        problems,
        numeric: true,
      }),
      'Added in the forecast to what is still to be ordered.',
    )}
    ${money('rateMinorPerHour', `Rate for your own hour, ${settings.currency}`, 'Empty: your hours are not counted.')}
    ${money('readyMadeMinor', `Ready made, ${settings.currency}`, 'What the same piece costs in a shop, with tax.')}
  </div>`;
}
