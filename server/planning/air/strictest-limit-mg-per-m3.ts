import { LONG_TERM_MIN, SHORT_TERM_MIN } from './constants.ts';
import { ppmToMgPerM3 } from './ppm-to-mg-per-m3.ts';
import type { ExposureLimit, Solvent } from './solvent.ts';

/**
 * Which of a solvent's exposure limits of one kind is the strictest?
 *
 * @param solvent limits in ppm or mg/m3, molar mass g/mol
 * @param kind `long-term` for a shift, `short-term` for 15 minutes, `ceiling` for never
 * @returns mg/m3; null where no limit of the kind is known in a usable unit
 *
 * Source: limits from the catalogue; that the strictest one counts is a rule of ours. Valid range: any solvent.
 * Departures: a ceiling that its body measures over 15 minutes is a short-term limit. Where both units are printed, the
 * mg/m3 figure is taken; ppm alone is converted at 24.45 L/mol, and needs a molar mass. A ten-hour figure (NIOSH) is
 * compared with eight-hour averages as it stands.
 * Example: toluene, long-term: NIOSH 375, OSHA 200 ppm = 753, ACGIH 188: 188 mg/m3.
 */
export function strictestLimitMgPerM3(
  solvent: Pick<Solvent, 'limits' | 'molarMassGPerMol'>,
  kind: 'long-term' | 'short-term' | 'ceiling',
): number | null {
  const molarMass = solvent.molarMassGPerMol?.value ?? null;
  const values = solvent.limits
    .filter((limit) => kindOf(limit) === kind)
    .flatMap(({ ppm, mgPerM3 }) => {
      if (mgPerM3 !== null) return [mgPerM3];
      return ppm === null || molarMass === null ? [] : [ppmToMgPerM3(ppm, molarMass)];
    });
  return values.length === 0 ? null : Math.min(...values);
}

function kindOf({ averagedOverMin }: ExposureLimit): 'long-term' | 'short-term' | 'ceiling' {
  if (averagedOverMin === null || averagedOverMin < SHORT_TERM_MIN) return 'ceiling';
  return averagedOverMin >= LONG_TERM_MIN ? 'long-term' : 'short-term';
}
