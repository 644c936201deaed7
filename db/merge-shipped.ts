import type { Pack, Product } from '../server/planning/product.ts';
import { canonicalJson } from './canonical-json.ts';

/** What belongs together and is corrected, or kept, as one: a list and the evidence it rests on. */
const TOGETHER = [
  ['name'],
  ['unit'],
  ['note'],
  ['recoat', 'recoatEvidence'],
  ['solvents', 'solventsEvidence'],
] as const satisfies readonly (readonly (keyof Product)[])[];

/**
 * Which values has a shipped product after a correction of the shipped catalogue?
 *
 * Each value that still is what was shipped before takes what is shipped now; each that the user has changed, added or
 * removed stays the user's. A figure with its source is one value, and so are a pack with its price, the recoat
 * intervals, and the solvents. Short name and retirement are the user's.
 *
 * @param before as it was shipped when this database last saw it
 * @param mine as it stands in the database
 * @param now as it is shipped now
 *
 * Example: shipped at 9 m2/L, corrected to 8.5, and given a price by the user: 8.5 m2/L at the user's price.
 */
export function mergeShipped(before: Product, mine: Product, now: Product): Product {
  const merged: Record<string, unknown> = { ...mine };
  for (const names of TOGETHER) {
    const held = (product: Product) => names.map((name) => product[name] ?? null);
    if (canonicalJson(held(mine)) !== canonicalJson(held(before))) continue;
    for (const name of names) {
      if (now[name] === undefined) delete merged[name];
      else merged[name] = now[name];
    }
  }
  return {
    ...(merged as unknown as Product),
    choices: mergeNamed(before.choices, mine.choices, now.choices),
    figures: mergeNamed(before.figures, mine.figures, now.figures),
    packs: mergePacks(before.packs, mine.packs, now.packs),
  };
}

/** Value by value: the user's where it differs from what was shipped, else what is shipped now. */
function mergeNamed<T extends object>(before: T, mine: T, now: T): T {
  const merged: Partial<T> = {};
  for (const key of new Set([...Object.keys(mine), ...Object.keys(now)]) as Set<keyof T>) {
    const own = canonicalJson(mine[key] ?? null) !== canonicalJson(before[key] ?? null);
    const value = own ? mine[key] : now[key];
    if (value !== undefined) merged[key] = value;
  }
  return merged as T;
}

/** Pack by pack; the order is the user's, with what is new behind, or where the user has left them alone ours. */
function mergePacks(before: readonly Pack[], mine: readonly Pack[], now: readonly Pack[]): readonly Pack[] {
  if (canonicalJson(mine) === canonicalJson(before)) return now;
  return Object.values(mergeNamed(byId(before), byId(mine), byId(now)));
}

function byId(packs: readonly Pack[]): Readonly<Record<string, Pack>> {
  return Object.fromEntries(packs.map((pack) => [pack.id, pack]));
}
