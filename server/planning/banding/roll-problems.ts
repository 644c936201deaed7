import { formatMetres } from '../display/format-metres.ts';
import { EDGE_FIELD } from '../geometry/outline.ts';
import type { RollStrip } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { UnitSystem } from '../project-input.ts';
import type { RowStrips } from './banding-strips.ts';
import { MM_PER_M, MOST_ROLLS_PLANNED } from './constants.ts';

/**
 * What is said when the catalogue knows no roll length of a product? A problem at the product. No units, no source.
 */
export function rollLengthUnknown(product: Product): Problem {
  return {
    code: 'roll-length-unknown',
    severity: 'error',
    at: { table: 'products', id: product.id, field: 'packs' },
    message: `The catalogue does not say in which lengths "${product.name}" is sold.`,
    wayOut: 'Enter at least one roll with its length in metres in the catalogue.',
  };
}

/**
 * What is said when a part list needs more rolls than are planned? A problem at the product. No source: our limit.
 */
export function tooManyRolls(product: Product): Problem {
  return {
    code: 'quantity-too-large',
    severity: 'error',
    at: { table: 'products', id: product.id, field: null },
    message: `The part list needs more than ${MOST_ROLLS_PLANNED} rolls of "${product.name}".`,
    wayOut: 'Check the quantities of the parts it is on, or split the project.',
  };
}

/**
 * What is said of strips longer than every roll? One problem per row and strip, at the edge it starts on.
 *
 * `waiting`: strips no roll holds, mm. `longestMm`: the longest roll there is, mm. No source: a definition.
 *
 * Example: the closed strip of a table too large for a 5 m roll is reported at its front edge.
 */
export function tooLongProblems(
  waiting: readonly RollStrip[],
  rows: readonly RowStrips[],
  product: Product,
  nameOf: (partId: string) => string,
  { longestMm, units }: { readonly longestMm: number; readonly units: UnitSystem },
): Problem[] {
  if (waiting.length === 0) return [];
  const rowOf = new Map(rows.map((row) => [`${row.partId} ${row.stripId}`, row]));
  return waiting.flatMap(({ partId, stripId, lengthMm }): Problem[] => {
    const row = rowOf.get(`${partId} ${stripId}`);
    if (row === undefined) return [];
    return [
      {
        code: 'strip-longer-than-roll',
        severity: 'error',
        at: { table: 'parts', id: row.partId, field: EDGE_FIELD[row.firstEdge] },
        message: `The strip of ${formatMetres(lengthMm / MM_PER_M, { units })} for "${nameOf(row.partId)}" is longer than every roll of "${product.name}" (${formatMetres(longestMm / MM_PER_M, { units })}).`,
        wayOut: 'Choose banding sold in longer rolls, or make a corner square so that the strip ends there.',
      },
    ];
  });
}
