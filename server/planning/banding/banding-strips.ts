import type { PartPlan } from '../plan-output.ts';
import type { EdgeName } from '../project-input.ts';

/** Equal strips of one row of the part list: one per piece. */
export interface RowStrips {
  readonly partId: string;
  readonly stripId: string;
  readonly firstEdge: EdgeName;
  /** Pieces of the row; null when not known. */
  readonly count: number | null;
  readonly runMm: number | null;
  readonly stripMm: number | null;
}

/**
 * Which strips of each banding product does the part list need?
 *
 * `parts`: planned parts. Result: per product id, in the order in which the part list first names them, the strips of
 * each row; lengths in mm, null where not known. No source: grouping only.
 *
 * Example: 4 shelves with a veneered front are one entry of 4 strips.
 */
export function bandingStrips(parts: readonly PartPlan[]): ReadonlyMap<string, readonly RowStrips[]> {
  const byProduct = new Map<string, RowStrips[]>();
  for (const part of parts)
    for (const strip of part.strips) {
      let rows = byProduct.get(strip.bandingId);
      if (rows === undefined) {
        rows = [];
        byProduct.set(strip.bandingId, rows);
      }
      rows.push({
        partId: part.id,
        stripId: strip.id,
        firstEdge: strip.edges[0] as EdgeName,
        count: part.quantity.value,
        runMm: strip.runMm.value,
        stripMm: strip.stripMm.value,
      });
    }
  return byProduct;
}
