/** Most percent of tax that is reckoned with. */
const MOST_TAX_PERCENT = 100;

/**
 * Which tax rate is reckoned with?
 *
 * @param taxPercent as set, percent; null where none is
 * @returns the rate from 0 to 100 percent; null for another one, which is a problem of the plan
 *
 * Source: rule of ours.
 */
export function usableTax(taxPercent: number | null): number | null {
  return taxPercent !== null && taxPercent >= 0 && taxPercent <= MOST_TAX_PERCENT ? taxPercent : null;
}
