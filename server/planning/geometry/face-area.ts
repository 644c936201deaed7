import { type Figure, figure } from '../figure.ts';
import { CORNER_AREA_LOST, MM2_PER_M2 } from './constants.ts';
import type { FinishedOutline } from './edge-outline.ts';

/**
 * How large is one face of a part?
 *
 * area = length x width - (1 - pi/4) x radius squared for each rounded corner
 *
 * `outline`: finished sizes, mm. Result: m2; null where a size is not known. Source: plane geometry, exact.
 *
 * Example: a round top of 1219.2 mm is 1.1675 m2: pi/4 x 1.2192 squared.
 */
export function faceArea({ lengthMm, widthMm, corners, path }: FinishedOutline): Figure {
  const known = lengthMm !== null && widthMm !== null && corners !== null;
  const squares = known ? corners.reduce((sum, radiusMm) => sum + radiusMm * radiusMm, 0) : 0;
  const areaM2 = known ? (lengthMm * widthMm - CORNER_AREA_LOST * squares) / MM2_PER_M2 : null;
  const rounded = corners?.filter((radiusMm) => radiusMm > 0) ?? [];
  return figure(areaM2, 'm2', {
    rule:
      rounded.length === 0
        ? 'face = length x width'
        : 'face = length x width - (1 - pi/4) x radius squared for each rounded corner',
    inputs: [
      { name: 'finished length', value: lengthMm, unit: 'mm', from: `${path}/lengthMm` },
      { name: 'finished width', value: widthMm, unit: 'mm', from: `${path}/widthMm` },
      ...rounded.map((radiusMm) => ({ name: 'corner radius', value: radiusMm, unit: 'mm' as const })),
    ],
    ...(known ? {} : { notes: ['The size or a corner is not known.'] }),
  });
}
