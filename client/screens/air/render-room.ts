import { html, type TemplateResult } from 'lit-html';
import { M_PER_FOOT, M2_PER_FT2 } from '../../../server/planning/display/constants.ts';
import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import { formatAirflow } from '../../../server/planning/display/format-airflow.ts';
import { checkInput } from '../../fields/check-input.ts';
import { saveSetting } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { readAirflow } from '../../format/read-airflow.ts';
import { readInUnit } from '../../format/read-in-unit.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber, readOptionalNumber } from '../../format/read-number.ts';
import { readShare } from '../../format/read-share.ts';
import { understood } from '../../format/reading.ts';
import { readDegrees } from '../calendar/setup/setup-fields.ts';
import { chosenSetting, typedSetting } from '../settings/setting-field.ts';

/** The room in which coats are laid, and where its fresh air comes from. */
export function renderRoom(book: ScreenBook): TemplateResult {
  const { settings } = book;
  return html`<section class="panel" aria-labelledby="air-room">
    <header><div><h2 id="air-room">The room and its fresh air</h2><p>What is left empty is not known, and the check then says so. Every change is taken at once and can be undone.</p></div></header>
    <div class="body">
      <div class="air-grid">
        ${side(book, 'roomLengthM', 'Length of the room')} ${side(book, 'roomWidthM', 'Width')} ${side(book, 'roomHeightM', 'Height')}
        ${chosenSetting(book, 'airKind', 'Fresh air comes from', [
          { value: 'fan', text: 'a fan' },
          { value: 'opening', text: 'an open door or window' },
          { value: 'air-changes', text: 'measured air changes' },
        ])}
        ${settings.airKind === 'fan' ? fan(book) : settings.airKind === 'opening' ? opening(book) : changes(book)}
        ${typedSetting(book, 'mixingFactor', 'How badly the air mixes', String(settings.mixingFactor), (typed) => readNumber(typed, { least: 1, most: 10 }), { numeric: true, help: '1 perfectly, 10 poorly; 3 is our guess for a shop with one fan' })}
        ${chosenSetting(
          book,
          'healthBasis',
          'Hold shift-long limits',
          [
            { value: 'peak', text: 'at every moment' },
            { value: 'averages', text: 'as 8-hour averages' },
          ],
          'at every moment is the stricter',
        )}
        ${outdoor(book)}
        ${typedSetting<number | null>(book, 'heatPricePerKwhMinor', 'Price of a kWh of heat', moneyInput(settings.heatPricePerKwhMinor, settings.currency), (typed) => readMoney(typed, settings.currency), { numeric: true, placeholder: 'not known', help: `in ${settings.currency}` })}
      </div>
      <div class="keep-under">
        ${checkInput({ table: 'settings', id: null, field: 'keepUnderHealthLimit' }, 'Plan the calendar so that it keeps under the health limit', settings.keepUnderHealthLimit, saveSetting('keepUnderHealthLimit'))}
        <small>Smaller batches and more time between coats. It holds every limit at every moment, and a tenth of the explosive limit as well. Where anything is not known, the calendar is not planned and says what is missing.</small>
      </div>
    </div>
  </section>`;
}

function side(
  book: ScreenBook,
  name: 'roomLengthM' | 'roomWidthM' | 'roomHeightM',
  label: string,
): TemplateResult {
  const { settings } = book;
  const value = settings[name];
  const metric = settings.units === 'metric';
  const text = metric ? `${trimmedText(value ?? 0, 2)} m` : `${trimmedText((value ?? 0) / M_PER_FOOT, 2)} ft`;
  return typedSetting<number | null>(
    book,
    name,
    label,
    value === null ? '' : text,
    (typed) => readInUnit(typed, ROOM_UNITS, metric ? 'm' : 'ft', { least: 0.1, most: 1000 }),
    {
      numeric: true,
      placeholder: 'not known',
      ...(name === 'roomLengthM' ? { help: metric ? 'metres' : 'feet' } : {}),
    },
  );
}

/** Exact. */
const ROOM_UNITS = { m: 1, cm: 0.01, ft: M_PER_FOOT, "'": M_PER_FOOT } as const;
const AREA_UNITS = { 'm²': 1, m2: 1, 'ft²': M2_PER_FT2, ft2: M2_PER_FT2 } as const;

function fan(book: ScreenBook): TemplateResult {
  const { settings, formats } = book;
  const { fanM3PerHour, units } = settings;
  return html`${typedSetting<number | null>(
    book,
    'fanM3PerHour',
    'Fan is rated at',
    fanM3PerHour === null ? '' : formatAirflow(fanM3PerHour, units),
    (typed) => readAirflow(typed, units),
    {
      numeric: true,
      placeholder: 'not known',
      help: `${units === 'metric' ? 'm³/h' : 'cfm'}, blowing freely; 0 for no fan`,
    },
  )}
  ${typedSetting(book, 'fanDerating', 'Of which arrives', formats.share(settings.fanDerating), (typed) => readShare(typed, { least: 5, most: 100 }), { numeric: true, help: 'through duct, grille and screen; half is common practice, no source' })}`;
}

function opening(book: ScreenBook): TemplateResult {
  const { settings } = book;
  const { openingM2, windMPerS, units } = settings;
  const metric = units === 'metric';
  return html`${typedSetting<number | null>(
    book,
    'openingM2',
    'Free opening',
    openingM2 === null
      ? ''
      : metric
        ? `${trimmedText(openingM2, 2)} m²`
        : `${trimmedText(openingM2 / M2_PER_FT2, 1)} ft²`,
    (typed) => readInUnit(typed, AREA_UNITS, metric ? 'm²' : 'ft²', { least: 0, most: 1000 }),
    { numeric: true, placeholder: 'not known', help: 'what is open of a door or window' },
  )}
  ${typedSetting(book, 'windMPerS', 'Wind outside', `${trimmedText(windMPerS, 1)} m/s`, (typed) => readNumber(typed.replace(/\s*m\/s\s*$/i, ''), { least: 0, most: 50 }), { numeric: true, help: 'a light air is 1 m/s; on a still day 0' })}`;
}

function changes(book: ScreenBook): TemplateResult {
  const { airChangesPerHour } = book.settings;
  return typedSetting<number | null>(
    book,
    'airChangesPerHour',
    'Air changes an hour',
    airChangesPerHour === null ? '' : String(airChangesPerHour),
    (typed) => readOptionalNumber(typed, { least: 0, most: 1000 }),
    { numeric: true, placeholder: 'not known', help: '0 for a closed room' },
  );
}

function outdoor(book: ScreenBook): TemplateResult {
  const { settings, formats } = book;
  return typedSetting<number | null>(
    book,
    'outdoorC',
    'Temperature outside',
    settings.outdoorC === null ? '' : formats.figure(settings.outdoorC, 'C'),
    (typed) => (typed.trim() === '' ? understood(null) : readDegrees(typed, settings.units)),
    { numeric: true, placeholder: 'not known', help: 'for the heat that goes out' },
  );
}
