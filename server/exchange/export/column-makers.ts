import {
  L_PER_US_GALLON,
  M_PER_FOOT,
  M2_PER_FT2,
  MM_PER_INCH,
  QUARTS_PER_GALLON,
} from '../../planning/display/constants.ts';
import { currencyDigits } from '../../planning/display/currency-digits.ts';
import type { ProjectSettings } from '../../planning/project-input.ts';
import type { ColumnOf, ExportCell } from './export-table.ts';

type Known = number | null | undefined;
type NumberMaker = <Row>(heading: string, value: (row: Row) => Known) => ColumnOf<Row>;

/** Makes the columns of the tables; canonical values go in, the project's units come out. */
export interface ColumnMakers {
  readonly text: <Row>(heading: string, width: number, value: (row: Row) => string | null) => ColumnOf<Row>;
  readonly count: NumberMaker;
  /** From mm: mm or decimal inches. */
  readonly length: NumberMaker;
  /** From m: metres or feet. */
  readonly run: NumberMaker;
  /** From m2: square metres or square feet. */
  readonly area: NumberMaker;
  /** From litres: litres or US liquid quarts. */
  readonly volume: NumberMaker;
  /** From minor units: major units of the project's currency. */
  readonly money: NumberMaker;
  /** An amount in a unit that differs from row to row, with the unit in a column of its own. */
  readonly amount: <Row>(
    heading: string,
    unit: (row: Row) => AmountUnit,
    value: (row: Row) => Known,
  ) => ColumnOf<Row>;
  readonly unit: <Row>(heading: string, unit: (row: Row) => AmountUnit) => ColumnOf<Row>;
}

export type AmountUnit = 'pcs' | 'm' | 'L' | 'g';

interface Measure {
  readonly symbol: string;
  /** Canonical units in one printed unit. */
  readonly size: number;
}

const L_PER_QUART = L_PER_US_GALLON / QUARTS_PER_GALLON;
const MEASURES = {
  metric: {
    length: { symbol: 'mm', size: 1 },
    m: { symbol: 'm', size: 1 },
    area: { symbol: 'm²', size: 1 },
    L: { symbol: 'L', size: 1 },
  },
  us: {
    length: { symbol: 'in', size: MM_PER_INCH },
    m: { symbol: 'ft', size: M_PER_FOOT },
    area: { symbol: 'ft²', size: M2_PER_FT2 },
    L: { symbol: 'qt', size: L_PER_QUART },
  },
} as const satisfies Record<ProjectSettings['units'], Record<string, Measure>>;

/** Width of a column of numbers, characters; a longer heading widens it. */
const NUMBER_WIDTH = 10;

export function columnMakers({ units, currency }: ProjectSettings): ColumnMakers {
  const measures = MEASURES[units];
  const digits = currencyDigits(currency);
  const amountMeasure = (unit: AmountUnit): Measure =>
    unit === 'm' || unit === 'L' ? measures[unit] : { symbol: unit, size: 1 };
  const measured =
    ({ symbol, size }: Measure, decimals: number | null): NumberMaker =>
    (heading, value) =>
      number(`${heading} (${symbol})`, 'number', decimals, (row) => scaled(value(row), size));
  return {
    text: (heading, width, value) => ({ heading, kind: 'text', decimals: null, width, value }),
    count: (heading, value) => number(heading, 'number', null, (row) => value(row) ?? null),
    length: measured(measures.length, null),
    run: measured(measures.m, 2),
    area: measured(measures.area, 3),
    volume: measured(measures.L, 3),
    money: (heading, value) =>
      number(`${heading} (${currency})`, 'money', digits, (row) => scaled(value(row), 10 ** digits)),
    amount: (heading, unit, value) =>
      number(heading, 'number', null, (row) => scaled(value(row), amountMeasure(unit(row)).size)),
    unit: (heading, unit) => ({
      heading,
      kind: 'text',
      decimals: null,
      width: NUMBER_WIDTH,
      value: (row) => amountMeasure(unit(row)).symbol,
    }),
  };
}

function number<Row>(
  heading: string,
  kind: 'number' | 'money',
  decimals: number | null,
  value: (row: Row) => ExportCell,
): ColumnOf<Row> {
  return { heading, kind, decimals, width: Math.max(NUMBER_WIDTH, heading.length + 2), value };
}

/** Decimals kept of a number: a millionth of a millimetre or of an inch, below what any machine holds. A rule of ours. */
const DECIMALS_KEPT = 6;

/** A value in the printed unit, without the digits that only the floating point put there. */
function scaled(value: Known, size: number): number | null {
  if (value === null || value === undefined) return null;
  const rounded = Number((value / size).toFixed(DECIMALS_KEPT));
  return rounded === 0 ? 0 : rounded;
}
