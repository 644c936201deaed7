import { AREA_DUST_M2 } from './constants.ts';

/** Above so many piece-batch comparisons pieces are no longer shared out evenly. */
const MOST_COMPARISONS = 20_000_000;

/** One kind of load that a batch can take only so much of, e.g. rack area. `each` is per piece, in the caller's unit. */
export interface BatchLoad {
  readonly limit: number;
  readonly each: readonly number[];
}

/**
 * How are pieces shared out over as few batches as fit, evenly?
 *
 * @param counts how many equal pieces there are of each kind
 * @param loads limits and loads per piece, in one unit per load (m2 here)
 * @returns per batch: how many pieces of each kind
 *
 * Source: a rule of ours: least-loaded batch first, largest pieces first (R. L. Graham, SIAM Journal on Applied
 * Mathematics 17, 1969), with one batch more until all fit. Valid range: whole counts. Departures: a piece over a limit
 * gets a batch of its own; the caller tells the user. Example: 5 pieces of 1 m2, limit 2 m2: 2, 2 and 1.
 */
export function splitBatches(counts: readonly number[], loads: readonly BatchLoad[]): number[][] {
  const tooLarge = (kind: number): boolean =>
    loads.some(({ limit, each }) => (each[kind] ?? 0) > limit + AREA_DUST_M2);
  const alone = counts.flatMap((count, kind) =>
    tooLarge(kind) ? Array.from({ length: count }, () => counts.map((_, at) => (at === kind ? 1 : 0))) : [],
  );
  const kinds = counts
    .map((_, kind) => kind)
    .filter((kind) => !tooLarge(kind) && (counts[kind] ?? 0) > 0)
    .sort((left, right) => weight(right) - weight(left));
  if (kinds.length === 0) return alone;

  let batches = 1;
  for (const { limit, each } of loads) {
    const total = kinds.reduce((sum, kind) => sum + (each[kind] ?? 0) * (counts[kind] ?? 0), 0);
    if (limit < Number.POSITIVE_INFINITY)
      batches = Math.max(batches, Math.ceil((total - AREA_DUST_M2) / limit));
  }
  const pieces = kinds.reduce((sum, kind) => sum + (counts[kind] ?? 0), 0);
  if (batches * pieces > MOST_COMPARISONS) return [...fillInTurn(), ...alone];
  for (; ; batches++) {
    const shared = shareOut(batches);
    if (shared !== null) return [...shared.filter((batch) => batch.some((count) => count > 0)), ...alone];
  }

  /** Largest share of any limit that one piece takes. */
  function weight(kind: number): number {
    return (
      Math.max(...loads.map(({ limit, each }) => (each[kind] ?? 0) / limit), 0) || (loads[0]?.each[kind] ?? 0)
    );
  }

  /** For more pieces than a calendar can hold anyway: one batch filled after the other. */
  function fillInTurn(): number[][] {
    const filled: number[][] = [];
    let room: number[] = [];
    for (const kind of kinds)
      for (let piece = 0; piece < (counts[kind] ?? 0); piece++) {
        const each = loads.map((load) => load.each[kind] ?? 0);
        if (filled.length === 0 || room.some((left, load) => left + AREA_DUST_M2 < (each[load] ?? 0))) {
          filled.push(counts.map(() => 0));
          room = loads.map(({ limit }) => limit);
        }
        const batch = filled.at(-1) as number[];
        batch[kind] = (batch[kind] ?? 0) + 1;
        room = room.map((left, load) => left - (each[load] ?? 0));
      }
    return filled;
  }

  function shareOut(number: number): number[][] | null {
    const shared = Array.from({ length: number }, () => counts.map(() => 0));
    const filled = shared.map(() => loads.map(() => 0));
    for (const kind of kinds)
      for (let piece = 0; piece < (counts[kind] ?? 0); piece++) {
        const fits = (at: number): boolean =>
          loads.every(
            ({ limit, each }, load) => (filled[at]?.[load] ?? 0) + (each[kind] ?? 0) <= limit + AREA_DUST_M2,
          );
        let best = -1;
        for (let at = 0; at < number; at++)
          if (fits(at) && (best < 0 || (filled[at]?.[0] ?? 0) < (filled[best]?.[0] ?? 0) - AREA_DUST_M2))
            best = at;
        const batch = shared[best];
        const fill = filled[best];
        if (batch === undefined || fill === undefined) return null;
        batch[kind] = (batch[kind] ?? 0) + 1;
        for (const [load, { each }] of loads.entries()) fill[load] = (fill[load] ?? 0) + (each[kind] ?? 0);
      }
    return shared;
  }
}
