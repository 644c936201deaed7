import { html, type TemplateResult } from 'lit-html';
import type { ProjectSettings } from '../../../../server/planning/project-input.ts';
import { checkInput } from '../../../fields/check-input.ts';
import { saveSetting } from '../../../fields/save.ts';
import type { ScreenBook } from '../../../fields/screen-book.ts';
import { readNumber } from '../../../format/read-number.ts';
import { type Reading, understood } from '../../../format/reading.ts';
import { typedSetting } from '../../settings/setting-field.ts';

/** What a shop may be, C; the server takes no more. */
const COLDEST_C = -50;
const WARMEST_C = 60;
/** The least difference in degrees that a wish about the wood may be, C. */
const MOST_DIFFERENCE_C = 60;

type NumberSetting = {
  [Name in keyof ProjectSettings]: ProjectSettings[Name] extends number ? Name : never;
}[keyof ProjectSettings];
type CheckSetting = {
  [Name in keyof ProjectSettings]: ProjectSettings[Name] extends boolean ? Name : never;
}[keyof ProjectSettings];

/** A yes-or-no of the shop with a word of help. */
export function checkSetting(
  { settings }: ScreenBook,
  name: CheckSetting,
  label: string,
  help: string,
): TemplateResult {
  return html`<div class="setup-check">
    ${checkInput({ table: 'settings', id: null, field: name }, label, settings[name], saveSetting(name))}<small>${help}</small>
  </div>`;
}

/** A temperature, in the project's unit. */
export function temperatureSetting(
  book: ScreenBook,
  name: NumberSetting,
  label: string,
  help?: string,
): TemplateResult {
  const { settings, formats } = book;
  return typedSetting<number>(
    book,
    name,
    label,
    formats.figure(settings[name], 'C'),
    (typed) => readDegrees(typed, settings.units),
    {
      numeric: true,
      ...(help === undefined ? {} : { help }),
    },
  );
}

/** A difference between two temperatures, in the project's degrees. */
export function differenceSetting(
  book: ScreenBook,
  name: NumberSetting,
  label: string,
  leastC: number,
  help: string,
): TemplateResult {
  const { units } = book.settings;
  const per = units === 'metric' ? 1 : FAHRENHEIT_PER_C;
  const unit = units === 'metric' ? '°C' : '°F';
  return typedSetting<number>(
    book,
    name,
    label,
    `${Number((book.settings[name] * per).toFixed(1))} ${unit}`,
    (typed) => {
      const read = readNumber(bare(typed), { least: leastC * per, most: MOST_DIFFERENCE_C * per });
      return read.ok ? understood(round(read.value / per)) : read;
    },
    { numeric: true, help },
  );
}

export function humiditySetting(book: ScreenBook, name: NumberSetting, label: string): TemplateResult {
  return typedSetting<number>(
    book,
    name,
    label,
    `${book.settings[name]} %`,
    (typed) => readNumber(typed.replace(/%\s*$/, ''), { least: 1, most: 100 }),
    { numeric: true },
  );
}

/** Exact: degrees Fahrenheit in one degree Celsius, and what 0 C is in Fahrenheit. */
const FAHRENHEIT_PER_C = 1.8;
const FREEZING_F = 32;

/** Degrees as typed: with C or F as written, else in the project's unit. */
export function readDegrees(typed: string, units: ProjectSettings['units']): Reading<number> {
  const fahrenheit = /f\s*$/i.test(typed) || (units === 'us' && !/c\s*$/i.test(typed));
  const [least, most] = [COLDEST_C, WARMEST_C].map((c) =>
    fahrenheit ? c * FAHRENHEIT_PER_C + FREEZING_F : c,
  );
  const read = readNumber(bare(typed), { least: least as number, most: most as number });
  if (!read.ok) return read;
  return understood(fahrenheit ? round((read.value - FREEZING_F) / FAHRENHEIT_PER_C) : read.value);
}

function bare(typed: string): string {
  return typed.replace(/\s*°?\s*[cf]?\s*$/i, '').replace('−', '-');
}

/** As fine as a thermometer that prints hundredths. */
function round(value: number): number {
  return Math.round(value * 100) / 100;
}
