import type { Pack } from '../product.ts';
import { MOST_PRICE_MINOR } from './constants.ts';

/** Is a number a price: whole minor units from 0 to MOST_PRICE_MINOR? A definition of ours, no source. */
export function isPrice(minor: number): boolean {
  return Number.isInteger(minor) && minor >= 0 && minor <= MOST_PRICE_MINOR;
}

/**
 * What does a pack cost in the project's currency?
 *
 * @param currency ISO 4217 code the project reckons in
 * @returns whole minor units; null when it has no price, or one in another currency (prices are never converted), or a
 *   number that cannot be a price
 *
 * Source: definition.
 */
export function usablePrice(pack: Pack, currency: string): number | null {
  if (pack.currency !== currency || pack.priceMinor === null) return null;
  return isPrice(pack.priceMinor) ? pack.priceMinor : null;
}
