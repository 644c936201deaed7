import { type Figure, figure } from '../figure.ts';
import { applicationMinutes } from './application-minutes.ts';
import type { CoatBasis } from './coat-basis.ts';
import { APPLICATION_RATE_M2_PER_MIN, PRACTICE_SOURCE } from './constants.ts';
import type { Liquid } from './liquid.ts';
import { mixesForPotLife } from './mixes-for-pot-life.ts';

/**
 * How many mixes the coat is made in. Whole mixes; null for a liquid of one part, and while the pot life or the area
 * is unknown. Source: `mixesForPotLife`, `applicationMinutes`.
 */
export function mixesFigure(liquid: Liquid, { area, method, recipePath }: CoatBasis): Figure {
  if (!liquid.twoPart)
    return figure(null, 'pcs', {
      rule: 'mixes = application minutes / pot life, rounded up',
      inputs: [],
      notes: ['Not a two-part product: nothing to mix against the clock.'],
    });
  const minutes = area.value === null ? null : applicationMinutes({ areaM2: area.value, method });
  const { value: potLifeMin, source } = liquid.potLife;
  return figure(
    minutes === null || potLifeMin === null ? null : mixesForPotLife({ minutes, potLifeMin }),
    'pcs',
    {
      rule: 'mixes = (area / rate) / pot life, rounded up',
      inputs: [
        { name: 'area', value: area.value, unit: 'm2', from: `${recipePath}/areaM2` },
        {
          name: `rate by ${method}, m2/min`,
          value: APPLICATION_RATE_M2_PER_MIN[method],
          unit: '',
          source: PRACTICE_SOURCE,
        },
        { name: 'application time', value: minutes, unit: 'min' },
        { name: 'pot life', value: potLifeMin, unit: 'min', source },
      ],
      ...(potLifeMin === null ? { notes: ['The pot life is not known.'] } : {}),
    },
  );
}
