import { type Figure, figure } from '../figure.ts';
import type { StripPlan } from '../plan-output.ts';
import { MM_PER_M } from './constants.ts';

/**
 * How many metres of edge are banded on all pieces of a row?
 *
 * metres = pieces x sum of the strip runs / 1000; the overhang is not counted.
 *
 * `unusable`: banded edges whose product cannot be used. Result: m; null where a run or the quantity is not known, 0
 * without a band. No source: a definition.
 *
 * Example: 4 shelves with a front of 600 mm: 2.4 m.
 */
export function totalBanded(
  quantity: Figure,
  strips: readonly StripPlan[],
  unusable: number,
  path: string,
): Figure {
  if (strips.length + unusable === 0) return NO_BAND;
  let runMm: number | null = unusable === 0 ? 0 : null;
  for (const strip of strips)
    runMm = runMm === null || strip.runMm.value === null ? null : runMm + strip.runMm.value;
  const known = runMm !== null && quantity.value !== null;
  return figure(known ? ((quantity.value as number) * (runMm as number)) / MM_PER_M : null, 'm', {
    rule: 'metres banded = pieces x sum of the strip runs / 1000, without overhang',
    inputs: [
      { name: 'pieces', value: quantity.value, unit: 'pcs', from: `${path}/quantity` },
      ...strips.map((strip) => ({
        name: `run of ${strip.id}`,
        value: strip.runMm.value,
        unit: 'mm' as const,
        from: `${path}/strips/${strip.id}/runMm`,
      })),
    ],
    ...(known ? {} : { notes: ['A run or the quantity is not known.'] }),
  });
}

/**
 * Which area of all pieces of a row gets a finish?
 *
 * area = pieces x (each face with a recipe + the seen edges if any face has one)
 *
 * `faces`: the areas that get a recipe, m2, with the field each has in the plan. Result: m2; 0 where nothing gets a
 * recipe, null where an area or the quantity is not known. No source: a definition.
 *
 * Example: 4 shelves of 0.18 m2 finished on both faces with 0.0108 m2 of seen edge: 1.4832 m2.
 */
export function totalFinish(
  quantity: Figure,
  faces: readonly { readonly name: string; readonly field: string; readonly area: Figure }[],
  path: string,
): Figure {
  if (faces.length === 0) return NO_FINISH;
  let areaM2: number | null = 0;
  for (const { area } of faces) areaM2 = areaM2 === null || area.value === null ? null : areaM2 + area.value;
  const known = areaM2 !== null && quantity.value !== null;
  return figure(known ? (quantity.value as number) * (areaM2 as number) : null, 'm2', {
    rule: 'area finished = pieces x (faces with a recipe + seen edges)',
    inputs: [
      { name: 'pieces', value: quantity.value, unit: 'pcs', from: `${path}/quantity` },
      ...faces.map(({ name, field, area }) => ({
        name,
        value: area.value,
        unit: 'm2' as const,
        from: `${path}/${field}`,
      })),
    ],
    ...(known ? {} : { notes: ['An area or the quantity is not known.'] }),
  });
}

const NO_BAND = figure(0, 'm', { rule: 'no edge is banded', inputs: [] });
const NO_FINISH = figure(0, 'm2', { rule: 'no face has a finish recipe', inputs: [] });
