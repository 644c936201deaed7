import { type Figure, type FigureUnit, figure } from '../figure.ts';
import type { CoatPlan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { RecipeStep } from '../project-input.ts';
import { piecesForArea } from './pieces-for-area.ts';
import { readFigure } from './read-figure.ts';

/**
 * One pass of dry work with an abrasive (or a dusting cloth): the pieces it wears out.
 *
 * @param product what is used; null when the step does not say
 * @param area area of the recipe, m2
 * @returns pieces, unrounded (packs round up once); null when the product, its area per piece or the area is unknown
 *
 * Source: `piecesForArea`.
 */
export function planDryPass({
  step,
  number,
  product,
  area,
  recipePath,
}: {
  readonly step: RecipeStep;
  readonly number: number;
  readonly product: Product | null;
  readonly area: Figure;
  readonly recipePath: string;
}): CoatPlan {
  const dry = (unit: FigureUnit): Figure =>
    figure(null, unit, { rule: 'does not apply', inputs: [], notes: ['Dry work: no liquid.'] });
  return {
    id: `${step.id}-${number}`,
    stepId: step.id,
    number,
    kind: step.kind,
    method: null,
    name: product?.name ?? '',
    litres: dry('L'),
    litresAtLowCoverage: dry('L'),
    litresAtTypicalCoverage: dry('L'),
    litresAtHighCoverage: dry('L'),
    thinnerLitres: dry('L'),
    mixes: dry('pcs'),
    pieces: piecesFigure(product, area, recipePath),
    shares: [],
  };
}

function piecesFigure(product: Product | null, area: Figure, recipePath: string): Figure {
  const rate = product === null ? null : readFigure(product, 'areaPerPiece');
  const areaPerPieceM2 = rate?.value ?? null;
  const value =
    area.value === null || areaPerPieceM2 === null
      ? null
      : piecesForArea({ areaM2: area.value, areaPerPieceM2 });
  const notes = [
    ...(product === null ? ['Unknown, because the step does not say what is used.'] : []),
    ...(product !== null && areaPerPieceM2 === null ? ['The area one piece serves is not known.'] : []),
    ...(area.working.notes ?? []),
  ];
  return figure(value, 'pcs', {
    rule: 'pieces = area / area per piece (not rounded; packs are rounded up once)',
    inputs: [
      { name: 'area', value: area.value, unit: 'm2', from: `${recipePath}/areaM2` },
      {
        name: `area one piece of ${product?.name ?? 'abrasive'} serves`,
        value: areaPerPieceM2,
        unit: 'm2',
        ...(rate === null ? {} : { source: rate.source }),
      },
    ],
    ...(notes.length === 0 ? {} : { notes }),
  });
}
