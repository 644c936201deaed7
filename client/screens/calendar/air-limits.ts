import type { ScreenBook } from '../../fields/screen-book.ts';
import type { TaskEntry } from './calendar-book.ts';
import { isOpen } from './task-words.ts';

export interface AirLimit {
  readonly what: 'least-temperature' | 'most-temperature' | 'most-humidity';
  readonly value: number;
  /** The products that ask for it. */
  readonly products: readonly string[];
}

const FIGURES = [
  ['least-temperature', 'minTemperature', 'high'],
  ['most-temperature', 'maxTemperature', 'low'],
  ['most-humidity', 'maxHumidity', 'low'],
] as const;

/** The limits that the labels of the coats still to be laid set to the shop's air, equal ones together. */
export function airLimits(book: ScreenBook, entries: readonly TaskEntry[]): readonly AirLimit[] {
  const { rows } = book.project;
  const stepIds = new Set(
    entries.filter(({ task }) => task.layFromMinute !== null && isOpen(task)).map(({ task }) => task.stepId),
  );
  const productIds = rows.steps
    .filter(({ id }) => stepIds.has(id))
    .flatMap(({ productId, blendId }) => [
      productId,
      ...rows.components.filter((one) => one.blendId === blendId).map((one) => one.productId),
    ]);
  const found = new Map<string, AirLimit>();
  for (const id of new Set(productIds)) {
    const product = book.products.get(id);
    if (product === undefined) continue;
    for (const [what, figure, end] of FIGURES) {
      const value = product.figures[figure]?.[end] ?? product.figures[figure]?.typical ?? null;
      if (value === null) continue;
      const key = `${what} ${value}`;
      found.set(key, {
        what,
        value,
        products: [...(found.get(key)?.products ?? []), product.shortName],
      });
    }
  }
  return [...found.values()].sort((a, b) => a.value - b.value);
}
