import type { AirCheckInput, AirGap } from './air-check-input.ts';
import type { CautiousFire, FireResult } from './air-check-result.ts';
import type { AirSubstance } from './air-substance.ts';
import { coatSources } from './coat-sources.ts';
import { LEL_CEILING_SHARE, LEL_TARGET_SHARE } from './constants.ts';
import { lelMgPerM3 } from './lel-mg-per-m3.ts';
import { neededAirflowM3PerMin } from './needed-airflow-m3-per-min.ts';
import { type RoomPeak, roomPeak } from './room-peak.ts';
import { presentSolvents } from './solvent-shares.ts';

const FIRE_FIELDS: readonly AirGap['field'][] = [
  'calendar',
  'litres',
  'voc',
  'solvents',
  'solvent-shares',
  'molar-mass',
  'lel',
];

/**
 * Does the vapour come near the lower explosive limit?
 *
 * @param input the room and its coats
 * @param missing its gaps, as airGaps lists them
 * @returns peak share of the LEL, the verdict on it, the airflow that keeps it under the target, and the cautious stand-in
 *
 * Source: secondary: coatSources with Le Chatelier's rule, roomPeak, neededAirflowM3PerMin. 25 % is the published ceiling,
 * 10 % the planning target (constants). Valid range: theirs. Departures: a limit that is reached counts as broken; with
 * figures missing, the known part can be over but never within.
 * Example: a quart of lacquer thinner in a closed closet is `over-ceiling`.
 */
export function fireCheck(input: AirCheckInput, missing: readonly AirGap[]): FireResult {
  const complete = !missing.some((gap) => FIRE_FIELDS.includes(gap.field));
  const known = fireAt(input, (substance) => substance.lelPercent);
  return {
    verdict: verdict(known.peak, complete),
    ...shown(known.peak, complete),
    complete,
    neededAirflowM3PerMin: complete ? known.neededAirflowM3PerMin : null,
    cautious: cautious(input, missing),
  };
}

function fireAt(input: AirCheckInput, lelPercent: (substance: AirSubstance) => number | null) {
  const { volumeM3, airflowM3PerMin, mixingFactor } = input;
  const sources = coatSources(input.coats, (substance) => {
    const percent = lelPercent(substance);
    if (percent === null || substance.molarMassGPerMol === null) return null;
    return lelMgPerM3(percent, substance.molarMassGPerMol, input.indoorC);
  });
  if (volumeM3 === null) return { peak: null, neededAirflowM3PerMin: null };
  const room = { volumeM3, mixingFactor };
  return {
    peak: airflowM3PerMin === null ? null : roomPeak({ ...room, airflowM3PerMin }, sources),
    neededAirflowM3PerMin:
      input.withoutNeeds === true ? null : neededAirflowM3PerMin(room, sources, LEL_TARGET_SHARE, 'peak'),
  };
}

/** A known part of nothing says nothing about the whole: then the peak is unknown, not 0. */
function shown(peak: RoomPeak | null, complete: boolean): Pick<FireResult, 'peakFraction' | 'peakMinute'> {
  if (peak === null || (!complete && peak.value === 0)) return { peakFraction: null, peakMinute: null };
  return { peakFraction: peak.value, peakMinute: peak.minute };
}

function verdict(peak: RoomPeak | null, complete: boolean): FireResult['verdict'] {
  if (peak !== null && peak.value >= LEL_CEILING_SHARE) return 'over-ceiling';
  if (peak !== null && peak.value >= LEL_TARGET_SHARE) return 'over-target';
  return peak !== null && complete ? 'within-limits-entered' : 'cannot-tell';
}

/** Offered beside the result, never instead of it, where every gap of the fire side is an LEL with a stand-in. */
function cautious(input: AirCheckInput, missing: readonly AirGap[]): CautiousFire | null {
  const gaps = missing.filter((gap) => FIRE_FIELDS.includes(gap.field));
  const substances = input.coats.flatMap((coat) =>
    presentSolvents(coat.solvents).map((one) => one.substance),
  );
  const assumed = gaps.flatMap((gap) => {
    const substance = substances.find(({ id }) => gap.field === 'lel' && id === gap.substanceId);
    if (substance === undefined || substance.lelCautious === null) return [];
    const { percent, source } = substance.lelCautious;
    return [{ substanceId: substance.id, name: substance.name, lelPercent: percent, source }];
  });
  if (gaps.length === 0 || assumed.length < gaps.length) return null;
  const fire = fireAt(input, (substance) => substance.lelPercent ?? substance.lelCautious?.percent ?? null);
  return {
    peakFraction: fire.peak?.value ?? null,
    neededAirflowM3PerMin: fire.neededAirflowM3PerMin,
    assumed,
  };
}
