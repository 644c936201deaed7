import { coatFacts } from '../../calendar/coat-facts.ts';
import type { Product } from '../../product.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { AirCoatOfTask } from './air-coats.ts';
import { productVapour } from './product-vapour.ts';

/**
 * What would be in the air with water-based products where there are some?
 *
 * @param input the project, for its catalogue and the end of coverage ranges it reckons with; m2/L, g/L
 * @param coats liquids of the coats as they are; litres
 * @returns the coats with each solvent-based finish exchanged for the water-based one of the same role that gives off
 *   least, and the exchanges; null where nothing can be exchanged
 *
 * Source: a rule of ours. Valid range: any. Departures: litres change with the coverage of the two products; only a product
 * whose vapour and coverage are known is offered, and colour is not compared, so stains are left as they are. Thinner of
 * an exchanged coat goes. Example: oil-based polyurethane, satin: the water-based one.
 */
export function waterBasedCoats(
  input: ProjectInput,
  coats: readonly AirCoatOfTask[],
): {
  readonly coats: readonly AirCoatOfTask[];
  readonly exchanged: ReadonlyMap<string, string>;
} | null {
  const exchanged = new Map<string, string>();
  const exchangedTasks = new Map<string, string>();
  const made = coats.map((coat): AirCoatOfTask => {
    const { product } = coat;
    const instead = product === null ? null : substitute(product, input);
    if (product === null || instead === null) return coat;
    const factor = coverage(product, input) / coverage(instead, input);
    exchanged.set(product.name, instead.name);
    exchangedTasks.set(coat.task.id, instead.id);
    const { touchDryMin } = coatFacts([instead]);
    const vapour = productVapour(instead, input.catalogue);
    return {
      ...coat,
      product: instead,
      name: `${instead.name}, coat ${coat.task.number}`,
      litres: coat.litres === null ? null : coat.litres * factor,
      vocGPerL: vapour.vocGPerL,
      vocSource: vapour.vocSource,
      solvents: vapour.solvents,
      emission:
        touchDryMin === null
          ? { kind: 'all-at-once' }
          : { kind: 'touch-dry', touchDryMin: quick(instead) ?? touchDryMin },
    };
  });
  if (exchanged.size === 0) return null;
  return {
    coats: made.filter(({ task, product }) => !(product?.kind === 'thinner' && exchangedTasks.has(task.id))),
    exchanged,
  };
}

function substitute(product: Product, input: ProjectInput): Product | null {
  const { carrier, role } = product.choices;
  if (carrier === undefined || carrier === 'water' || role === undefined || role === 'stain') return null;
  if (!Number.isFinite(coverage(product, input))) return null;
  const candidates = input.catalogue.products
    .filter((one) => one.kind === 'finish' && !one.retired && one.choices.carrier === 'water')
    .filter((one) => one.choices.role === role && one.choices.hardenerId === undefined)
    .filter((one) => Number.isFinite(coverage(one, input)))
    .flatMap((one) => {
      const { vocGPerL, solvents } = productVapour(one, input.catalogue);
      return vocGPerL === null || solvents.length === 0 ? [] : [{ one, vocGPerL }];
    });
  const least = candidates.toSorted(
    (left, right) =>
      left.vocGPerL - right.vocGPerL ||
      Number(isOfSheen(right.one, product)) - Number(isOfSheen(left.one, product)) ||
      left.one.id.localeCompare(right.one.id),
  )[0];
  return least?.one ?? null;
}

/** Finishes are named with their sheen last: "..., satin". */
function isOfSheen(one: Product, other: Product): boolean {
  const last = ({ name }: Product): string => name.split(/[\s,]+/).at(-1) ?? '';
  return last(one) === last(other);
}

/** NaN where it is not known. */
function coverage({ figures }: Product, { settings }: ProjectInput): number {
  const known = figures.coverage;
  return known?.[settings.coverageChoice] ?? known?.typical ?? known?.low ?? Number.NaN;
}

function quick({ figures: { touchDry } }: Product): number | null {
  return touchDry?.low ?? touchDry?.typical ?? null;
}
