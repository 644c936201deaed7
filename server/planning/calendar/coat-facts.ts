import type { Product, ProductFigureName } from '../product.ts';
import type { CoatFacts } from './calendar-input.ts';

/**
 * What of a product, or of the products of a blend, bears on the calendar?
 *
 * @param products the product of the step, or all components of its blend; at least one
 * @returns minutes, C and percent; of several products the more careful figure; null where any is not known
 *
 * Source: the products' label figures. Valid range: finishes. Departures: where a figure is a range, the slow end of
 * drying and the short end of working time are taken; a blend takes the recoat intervals of the component that is dry
 * to handle last; carriers that differ count as not known, which is the slower of the two. The last three are rules of
 * ours. Example: touch dry 30 to 60 min gives 60.
 */
export function coatFacts(products: readonly Product[]): CoatFacts {
  const first = products[0];
  if (first === undefined) throw new RangeError('coatFacts needs at least one product, got none');
  const all = (name: ProductFigureName, end: 'low' | 'high'): (number | null)[] =>
    products.map(({ figures }) => figures[name]?.[end] ?? figures[name]?.typical ?? null);
  const most = (name: ProductFigureName, end: 'low' | 'high'): number | null =>
    extreme(all(name, end), Math.max);
  const least = (name: ProductFigureName, end: 'low' | 'high'): number | null =>
    extreme(all(name, end), Math.min);
  const carriers = new Set(products.map(({ choices }) => choices.carrier ?? null));
  const slowest = products.reduce((slow, product) => (handleDry(product) > handleDry(slow) ? product : slow));
  return {
    carrier: carriers.size === 1 ? (first.choices.carrier ?? null) : null,
    touchDryMin: most('touchDry', 'high'),
    handleDryMin: most('handleDry', 'high'),
    cureMin: most('cure', 'high'),
    workingTimeMin: least('workingTime', 'low'),
    recoat: slowest.recoat,
    minTemperatureC: most('minTemperature', 'high'),
    maxTemperatureC: least('maxTemperature', 'low'),
    maxHumidityPercent: least('maxHumidity', 'low'),
  };
}

function extreme(values: readonly (number | null)[], pick: (...values: number[]) => number): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === values.length ? pick(...known) : null;
}

function handleDry({ figures }: Product): number {
  return figures.handleDry?.high ?? figures.handleDry?.typical ?? 0;
}
