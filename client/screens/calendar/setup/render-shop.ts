import { html, type TemplateResult } from 'lit-html';
import { M2_PER_FT2 } from '../../../../server/planning/display/constants.ts';
import { trimmedText } from '../../../../server/planning/display/fixed-text.ts';
import type { Choice } from '../../../fields/choice-input.ts';
import { choiceInput } from '../../../fields/choice-input.ts';
import { labelled } from '../../../fields/labelled.ts';
import { saveSetting } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { asTyped } from '../../../fields/text-input.ts';
import { readNumber, readOptionalNumber } from '../../../format/read-number.ts';
import { understood } from '../../../format/reading.ts';
import { typedSetting } from '../../settings/setting-field.ts';
import { setupPanel } from './render-setup.ts';
import { checkSetting, differenceSetting } from './setup-fields.ts';

/** Coldest wood taken, C below the air; the server takes no more. */
const COLDEST_WOOD_C = -60;

/** People, room and dates. */
export function renderShop(book: ScreenBook): TemplateResult {
  const { settings } = book;
  return setupPanel(
    'shop',
    'Shop',
    'Hands, room to dry, and when to begin.',
    html`<div class="setup-grid">
      ${typedSetting(book, 'startDate', 'Begin on', settings.startDate, asTyped, { help: 'such as 2026-12-12; empty: today', placeholder: 'today' })}
      ${typedSetting(book, 'hands', 'People at work', String(settings.hands), (typed) => readNumber(typed, { least: 1, most: 20, whole: true }), { help: 'at the same time', numeric: true })}
      ${areaSetting(book, 'rackM2', 'Room to dry', 'area for wet parts; empty: no limit')}
      ${areaSetting(book, 'largestBatchM2', 'Largest batch', 'faces coated in one go; empty: no limit')}
      ${zone(book)}
      ${differenceSetting(book, 'woodWarmerC', 'Wood warmer than air', COLDEST_WOOD_C, 'below 0 for parts just brought in')}
      ${checkSetting(book, 'sandsApart', 'Sanding dust cannot reach wet coats', 'Another room, or outdoors. Otherwise nothing is sanded while a coat is wet.')}
    </div>`,
  );
}

function areaSetting(
  book: ScreenBook,
  name: 'rackM2' | 'largestBatchM2',
  label: string,
  help: string,
): TemplateResult {
  const { settings, formats } = book;
  const per = settings.units === 'metric' ? 1 : M2_PER_FT2;
  const value = settings[name];
  return typedSetting<number | null>(
    book,
    name,
    label,
    value === null
      ? ''
      : settings.units === 'metric'
        ? formats.area(value)
        : `${trimmedText(value / per, 2)} ft²`,
    (typed) => {
      const read = readOptionalNumber(typed.replace(/\s*(m²|m2|ft²|ft2|sq ?ft)\s*$/i, ''), { least: 0.01 });
      const written = /ft/i.test(typed) ? M2_PER_FT2 : /m/i.test(typed) ? 1 : per;
      return read.ok && read.value !== null
        ? understood(Number((read.value * written).toPrecision(12)))
        : read;
    },
    { help, numeric: true, placeholder: 'no limit' },
  );
}

let zones: readonly Choice[] | null = null;

function zone({ settings, problems }: ScreenBook): TemplateResult {
  zones ??= Intl.supportedValuesOf('timeZone').map((value) => ({ value, text: value.replaceAll('_', ' ') }));
  const place = { table: 'settings', id: null, field: 'timeZone' } as const;
  const known = zones.some(({ value }) => value === settings.timeZone);
  return labelled(
    place,
    'Time zone',
    choiceInput({
      place,
      label: 'Time zone',
      value: settings.timeZone,
      choices: known ? zones : [{ value: settings.timeZone, text: settings.timeZone }, ...zones],
      save: saveSetting('timeZone'),
      problems,
    }),
  );
}
