import type { ProjectSettings } from '../../../../server/planning/project-input.ts';
import { readNumber } from '../../../format/read-number.ts';
import { readDegrees } from './setup-fields.ts';

export interface ReadClimateRow {
  readonly date: string;
  readonly time: string;
  readonly temperatureC: number;
  readonly humidityPercent: number | null;
}
export interface ReadClimate {
  readonly rows: readonly ReadClimateRow[];
  /** Lines that could not be read, with the number of the line as pasted. */
  readonly refusals: readonly { readonly line: number; readonly message: string }[];
}

/** More rows than two years of hours are refused. */
const MOST_ROWS = 17_600;

/**
 * Reads rows of date, time, temperature and humidity, as a logger saves them or a spreadsheet copies them: with tabs,
 * semicolons or commas between, date and time in one column or two, time and humidity left out where there is none.
 * A first line without a date is a heading.
 */
export function readClimate(text: string, units: ProjectSettings['units']): ReadClimate {
  const rows: ReadClimateRow[] = [];
  const refusals: { line: number; message: string }[] = [];
  const lines = text.split(/\r\n|\r|\n/);
  for (const [index, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const row = readLine(line, units);
    const heading = rows.length === 0 && refusals.length === 0 && !/\d{1,4}[-./]\d/.test(line);
    if (heading) continue;
    if (rows.length >= MOST_ROWS) {
      refusals.push({ line: index + 1, message: `No more than ${MOST_ROWS} rows are read.` });
      break;
    }
    if (typeof row === 'string') refusals.push({ line: index + 1, message: row });
    else rows.push(row);
  }
  return { rows, refusals };
}

/** One row, or why it cannot be read. */
function readLine(line: string, units: ProjectSettings['units']): ReadClimateRow | string {
  const between = line.includes('\t') ? '\t' : line.includes(';') ? ';' : ',';
  const cells = line.split(between).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
  const match = /^(\d{4}-\d\d-\d\d)(?:[T ]+(\d{1,2}:\d\d)(?::\d\d(?:\.\d+)?)?)?$/.exec(cells[0] ?? '');
  if (match === null) return `"${cells[0] ?? ''}" is not a date such as 2026-12-12, or 2026-12-12 14:00.`;
  const date = match[1] ?? '';
  if (Number.isNaN(Date.parse(`${date}T00:00:00Z`)) || !sameDate(date)) return `There is no day ${date}.`;
  const apart = match[2] === undefined && /^\d{1,2}:\d\d(:\d\d)?$/.test(cells[1] ?? '');
  const typedTime = match[2] ?? (apart ? (cells[1] ?? '').slice(0, 5).replace(/:$/, '') : '');
  const time = typedTime === '' ? '' : typedTime.padStart(5, '0');
  if (time !== '' && !/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) return `"${typedTime}" is not a time of day.`;
  const [temperature = '', humidity = ''] = cells.slice(apart ? 2 : 1);
  if (temperature === '') return 'The temperature is missing.';
  const degrees = readDegrees(temperature, units);
  if (!degrees.ok) return degrees.message;
  if (humidity === '') return { date, time, temperatureC: degrees.value, humidityPercent: null };
  const percent = readNumber(humidity.replace(/%\s*$/, ''), { least: 1, most: 100 });
  return percent.ok
    ? { date, time, temperatureC: degrees.value, humidityPercent: percent.value }
    : percent.message;
}

/** The date parser turns 31 April into 1 May; such a day is refused. */
function sameDate(date: string): boolean {
  return new Date(`${date}T00:00:00Z`).toISOString().slice(0, 10) === date;
}
