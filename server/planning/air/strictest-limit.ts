import { LONG_TERM_MIN, SHORT_TERM_MIN } from './constants.ts';
import { ppmToMgPerM3 } from './ppm-to-mg-per-m3.ts';
import type { ExposureLimit, Solvent } from './solvent.ts';

export interface StrictestLimit {
  readonly mgPerM3: number;
  /** The body that set it and where it was read, as printed to the reader. */
  readonly source: string;
}

/**
 * Which of a solvent's exposure limits of one kind is the strictest?
 *
 * @param solvent limits in ppm or mg/m3, molar mass g/mol
 * @param kind `long-term` for a shift, `short-term` for 15 minutes, `ceiling` for never
 * @returns mg/m3 and where it comes from; null where no limit of the kind is known in a usable unit
 *
 * Source: limits from the catalogue; that the strictest one counts is a rule of ours. Valid range: any solvent.
 * Departures: a ceiling that its body measures over 15 minutes is a short-term limit. Where both units are printed, the
 * mg/m3 figure is taken; ppm alone is converted at 24.45 L/mol, and needs a molar mass. A ten-hour figure (NIOSH) is
 * compared with eight-hour averages as it stands.
 * Example: toluene, long-term: NIOSH 375, OSHA 200 ppm = 753, ACGIH 188, Cal/OSHA 37: 37 mg/m3.
 */
export function strictestLimit(
  solvent: Pick<Solvent, 'limits' | 'molarMassGPerMol'>,
  kind: 'long-term' | 'short-term' | 'ceiling',
): StrictestLimit | null {
  const molarMass = solvent.molarMassGPerMol?.value ?? null;
  const values = solvent.limits
    .filter((limit) => kindOf(limit) === kind)
    .flatMap(({ ppm, mgPerM3, body, source }): StrictestLimit[] => {
      const from = source === '' ? body : `${body} (${source})`;
      if (mgPerM3 !== null) return [{ mgPerM3, source: from }];
      return ppm === null || molarMass === null
        ? []
        : [{ mgPerM3: ppmToMgPerM3(ppm, molarMass), source: from }];
    });
  return values.reduce<StrictestLimit | null>(
    (least, limit) => (least === null || limit.mgPerM3 < least.mgPerM3 ? limit : least),
    null,
  );
}

function kindOf({ averagedOverMin }: ExposureLimit): 'long-term' | 'short-term' | 'ceiling' {
  if (averagedOverMin === null || averagedOverMin < SHORT_TERM_MIN) return 'ceiling';
  return averagedOverMin >= LONG_TERM_MIN ? 'long-term' : 'short-term';
}
