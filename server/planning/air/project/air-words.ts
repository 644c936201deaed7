import { formatAirflow } from '../../display/format-airflow.ts';
import type { UnitSystem } from '../../project-input.ts';
import type { AirCheckResult } from '../air-check-result.ts';
import { HEALTH_INDEX_LIMIT, MINUTES_PER_HOUR } from '../constants.ts';

/**
 * What does the air check come to, in words?
 *
 * @param check the outcome of airCheck; m3/min
 * @param airflowM3PerMin fresh air there is, m3/min; null when not known
 * @param neededM3PerMin fresh air needed, m3/min; null when it cannot be told
 * @param units how airflows are printed
 * @returns a headline, the worst first, and sentences that say what stands behind it
 *
 * Source: definition. Valid range: any. Departures: no wording calls the air harmless. Example: "The vapour comes over the
 * health limit: the room needs 540 m³/h of fresh air and gets 300 m³/h."
 */
export function airWords(
  check: AirCheckResult,
  airflowM3PerMin: number | null,
  neededM3PerMin: number | null,
  units: UnitSystem,
): { readonly headline: string; readonly sentences: readonly string[] } {
  const printed = (m3PerMin: number) => formatAirflow(m3PerMin * MINUTES_PER_HOUR, units);
  const { verdict, missing, fire, health } = check;
  const gets = airflowM3PerMin === null ? 'an unknown amount' : printed(airflowM3PerMin);
  const needs =
    neededM3PerMin === null
      ? ''
      : `: the room needs ${printed(neededM3PerMin)} of fresh air and gets ${gets}`;
  const count = missing.length === 1 ? 'one thing is' : `${missing.length} things are`;
  const headline = {
    'over-ceiling': `Fire danger: the vapour comes over a quarter of its lower explosive limit${needs}.`,
    'over-target': `The vapour comes over a tenth of its lower explosive limit, the target here${needs}.`,
    'over-health': `The vapour comes over the health limit${needs}.`,
    'cannot-tell': `Cannot tell: ${count} not known.`,
    'within-limits-entered': `Within the limits entered, with ${gets} of fresh air.`,
  }[verdict];
  const sentences: string[] = [];
  if (health.neverAirsOut)
    sentences.push('The room is closed: the vapour never comes under the health limit by itself.');
  if (verdict === 'cannot-tell' && neededM3PerMin !== null && airflowM3PerMin !== null)
    sentences.push(
      `By what is known, the room needs ${printed(neededM3PerMin)} of fresh air and gets ${gets}.`,
    );
  if (verdict !== 'cannot-tell' && missing.length > 0)
    sentences.push(`This is by the known part alone: ${count} not known, and the whole can only be worse.`);
  if (verdict === 'over-health' && isUnderOnAverage(check))
    sentences.push(
      `Averaged over 8 hours, as the limits are defined, it comes to ${percentText(health.eightHourIndex ?? 0)} of the limit. Here it is held at every moment, which is stricter; that is a setting of yours.`,
    );
  if (fire.cautious?.peakFraction != null)
    sentences.push(
      `An explosive limit is not known. With the lowest value found elsewhere the vapour would come to ${percentText(fire.cautious.peakFraction)} of it; that is a stand-in, not an answer.`,
    );
  if (verdict === 'within-limits-entered')
    sentences.push(
      'This says no more than that: the model is a simple one, and the limits are for healthy adults at work.',
    );
  return { headline, sentences };
}

/** Over only because shift-long limits are held at every moment. */
function isUnderOnAverage({ health }: AirCheckResult): boolean {
  const { peakIndex, eightHourIndex, shortTermIndex, ceilingIndex } = health;
  const averages = [eightHourIndex, shortTermIndex, ceilingIndex];
  return (
    health.complete &&
    (peakIndex ?? 0) >= HEALTH_INDEX_LIMIT &&
    averages.every((index) => index !== null && index < HEALTH_INDEX_LIMIT)
  );
}

function percentText(share: number): string {
  const percent = share * 100;
  return `${percent < 10 ? Math.round(percent * 10) / 10 : Math.round(percent)} %`;
}
