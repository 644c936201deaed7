import type { Solvent, SolventFigure } from './solvent.ts';
import { strictestLimit } from './strictest-limit.ts';

/** What the air check needs to know of a vapour; null is unknown. */
export interface AirSubstance {
  readonly id: string;
  readonly name: string;
  readonly molarMassGPerMol: number | null;
  readonly lelPercent: number | null;
  /** Where the LEL comes from; null when it is not known. */
  readonly lelSource: string | null;
  /** Where the LEL is unknown: the lowest value found elsewhere, and where. Never used as if it were the LEL. */
  readonly lelCautious: { readonly percent: number; readonly source: string } | null;
  /** Shift-long exposure limit, and where it comes from. */
  readonly limitMgPerM3: number | null;
  readonly limitSource: string | null;
  /** 15-minute limit; null where none is set. */
  readonly shortTermMgPerM3: number | null;
  /** Limit never to be exceeded; null where none is set. */
  readonly ceilingMgPerM3: number | null;
}

/**
 * Which figures of a catalogue solvent does the air check go by?
 *
 * @param solvent the solvent with all its figures: molar mass g/mol, LEL percent, limits in ppm or mg/m3
 * @returns molar mass, LEL and the strictest limit of each kind in mg/m3; null where unknown
 *
 * Source: the catalogue's own sources; that the strictest limit counts is a rule of ours. Valid range: any solvent read by
 * the catalogue. Departures: a solvent with no shift-long limit but a short-term or ceiling one is held to that all day.
 * Example: mineral spirits: LEL null, cautious 0.7 %, 350 mg/m3 for a shift, 1800 mg/m3 over 15 minutes.
 */
export function airSubstance(solvent: Solvent): AirSubstance {
  const longTerm = strictestLimit(solvent, 'long-term');
  const shortTerm = strictestLimit(solvent, 'short-term');
  const ceiling = strictestLimit(solvent, 'ceiling');
  const limit = longTerm ?? shortTerm ?? ceiling;
  const lelPercent = solvent.lelPercent?.value ?? null;
  return {
    id: solvent.id,
    name: solvent.name,
    molarMassGPerMol: solvent.molarMassGPerMol?.value ?? null,
    lelPercent,
    lelSource: lelPercent === null ? null : (solvent.lelPercent?.source ?? null),
    lelCautious: lelPercent === null ? lowest(solvent.lelElsewhere) : null,
    limitMgPerM3: limit?.mgPerM3 ?? null,
    limitSource: limit?.source ?? null,
    shortTermMgPerM3: shortTerm?.mgPerM3 ?? null,
    ceilingMgPerM3: ceiling?.mgPerM3 ?? null,
  };
}

function lowest(figures: readonly SolventFigure[]): AirSubstance['lelCautious'] {
  return figures
    .flatMap(({ value, source }) => (value === null ? [] : [{ percent: value, source }]))
    .reduce<AirSubstance['lelCautious']>(
      (least, found) => (least === null || found.percent < least.percent ? found : least),
      null,
    );
}
