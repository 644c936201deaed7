import type { EdgeName, EdgeTreatment } from '../project-input.ts';
import type { BandFacts } from './band-facts.ts';

/** One edge of a part with what is put on it. */
export interface PartEdge {
  readonly name: EdgeName;
  readonly treatment: EdgeTreatment;
  /** Seen edges are finished; banded ones are seen. */
  readonly seen: boolean;
  readonly banded: boolean;
  /** Null when not banded, and when the product named cannot be used. */
  readonly band: BandFacts | null;
}

export type PartEdges = Readonly<Record<EdgeName, PartEdge>>;

/**
 * How much of the finished size does the band on an edge take up?
 *
 * Result: mm; 0 without a band or where it is not deducted, null where that is not known. No source: a definition.
 *
 * Example: an edge with a deducted 2 mm band takes 2 mm.
 */
export function deductedAt(edge: PartEdge): number | null {
  if (!edge.banded) return 0;
  return edge.band === null ? null : edge.band.deductedMm;
}
