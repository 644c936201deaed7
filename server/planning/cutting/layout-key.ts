import type { StockLayout } from '../plan-output.ts';
import { stableHash } from './found/stable-hash.ts';

/**
 * A name for what is cut from one stock and how, so that what was ticked off a layout is shown on no other.
 *
 * `materialId`: product id. `layout`: mm. `kerfMm`: width of a cut. Result: 16 hexadecimal digits; equal for equal
 * material, stock, kerf and cuts of the same parts, whatever the layout's number, count or label. Rule of ours.
 */
export function layoutKey(
  materialId: string,
  layout: Omit<StockLayout, 'id' | 'count'>,
  kerfMm: number,
): string {
  const { packId, onHandId, lengthMm, widthMm, cut } = layout;
  return stableHash(JSON.stringify([materialId, packId, onHandId, lengthMm, widthMm, kerfMm, cut]));
}
