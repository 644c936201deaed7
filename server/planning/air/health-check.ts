import type { AirCheckInput, AirGap } from './air-check-input.ts';
import type { HealthResult } from './air-check-result.ts';
import { airOutMinute } from './air-out-minute.ts';
import type { RoomSource } from './air-room.ts';
import { coatSources } from './coat-sources.ts';
import { HEALTH_INDEX_LIMIT, LONG_TERM_MIN, SHORT_TERM_MIN } from './constants.ts';
import { highestAverage } from './highest-average.ts';
import { highestEmissionPerMin } from './highest-emission-per-min.ts';
import { neededAirflowM3PerMin } from './needed-airflow-m3-per-min.ts';
import { roomPeak } from './room-peak.ts';
import { steadyStateAirflowM3PerMin } from './steady-state-airflow-m3-per-min.ts';

const HEALTH_FIELDS: readonly AirGap['field'][] = [
  'calendar',
  'litres',
  'voc',
  'solvents',
  'solvent-shares',
  'limit',
];

/**
 * Does the vapour come up to exposure limits?
 *
 * @param input the room and its coats
 * @param missing its gaps, as airGaps lists them
 * @returns the mixture index at its peak and averaged over 8 hours, short-term and ceiling indices, the verdict on those
 *   that count, the airflow that keeps them under 1, and the time until the air stays under 1
 *
 * Source: secondary: coatSources, roomPeak, highestAverage, neededAirflowM3PerMin, airOutMinute. Valid range: theirs.
 * Departures: the shift-long limits are held at every moment unless `averages` is asked for, a cautious rule of ours; an
 * index that reaches 1 counts as over; with figures missing, the known part can be over but never within.
 * Example: 225 g of mineral spirits all at once in a closed 50 m3: 4500 mg/m3, index 12.9, `over-health`.
 */
export function healthCheck(input: AirCheckInput, missing: readonly AirGap[]): HealthResult {
  const complete = !missing.some((gap) => HEALTH_FIELDS.includes(gap.field));
  const longTerm = coatSources(input.coats, (substance) => substance.limitMgPerM3);
  const shortTerm = coatSources(input.coats, (substance) => substance.shortTermMgPerM3);
  const ceiling = coatSources(input.coats, (substance) => substance.ceilingMgPerM3);
  const shift = input.healthBasis === 'averages' ? LONG_TERM_MIN : 'peak';
  const { volumeM3, airflowM3PerMin, mixingFactor } = input;

  const needs = (volume: number) => {
    const room = { volumeM3: volume, mixingFactor };
    const need = (sources: RoomSource[], window: number | 'peak') =>
      neededAirflowM3PerMin(room, sources, HEALTH_INDEX_LIMIT, window);
    return Math.max(need(longTerm, shift), need(shortTerm, SHORT_TERM_MIN), need(ceiling, 'peak'));
  };
  const result = {
    complete,
    neededAirflowM3PerMin:
      volumeM3 === null || !complete || input.withoutNeeds === true ? null : needs(volumeM3),
    steadyStateAirflowM3PerMin: complete
      ? steadyStateAirflowM3PerMin(highestEmissionPerMin(longTerm), HEALTH_INDEX_LIMIT, mixingFactor)
      : null,
  };
  if (volumeM3 === null || airflowM3PerMin === null) return { ...result, ...NOTHING_KNOWN };

  const room = { volumeM3, airflowM3PerMin, mixingFactor };
  const peak = roomPeak(room, longTerm);
  const eightHourIndex = highestAverage(room, longTerm, LONG_TERM_MIN).value;
  const shortTermIndex = highestAverage(room, shortTerm, SHORT_TERM_MIN).value;
  const ceilingIndex = roomPeak(room, ceiling).value;
  const counting = [shift === 'peak' ? peak.value : eightHourIndex, shortTermIndex, ceilingIndex];
  const over = counting.some((index) => index >= HEALTH_INDEX_LIMIT);
  const lastStart = Math.max(...longTerm.map((source) => source.startMinute));
  const clear = longTerm.length === 0 ? null : airOutMinute(room, longTerm, HEALTH_INDEX_LIMIT);
  return {
    ...result,
    verdict: over ? 'over-health' : complete ? 'within-limits-entered' : 'cannot-tell',
    // A known part of nothing says nothing about the whole: then an index is unknown, not 0.
    peakIndex: peak.value === 0 && !complete ? null : peak.value,
    peakMinute: peak.value === 0 && !complete ? null : peak.minute,
    eightHourIndex: peak.value === 0 && !complete ? null : eightHourIndex,
    shortTermIndex: shortTermIndex === 0 && !complete ? null : shortTermIndex,
    ceilingIndex: ceilingIndex === 0 && !complete ? null : ceilingIndex,
    airOutMin: complete && clear !== null ? clear - lastStart : null,
    neverAirsOut: longTerm.length > 0 && clear === null,
  };
}

const NOTHING_KNOWN = {
  verdict: 'cannot-tell',
  peakIndex: null,
  peakMinute: null,
  eightHourIndex: null,
  shortTermIndex: null,
  ceilingIndex: null,
  airOutMin: null,
  neverAirsOut: false,
} as const;
