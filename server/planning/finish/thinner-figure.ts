import { type Figure, figure } from '../figure.ts';
import type { CoatBasis } from './coat-basis.ts';
import { thinnerLitres } from './thinner-litres.ts';

/**
 * The thinner of one coat. Litres; null when the litres or the share are unknown. Source: `thinnerLitres`.
 */
export function thinnerFigure(litres: Figure, basis: CoatBasis, note: string | null): Figure {
  const { thinning } = basis.values;
  const value =
    thinning === 0
      ? 0
      : thinning === null || litres.value === null
        ? null
        : thinnerLitres({ litres: litres.value, thinning });
  return figure(value, 'L', {
    rule: 'thinner = litres x thinning',
    inputs: [
      { name: 'litres of the coat', value: litres.value, unit: 'L', from: `${basis.path}/litres` },
      { name: 'thinning', value: thinning, unit: 'ratio', source: 'entered in the step' },
    ],
    ...(note === null ? {} : { notes: [note] }),
  });
}
