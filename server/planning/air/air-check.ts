import { AIR_CAUTIONS } from '../display/air-cautions.ts';
import type { AirCheckInput } from './air-check-input.ts';
import type { AirCheckResult, AirVerdict } from './air-check-result.ts';
import { airGaps } from './air-gaps.ts';
import { airNotes } from './air-notes.ts';
import { m3PerMinToAirChanges } from './convert-airflow.ts';
import { fireCheck } from './fire-check.ts';
import { healthCheck } from './health-check.ts';
import { makeUpAirHeatW } from './make-up-air-heat-w.ts';

/** Worst first. */
const ORDER: readonly AirVerdict[] = [
  'over-ceiling',
  'over-target',
  'over-health',
  'cannot-tell',
  'within-limits-entered',
];

/**
 * What will these coats do to the air of this room?
 *
 * @param input room volume m3, airflow m3/min, mixing factor, temperatures C, coats with litres, VOC g/L and solvents
 * @returns the verdict on fire and health, every figure behind it, what is missing, assumptions and cautions
 *
 * Source: secondary: fireCheck, healthCheck, airGaps, makeUpAirHeatW. Valid range: theirs. Departures: the verdict is the
 * worst of both sides; `within-limits-entered` needs every figure and says only what it says: within the limits that
 * were entered. No verdict calls a room harmless.
 * Example: mineral spirits whose LEL is not known, in a well aired room: `cannot-tell`, with `lel` among the missing.
 */
export function airCheck(input: AirCheckInput): AirCheckResult {
  const missing = airGaps(input);
  const fire = fireCheck(input, missing);
  const health = healthCheck(input, missing);
  const { volumeM3, airflowM3PerMin, outdoorC, indoorC } = input;
  const needs = [fire.neededAirflowM3PerMin, health.neededAirflowM3PerMin];
  return {
    verdict: ORDER.find((verdict) => verdict === fire.verdict || verdict === health.verdict) ?? 'cannot-tell',
    fire,
    health,
    missing,
    coats: input.coats.map(({ id, litres, vocGPerL }) => ({
      id,
      vocGrams: litres === null || vocGPerL === null ? null : litres * vocGPerL,
    })),
    neededAirflowM3PerMin: needs.includes(null) ? null : Math.max(...(needs as number[])),
    airChangesPerHour:
      volumeM3 === null || airflowM3PerMin === null ? null : m3PerMinToAirChanges(airflowM3PerMin, volumeM3),
    makeUpHeatW:
      airflowM3PerMin === null || outdoorC === null
        ? null
        : makeUpAirHeatW(airflowM3PerMin, indoorC, outdoorC),
    notes: airNotes(input),
    cautions: AIR_CAUTIONS,
  };
}
