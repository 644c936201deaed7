import { type Figure, figure } from '../figure.ts';
import type { CoatBasis } from './coat-basis.ts';
import { coatLitres } from './coat-litres.ts';
import type { CoverageEnd } from './coverage-ends.ts';
import type { Liquid } from './liquid.ts';

/**
 * The litres of one coat at one end of the coverage range, with their working.
 *
 * Inputs and result in the units of `coatLitres`, whose source it follows; null when one of them is unknown, and the
 * notes say which.
 */
export function litresFigure(liquid: Liquid, end: CoverageEnd, basis: CoatBasis): Figure {
  const { area, values, firstCoatFactor, lossShare } = basis;
  const coverage = liquid.coverage[end];
  const { transferEfficiency, sessionLossL } = values;
  const inputs = [
    { name: 'area', value: area.value, unit: 'm2', from: `${basis.recipePath}/areaM2` },
    {
      name: `coverage of ${liquid.name} (${end})`,
      value: coverage.value,
      unit: 'm2/L',
      source: coverage.source,
    },
    {
      name: 'transfer efficiency',
      value: transferEfficiency.value,
      unit: 'ratio',
      source: transferEfficiency.source,
    },
    {
      name: 'first-coat factor',
      value: firstCoatFactor.value,
      unit: 'ratio',
      ...(firstCoatFactor.source === '' ? {} : { source: firstCoatFactor.source }),
    },
    { name: 'loss', value: lossShare, unit: 'ratio', source: 'project setting' },
    { name: 'session loss', value: sessionLossL.value, unit: 'L', source: sessionLossL.source },
  ] as const;
  const missing = inputs.filter(({ value }) => value === null).map(({ name }) => name);
  const notes = [
    ...(missing.length === 0 ? [] : [`Unknown because of: ${missing.join(', ')}.`]),
    ...coverage.notes,
    ...firstCoatFactor.notes,
    ...(area.working.notes ?? []),
    ...(area.value === 0
      ? ['Nothing is coated with it, so nothing stays behind in brush or gun either.']
      : []),
  ];
  const value =
    area.value === null ||
    coverage.value === null ||
    transferEfficiency.value === null ||
    firstCoatFactor.value === null ||
    lossShare === null ||
    sessionLossL.value === null
      ? null
      : coatLitres({
          areaM2: area.value,
          coverageM2PerL: coverage.value,
          transferEfficiency: transferEfficiency.value,
          firstCoatFactor: firstCoatFactor.value,
          lossShare,
          sessionLossL: sessionLossL.value,
        });
  return figure(value, 'L', {
    rule: 'litres = area / (coverage x transfer efficiency) x first-coat factor x (1 + loss) + session loss',
    inputs,
    ...(notes.length === 0 ? {} : { notes }),
  });
}
