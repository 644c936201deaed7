import {
  FLUID_OUNCES_PER_QUART,
  L_PER_US_GALLON,
  M_PER_FOOT,
  QUARTS_PER_GALLON,
} from '../../server/planning/display/constants.ts';
import type { ProductUnit } from '../../server/planning/product.ts';
import type { UnitSystem } from '../../server/planning/project-input.ts';
import { type NumberRange, readNumber } from './read-number.ts';
import { type Reading, refused, understood } from './reading.ts';

const L_PER_QUART = L_PER_US_GALLON / QUARTS_PER_GALLON;
const PINTS_PER_QUART = 2;

/** What one of each written unit is in the product's own unit. */
const UNITS: Readonly<Record<ProductUnit, Readonly<Record<string, number>>>> = {
  pcs: { pcs: 1 },
  m: { m: 1, cm: 0.01, mm: 0.001, ft: M_PER_FOOT, "'": M_PER_FOOT },
  L: {
    l: 1,
    ml: 0.001,
    gal: L_PER_US_GALLON,
    qt: L_PER_QUART,
    pt: L_PER_QUART / PINTS_PER_QUART,
    'fl oz': L_PER_QUART / FLUID_OUNCES_PER_QUART,
  },
  g: { g: 1, kg: 1000 },
};

/** What a bare number means: the product's unit, but feet for lengths in a US project. Volumes there must say. */
function bareUnit(unit: ProductUnit, units: UnitSystem): number | null {
  if (units === 'metric' || unit === 'pcs' || unit === 'g') return 1;
  return unit === 'm' ? M_PER_FOOT : null;
}

/**
 * How much of a product is typed, in the product's own unit? "32 fl oz" is 0.946 L, "70 ft" is 21.3 m. In a US
 * project a volume without unit is refused: it could be quarts or gallons.
 */
export function readAmount(
  typed: string,
  unit: ProductUnit,
  units: UnitSystem,
  range: NumberRange = { least: 0 },
): Reading<number> {
  const text = typed
    .trim()
    .toLowerCase()
    .replace(/floz$|fl\. ?oz\.?$/, 'fl oz');
  const [, number = '', written = ''] = /^([\d.,\s]*?)\s*([a-z' ]*)$/.exec(text) ?? [];
  const factor = written === '' ? bareUnit(unit, units) : UNITS[unit][written];
  if (factor === null) return refused(`Say the unit of "${typed.trim()}": such as 1 qt, 8 fl oz or 0.5 L.`);
  if (factor === undefined || number === '')
    return refused(`"${typed.trim()}" is not an amount. Write one such as ${EXAMPLES[unit]}.`);
  const value = readNumber(number, range);
  return value.ok ? understood(Number((value.value * factor).toPrecision(12))) : value;
}

const EXAMPLES: Readonly<Record<ProductUnit, string>> = {
  pcs: '4',
  m: '25 m or 80 ft',
  L: '0.75 L or 1 qt',
  g: '500 g or 1 kg',
};
