import { type Figure, figure } from '../figure.ts';
import type { EdgePlan, StripPlan } from '../plan-output.ts';
import type { EdgeName } from '../project-input.ts';
import type { FinishedOutline } from './edge-outline.ts';
import { CORNERS_OF, EDGE_LOOP } from './outline.ts';
import type { PartEdge, PartEdges } from './part-edge.ts';

/**
 * Into which strips does the banding of one piece fall?
 *
 * A rounded corner joins its two edges into one strip when both carry the same product; a chain of such corners
 * makes one strip of three or four edges, and four of them a closed strip. A strip is its run plus the overhang at
 * both ends; on a closed one the two overhangs overlap at the joint and are cut through there.
 *
 * `runs`: run of each edge, mm. `overhangMm`: mm at each end; null when the setting cannot be used. Result: strips in
 * running order from the left edge round by the front (a closed one from the front), with null lengths where a run is
 * not known. Edges whose product cannot be used have no strip. Source of the overhang: common practice, no source;
 * magazine articles give 1 to 2 in more than the edge in all.
 *
 * Example: left, front and right in one veneer with both front corners rounded is one strip "left+front+right".
 */
export function joinStrips({
  edges,
  outline,
  runs,
  overhangMm,
}: {
  readonly edges: PartEdges;
  readonly outline: FinishedOutline;
  readonly runs: readonly EdgePlan[];
  readonly overhangMm: number | null;
}): StripPlan[] {
  const runOf = new Map(runs.map(({ id, runMm }) => [id, runMm]));
  const strips = chains(edges, outline);
  return strips.map(({ chain, closed }): StripPlan => {
    const first = edges[chain[0] as EdgeName];
    const id = chain.join('+');
    const runMm = sumOfRuns(chain, runOf, outline.path);
    return {
      id,
      bandingId: first.treatment,
      edges: chain,
      closed,
      runMm,
      stripMm: stripLength(runMm, overhangMm, closed, `${outline.path}/strips/${id}/runMm`),
    };
  });
}

interface Chain {
  readonly chain: readonly EdgeName[];
  readonly closed: boolean;
}

function chains(edges: PartEdges, outline: FinishedOutline): Chain[] {
  const joinsNext = (name: EdgeName): boolean => {
    const corner = CORNERS_OF[name][1];
    const next = edges[EDGE_LOOP[(EDGE_LOOP.indexOf(name) + 1) % EDGE_LOOP.length] as EdgeName];
    return (
      carriesBand(edges[name]) &&
      (outline.corners?.[corner] ?? 0) > 0 &&
      next.treatment === edges[name].treatment
    );
  };
  const breakAt = EDGE_LOOP.findIndex((name) => !joinsNext(name));
  if (breakAt < 0) return [{ chain: ['front', 'right', 'back', 'left'], closed: true }];

  const found: EdgeName[][] = [];
  let open: EdgeName[] | null = null;
  for (let step = 1; step <= EDGE_LOOP.length; step++) {
    const name = EDGE_LOOP[(breakAt + step) % EDGE_LOOP.length] as EdgeName;
    if (!carriesBand(edges[name])) continue;
    if (open === null) {
      open = [];
      found.push(open);
    }
    open.push(name);
    if (!joinsNext(name)) open = null;
  }
  const place = ({ chain }: Chain) => EDGE_LOOP.indexOf(chain[0] as (typeof EDGE_LOOP)[number]);
  return found.map((chain) => ({ chain, closed: false })).sort((one, other) => place(one) - place(other));
}

function carriesBand(edge: PartEdge): boolean {
  return edge.banded && edge.band !== null;
}

function sumOfRuns(chain: readonly EdgeName[], runOf: ReadonlyMap<EdgeName, Figure>, path: string): Figure {
  let runMm: number | null = 0;
  const inputs = chain.map((name) => {
    const value = runOf.get(name)?.value ?? null;
    runMm = runMm === null || value === null ? null : runMm + value;
    return {
      name: `run of the ${name} edge`,
      value,
      unit: 'mm' as const,
      from: `${path}/edges/${name}/runMm`,
    };
  });
  return figure(runMm, 'mm', {
    rule:
      chain.length === 1
        ? 'run of the strip = run of its edge'
        : 'run of the strip = sum of the runs of its edges',
    inputs,
    ...(runMm === null ? { notes: ['The run of one of its edges is not known.'] } : {}),
  });
}

function stripLength(runMm: Figure, overhangMm: number | null, closed: boolean, from: string): Figure {
  return figure(runMm.value === null || overhangMm === null ? null : runMm.value + 2 * overhangMm, 'mm', {
    rule: closed ? 'closed strip = run + one overlap of 2 x overhang' : 'strip = run + 2 x overhang',
    inputs: [
      { name: 'run', value: runMm.value, unit: 'mm', from },
      { name: 'overhang', value: overhangMm, unit: 'mm', source: 'project setting' },
    ],
  });
}
