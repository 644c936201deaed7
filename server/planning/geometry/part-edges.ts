import { chosenProduct } from '../finish/chosen-product.ts';
import type { Problem } from '../problem.ts';
import { EDGE_NAMES, type EdgeName, type PartInput } from '../project-input.ts';
import { EDGE_FIELD } from './outline.ts';
import type { PartContext } from './part-context.ts';
import type { PartEdge, PartEdges } from './part-edge.ts';
import { partProblem } from './part-problem.ts';

/**
 * What is put on each edge of a part?
 *
 * `row`: the treatment of each edge: hidden, bare, or a banding product. Result: the edges with their bands; a
 * product that is unknown or no banding is a problem at its cell. A round part has one edge, described by its front
 * cell; another cell that says something else is a warning. No units. No source: a definition.
 *
 * Example: front banded, the others hidden: one seen edge.
 */
export function partEdges(
  row: PartInput,
  context: PartContext,
): { readonly edges: PartEdges; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const retired = new Set<string>();
  const edgeOf = (name: EdgeName, from: EdgeName, report: boolean): PartEdge => {
    const treatment = row[EDGE_FIELD[from]];
    if (treatment === 'hidden' || treatment === 'bare')
      return { name, treatment, seen: treatment === 'bare', banded: false, band: null };
    const found = chosenProduct({
      products: context.products,
      id: treatment,
      kinds: ['banding'],
      place: { table: 'parts', id: row.id, field: EDGE_FIELD[from] },
      user: `The ${row.shape === 'round' ? 'round' : from} edge`,
    });
    // A retired product is named once per part, a wrong one at each cell.
    if (report && !(found.product !== null && retired.has(treatment))) problems.push(...found.problems);
    retired.add(treatment);
    const band = found.product === null ? null : context.bandOf(found.product);
    return { name, treatment, seen: true, banded: true, band };
  };

  const round = row.shape === 'round';
  const edges = Object.fromEntries(
    EDGE_NAMES.map((name) => [name, edgeOf(name, round ? 'front' : name, !round || name === 'front')]),
  ) as Record<EdgeName, PartEdge>;
  if (round)
    for (const name of EDGE_NAMES) {
      const said = row[EDGE_FIELD[name]];
      if (said !== 'hidden' && said !== row.edgeFront) problems.push(roundEdgeMismatch(row, name));
    }
  return { edges, problems };
}

function roundEdgeMismatch(row: PartInput, name: EdgeName): Problem {
  return partProblem(
    row,
    EDGE_FIELD[name],
    {
      code: 'corner-band-mismatch',
      message: `A round part has one edge, and its front and ${name} cells say different things; the front cell counts.`,
      wayOut: `Set the ${name} edge to hidden, or to what the front edge says.`,
    },
    'warning',
  );
}
