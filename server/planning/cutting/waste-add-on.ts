/**
 * What share must be added to the net area when a known share of the sheet is lost.
 *
 * `wasteShare`: lost share of what is bought, 0 up to, not including, 1. Result: share of the net area to add.
 * Exact: bought = net / (1 - waste), so the addition is waste / (1 - waste), always more than the waste itself.
 * Example: wasteAddOn(0.2) is 0.25.
 */
export function wasteAddOn(wasteShare: number): number {
  if (!(wasteShare >= 0 && wasteShare < 1))
    throw new RangeError(`wasteAddOn: wasteShare must be from 0 to below 1, got ${wasteShare}`);
  return wasteShare / (1 - wasteShare);
}
