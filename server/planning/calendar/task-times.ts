import { applicationMinutes } from '../finish/application-minutes.ts';
import type { ApplicationMethod, StepKind } from '../project-input.ts';
import type { TaskTimes } from './calendar-batch.ts';
import { CLEAN_UP_MIN, DRY_WORK_FIXED_MIN, DRY_WORK_M2_PER_MIN, SET_UP_MIN } from './constants.ts';

/**
 * How long does a task keep one pair of hands, and what happens when?
 *
 * @param kind of the step; not `cure`, which needs no hands
 * @param method how a coat is laid
 * @param areaM2 area worked, m2
 * @param scuffFirst true for a coat on which the one before must be scuff-sanded in the same visit
 * @param stepMin the visit is rounded up to a multiple of this
 * @returns minutes from the start of the task
 *
 * Source: rates, set-up and clean-up are common practice, no source. Valid range: area from 0. Departures: laying and
 * sanding are rounded up to whole minutes, the whole visit to the step.
 * Example: 3 m2 by brush: set-up 5, laying 20 (to minute 25), clean-up 10: 35 minutes.
 */
export function taskTimes({
  kind,
  method,
  areaM2,
  scuffFirst,
  stepMin,
}: {
  readonly kind: Exclude<StepKind, 'cure'>;
  readonly method: ApplicationMethod;
  readonly areaM2: number;
  readonly scuffFirst: boolean;
  readonly stepMin: number;
}): TaskTimes {
  const up = (minutes: number): number => Math.ceil(minutes / stepMin) * stepMin;
  if (kind === 'sand' || kind === 'scuff' || kind === 'dust') {
    const minutes = dryWorkMinutes(kind, areaM2);
    return { sandToMin: kind === 'dust' ? 0 : minutes, layFromMin: 0, layToMin: 0, handsOnMin: up(minutes) };
  }
  const sandToMin = scuffFirst ? dryWorkMinutes('scuff', areaM2) : 0;
  const layFromMin = sandToMin + SET_UP_MIN[method];
  const layToMin = layFromMin + Math.ceil(applicationMinutes({ areaM2, method }));
  return { sandToMin, layFromMin, layToMin, handsOnMin: up(layToMin + CLEAN_UP_MIN[method]) };
}

function dryWorkMinutes(kind: 'sand' | 'scuff' | 'dust', areaM2: number): number {
  return Math.ceil(DRY_WORK_FIXED_MIN[kind] + areaM2 / DRY_WORK_M2_PER_MIN[kind]);
}
