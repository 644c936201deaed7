import { LEAST_FIGURE, MOST_FIGURE } from './constants.ts';

/**
 * Is a catalogue number known and above 0? By definition NaN, infinities and numbers no catalogue can mean (below a
 * millionth, above a thousand million) are not.
 */
export function isPositive(value: number | null | undefined): value is number {
  return typeof value === 'number' && value >= LEAST_FIGURE && value <= MOST_FIGURE;
}
