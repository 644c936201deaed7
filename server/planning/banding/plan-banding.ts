import type { BandingPlan, PartPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { bandingStrips } from './banding-strips.ts';
import { planProductBanding } from './plan-product-banding.ts';

/**
 * What is needed of every banding product, which rolls are bought, and what is cut from each?
 *
 * `parts`: planned parts, with their strips in mm. Result: a plan per product that the part list uses, in the order of
 * first use, and the problems. Products that cannot be used have no strips; their problem sits at the part. No source:
 * the functions called name theirs.
 *
 * Example: a part list without banding has no banding plans.
 */
export function planBanding(
  input: ProjectInput,
  parts: readonly PartPlan[],
): { readonly banding: readonly BandingPlan[]; readonly problems: readonly Problem[] } {
  const { spareStrips } = input.settings;
  const spare = Number.isInteger(spareStrips) && spareStrips >= 0 ? spareStrips : null;
  const problems: Problem[] = spare === null ? [sparesInvalid(spareStrips)] : [];
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const names = new Map(input.parts.map(({ id, name }) => [id, name]));
  const banding: BandingPlan[] = [];
  for (const [id, rows] of bandingStrips(parts)) {
    const product = products.get(id);
    if (product === undefined)
      throw new RangeError(`planBanding: a strip names ${id}, which is not in the catalogue`);
    const planned = planProductBanding(
      product,
      rows,
      spare,
      input,
      (partId) => names.get(partId) || `part ${partId}`,
    );
    banding.push(planned.banding);
    problems.push(...planned.problems);
  }
  return { banding, problems };
}

function sparesInvalid(spareStrips: number): Problem {
  return {
    code: 'setting-invalid',
    severity: 'error',
    at: { table: 'settings', id: null, field: 'spareStrips' },
    message: `The number of spare strips is ${spareStrips}; it must be a whole number from 0.`,
    wayOut: 'Enter how many spare strips to cut of each banding, or 0.',
  };
}
