/** A pack as the kernel sees it: whole grid steps and a whole, non-negative cost. */
export interface GridPack {
  readonly size: number;
  readonly cost: number;
}

interface State {
  /** Grid steps, cost and number of the packs other than base packs. */
  readonly size: number;
  readonly cost: number;
  readonly packs: number;
  readonly before: State | null;
  /** Index of the pack added last; -1 at the start. */
  readonly added: number;
  /** Set when a better state of the same residue has come up. */
  beaten: boolean;
}

interface Mix {
  readonly cost: number;
  readonly size: number;
  readonly packs: number;
  readonly state: State;
  readonly basePacks: number;
}

/**
 * Which packs cover a target at least cost, then least left over, then fewest packs? Unlimited packs of each size.
 *
 * @param target grid steps to cover, whole, above 0
 * @param packs sizes in grid steps, whole, above 0, and whole costs of 0 or more
 * @param mostStates give up beyond this many partial mixes
 * @param freeBasePacks take base packs beforehand for all but this many base packs' worth of the target; Infinity
 *   for none
 * @returns how many of each pack, in the order given, which always cover the target; and whether the search ran to its end, so
 *   that no mix can be better (but for base packs taken beforehand)
 *
 * Method: Gomory's group relaxation of the unbounded covering knapsack (Gomory, "Some polyhedra related to
 * combinatorial problems", 1969: from memory), kept exact by two rules, so that its size does not grow with the need:
 *
 * 1. The base is the pack of least cost per step. Any mix of the other packs is finished with base packs alone.
 * 2. Each step covered costs at least the base's rate, so a partial mix whose cost plus that rate for the rest is above
 *    the best plan known is dropped. The best plan is never dearer than base packs alone, so what a mix may spend
 *    beyond the base's rate is less than one base pack, however large the need.
 * 3. Two partial mixes whose sizes differ by whole base packs reach the same totals; the smaller one, topped up with
 *    base packs, beats the larger one when that costs no more. It never loses the other way: the larger one stays
 *    when it is the cheaper.
 */
export function leastCostMix({
  target,
  packs,
  mostStates,
  freeBasePacks,
}: {
  readonly target: number;
  readonly packs: readonly GridPack[];
  readonly mostStates: number;
  readonly freeBasePacks: number;
}): { readonly counts: readonly number[]; readonly complete: boolean } {
  check(target, packs, freeBasePacks);
  const base = baseOf(packs);
  const { size: baseSize, cost: baseCost } = packAt(packs, base);
  const taken = Math.max(0, Math.ceil(target / baseSize) - freeBasePacks);
  const rest = target - taken * baseSize;

  const start: State = { size: 0, cost: 0, packs: 0, before: null, added: -1, beaten: false };
  let best = finished(start, rest, baseSize, baseCost);
  const states = [start];
  const byResidue = new Map<number, State[]>([[0, [start]]]);

  for (let added = 0; added < packs.length; added++) {
    if (added === base) continue;
    const { size, cost } = packAt(packs, added);
    // The list grows while it is walked: a state made with this pack is extended by the same pack again.
    for (let at = 0; at < states.length; at++) {
      const before = states[at] as State;
      if (before.beaten || before.size >= rest) continue;
      const state: State = {
        size: before.size + size,
        cost: before.cost + cost,
        packs: before.packs + 1,
        before,
        added,
        beaten: false,
      };
      const open = Math.max(0, rest - state.size);
      if (state.cost + (open / baseSize) * baseCost > best.cost + 1e-9 * (1 + best.cost)) continue;
      const mix = finished(state, rest, baseSize, baseCost);
      if (isBetter(mix, best)) best = mix;
      if (open === 0 || !survives(state, byResidue, baseSize, baseCost)) continue;
      states.push(state);
      if (states.length > mostStates)
        return { counts: counts(best, taken, base, packs.length), complete: false };
    }
  }
  return { counts: counts(best, taken, base, packs.length), complete: true };
}

function check(target: number, packs: readonly GridPack[], freeBasePacks: number): void {
  if (!(freeBasePacks >= 1))
    throw new RangeError(`leastCostMix: freeBasePacks must be at least 1, got ${freeBasePacks}`);
  if (!(Number.isSafeInteger(target) && target > 0))
    throw new RangeError(`leastCostMix: target must be a whole number of steps above 0, got ${target}`);
  if (packs.length === 0) throw new RangeError('leastCostMix: packs must not be empty');
  for (const { size, cost } of packs)
    if (!(Number.isSafeInteger(size) && size > 0 && Number.isSafeInteger(cost) && cost >= 0))
      throw new RangeError(
        `leastCostMix: packs need a whole size above 0 and a whole cost of 0 or more, got ${size} at ${cost}`,
      );
}

/** Least cost per step; of equal ones the largest. */
function baseOf(packs: readonly GridPack[]): number {
  let base = 0;
  for (let at = 1; at < packs.length; at++) {
    const { size, cost } = packAt(packs, at);
    const least = packAt(packs, base);
    const difference = cost * least.size - least.cost * size;
    if (difference < 0 || (difference === 0 && size > least.size)) base = at;
  }
  return base;
}

function finished(state: State, rest: number, baseSize: number, baseCost: number): Mix {
  const basePacks = Math.ceil(Math.max(0, rest - state.size) / baseSize);
  return {
    cost: state.cost + basePacks * baseCost,
    size: state.size + basePacks * baseSize,
    packs: state.packs + basePacks,
    state,
    basePacks,
  };
}

function isBetter(left: Mix, right: Mix): boolean {
  if (left.cost !== right.cost) return left.cost < right.cost;
  if (left.size !== right.size) return left.size < right.size;
  return left.packs < right.packs;
}

/** Rule 3: keeps the states of one residue that no other beats, and says whether this one is among them. */
function survives(
  state: State,
  byResidue: Map<number, State[]>,
  baseSize: number,
  baseCost: number,
): boolean {
  const residue = state.size % baseSize;
  const rivals = byResidue.get(residue) ?? [];
  const beats = (smaller: State, larger: State): boolean => {
    const topUp = (larger.size - smaller.size) / baseSize;
    const difference = smaller.cost + topUp * baseCost - larger.cost;
    return topUp >= 0 && (difference < 0 || (difference === 0 && smaller.packs + topUp <= larger.packs));
  };
  if (rivals.some((rival) => beats(rival, state))) return false;
  const kept = rivals.filter((rival) => !beats(state, rival));
  for (const rival of rivals) if (!kept.includes(rival)) rival.beaten = true;
  byResidue.set(residue, [...kept, state]);
  return true;
}

function counts({ state, basePacks }: Mix, taken: number, base: number, length: number): readonly number[] {
  const found = new Array<number>(length).fill(0);
  found[base] = taken + basePacks;
  for (let at: State | null = state; at !== null && at.added >= 0; at = at.before)
    found[at.added] = (found[at.added] ?? 0) + 1;
  return found;
}

function packAt(packs: readonly GridPack[], index: number): GridPack {
  return packs[index] as GridPack;
}
