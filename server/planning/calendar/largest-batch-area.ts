import { APPLICATION_RATE_M2_PER_MIN } from '../finish/constants.ts';
import type { CalendarRecipe, CalendarStep, CalendarVapour } from './calendar-input.ts';
import { CLEAN_UP_MIN, DRY_WORK_FIXED_MIN, DRY_WORK_M2_PER_MIN, SET_UP_MIN } from './constants.ts';

export interface BatchAreaLimit {
  /** Most area that may be coated in one go, m2; above 0; Infinity when nothing limits it. */
  readonly areaM2: number;
  readonly because: 'nothing' | 'working-time' | 'recoat-clock' | 'working-window' | 'health-limit';
  /** The step that limits it; null for `nothing`. */
  readonly stepId: string | null;
}

/**
 * How much area can a recipe take in one batch, before a clock runs out?
 *
 * @param recipe its steps and their label figures
 * @param longestWindowMin longest stretch of working hours, minutes
 * @param stepMin tasks end on multiples of this, minutes
 * @param vapour most m2 of each step that the air of the room takes, where that is asked for
 * @returns m2 of coated area and what limits it
 *
 * Source: the rates, set-up and clean-up times in `constants.ts`, common practice, no source; working time and recoat
 * intervals from the label. A coat must be laid within its working time; where every recoat interval ends, the next
 * coat must begin before the last one ends, with one pair of hands; and every visit must fit the longest window, with
 * scuff-sanding where an interval asks for it. Valid range: any recipe. Departures: label minutes are taken as clock minutes here; the calendar
 * itself reckons with the shop's air.
 * Example: wiped conditioner at 0.25 m2/min, working time 15 min: 3.75 m2.
 */
export function largestBatchArea(
  recipe: CalendarRecipe,
  longestWindowMin: number,
  stepMin: number,
  vapour?: CalendarVapour,
): BatchAreaLimit {
  let limit: BatchAreaLimit = { areaM2: Number.POSITIVE_INFINITY, because: 'nothing', stepId: null };
  const lower = (areaM2: number, because: BatchAreaLimit['because'], stepId: string): void => {
    // Where even no area fits, smaller batches are no way out; the calendar itself says what is in the way.
    if (areaM2 > 0 && areaM2 < limit.areaM2) limit = { areaM2, because, stepId };
  };
  const steps = recipe.steps.flatMap((step) => Array.from({ length: step.coats }, () => step));
  for (const [index, step] of steps.entries()) {
    if (step.kind === 'cure') continue;
    const before = coatBefore(steps, index);
    const scuffs = before?.coat?.recoat.some(({ scuff }) => scuff) === true && step.coat !== null;
    const minutesPerM2 = perM2(step) + (scuffs ? 1 / DRY_WORK_M2_PER_MIN.scuff : 0);
    const fixedMin = fixed(step) + (scuffs ? DRY_WORK_FIXED_MIN.scuff + 1 : 0);
    lower((longestWindowMin - stepMin - fixedMin) / minutesPerM2, 'working-window', step.id);
    if (step.coat === null) continue;
    const { workingTimeMin, recoat } = step.coat;
    lower(vapour?.mostM2[step.id] ?? Number.POSITIVE_INFINITY, 'health-limit', step.id);
    if (workingTimeMin !== null) lower(workingTimeMin * rateOf(step), 'working-time', step.id);

    const clock = Math.max(...recoat.map(({ toMin }) => toMin ?? Number.POSITIVE_INFINITY));
    const next = steps.findIndex((later, at) => at > index && later.coat !== null);
    if (recoat.length === 0 || clock === Number.POSITIVE_INFINITY || next < 0) continue;
    // From the first stroke of this coat to the first of the next: lay, clean up, dry work between, set up.
    let slope = perM2(step);
    let rest = CLEAN_UP_MIN[step.method] + SET_UP_MIN[(steps[next] as CalendarStep).method] + stepMin;
    for (const between of steps.slice(index + 1, next)) {
      if (between.kind === 'cure') continue;
      slope += perM2(between);
      rest += fixed(between) + stepMin;
    }
    const opens = Math.min(...recoat.map(({ fromMin }) => fromMin)) + stepMin;
    lower((clock - Math.max(rest, opens)) / slope, 'recoat-clock', step.id);
  }
  return limit;
}

function coatBefore(steps: readonly CalendarStep[], index: number): CalendarStep | undefined {
  return steps.slice(0, index).findLast(({ coat }) => coat !== null);
}

function rateOf(step: CalendarStep): number {
  if (step.kind === 'sand' || step.kind === 'scuff' || step.kind === 'dust')
    return DRY_WORK_M2_PER_MIN[step.kind];
  return APPLICATION_RATE_M2_PER_MIN[step.method];
}

const perM2 = (step: CalendarStep): number => 1 / rateOf(step);

function fixed(step: CalendarStep): number {
  if (step.kind === 'sand' || step.kind === 'scuff' || step.kind === 'dust')
    return DRY_WORK_FIXED_MIN[step.kind];
  return SET_UP_MIN[step.method] + CLEAN_UP_MIN[step.method];
}
