import { type Figure, type FigureUnit, figure } from '../figure.ts';
import type { CoatPlan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectSettings, RecipeStep } from '../project-input.ts';
import type { CoatBasis } from './coat-basis.ts';
import { coatShares } from './coat-shares.ts';
import type { Liquid } from './liquid.ts';
import { litresFigure } from './litres-figure.ts';
import { mixesFigure } from './mixes-figure.ts';
import { thinnerFigure } from './thinner-figure.ts';
import { wetFilmFromDry } from './wet-film-from-dry.ts';

/**
 * Everything about one coat: litres at each end of the coverage range, thinner, mixes, and the products they fall on.
 *
 * @param liquid what is laid on; null when the step does not say, and then every figure is unknown
 * @param thinner the thinner product, when the step has one
 * @param coverageChoice which end the coat's own litres go by
 *
 * Source: `litresFigure` and its siblings; nothing is computed here.
 */
export function planCoat({
  step,
  number,
  liquid,
  thinner,
  basis,
  coverageChoice,
}: {
  readonly step: RecipeStep;
  readonly number: number;
  readonly liquid: Liquid | null;
  readonly thinner: Product | null;
  readonly basis: CoatBasis;
  readonly coverageChoice: ProjectSettings['coverageChoice'];
}): CoatPlan {
  const head = { id: `${step.id}-${number}`, stepId: step.id, number, kind: step.kind, method: step.method };
  const pieces = without('pcs', 'A coat wears out no abrasive.');
  if (liquid === null) {
    const unknown = without('L', 'Unknown, because the step does not say what is laid on.');
    return {
      ...head,
      name: '',
      litres: unknown,
      litresAtLowCoverage: unknown,
      litresAtTypicalCoverage: unknown,
      litresAtHighCoverage: unknown,
      thinnerLitres: unknown,
      mixes: without('pcs', 'Unknown, because the step does not say what is laid on.'),
      pieces,
      shares: [],
    };
  }
  const ends = {
    low: litresFigure(liquid, 'low', basis),
    typical: litresFigure(liquid, 'typical', basis),
    high: litresFigure(liquid, 'high', basis),
  };
  const litres = withNotes(ends[coverageChoice], wetFilmNotes(liquid, step, basis));
  const water = step.thinning > 0 && thinner === null;
  const thinning = thinnerFigure(
    litres,
    basis,
    !water
      ? null
      : liquid.waterborne
        ? 'Thinned with water from the tap: nothing to buy.'
        : 'No thinner is chosen, so none is on the buy list.',
  );
  return {
    ...head,
    name: liquid.name,
    litres,
    litresAtLowCoverage: ends.low,
    litresAtTypicalCoverage: ends.typical,
    litresAtHighCoverage: ends.high,
    thinnerLitres: thinning,
    mixes: mixesFigure(liquid, basis),
    pieces,
    shares: coatShares(
      liquid,
      litres,
      thinner === null || step.thinning === 0 ? null : { product: thinner, litres: thinning },
      basis,
    ),
  };
}

/** The wet film to hold a comb against; wiping leaves no film to measure. */
function wetFilmNotes(liquid: Liquid, { method }: RecipeStep, { values }: CoatBasis): readonly string[] {
  if (liquid.film === null || values.thinning === null || method === 'wipe') return [];
  const wetUm = wetFilmFromDry({ ...liquid.film, thinning: values.thinning });
  return [
    `Lay it about ${wetUm.toFixed(0)} um wet: ${liquid.film.dryFilmUm} um dry x (1 + thinning) / ${liquid.film.solidsPercent} % solids.`,
  ];
}

function withNotes(plain: Figure, notes: readonly string[]): Figure {
  if (notes.length === 0) return plain;
  return { ...plain, working: { ...plain.working, notes: [...(plain.working.notes ?? []), ...notes] } };
}

function without(unit: FigureUnit, note: string): Figure {
  return figure(null, unit, { rule: 'does not apply or is unknown', inputs: [], notes: [note] });
}
