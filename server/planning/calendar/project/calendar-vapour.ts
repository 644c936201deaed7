import { airGaps } from '../../air/air-gaps.ts';
import { airOutMinute } from '../../air/air-out-minute.ts';
import type { AirRoom } from '../../air/air-room.ts';
import type { AirSubstance } from '../../air/air-substance.ts';
import { coatSources } from '../../air/coat-sources.ts';
import { HEALTH_INDEX_LIMIT, LEL_TARGET_SHARE } from '../../air/constants.ts';
import { lelMgPerM3 } from '../../air/lel-mg-per-m3.ts';
import { type AirCoatOfTask, airCoats } from '../../air/project/air-coats.ts';
import { airProblems } from '../../air/project/air-problems.ts';
import { partAndCoatGaps } from '../../air/project/calendar-gaps.ts';
import { projectRoom } from '../../air/project/project-room.ts';
import { roomPeak } from '../../air/room-peak.ts';
import type { Plan, RecipePlan } from '../../plan-output.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { CalendarVapour } from '../calendar-input.ts';
import { calendarProblem } from './calendar-problem.ts';

/**
 * One coat alone may come to this share of a limit, and the next one waits until its vapour is down to LEFT_SHARE of its
 * peak. Of the coats before, each a pause apart, at most OWN x (L + L^2 + ...) = OWN x L / (1 - L) is then left: 0.8 + 0.8
 * x 0.25 = 1. That a pause takes off the same share each time or more holds because ln C bends downward after the peak of
 * a coat that fades in one phase. A rule of ours.
 */
const OWN_SHARE = 0.8;
const LEFT_SHARE = 0.2;

/**
 * How small must batches be, and how far apart their coats, so that the air stays under the health limit?
 *
 * @param input the project: room, fan, products, limits
 * @param plan its plan, for the litres of each coat
 * @returns most m2 of each step and minutes between first strokes; or, where any figure of the air check is not known, an
 *   error at the place of each, and null
 *
 * Source: a rule of ours on the closed solution (roomPeak, airOutMinute). Valid range: any project. Departures: stricter
 * than it need be: every limit, short-term, ceiling and a tenth of the explosive limit included, is held at every moment,
 * whichever basis the air check uses, and all coats keep the pause of the slowest. Example: a coat of 2 m2 that alone comes
 * to twice the limit: 0.8 m2 at a time.
 */
export function calendarVapour(
  input: ProjectInput,
  plan: Pick<Plan, 'parts' | 'recipes'>,
): { readonly vapour: CalendarVapour | null; readonly problems: readonly Problem[] } {
  const { settings } = input;
  const { mixingFactor, dayC } = settings;
  const found = projectRoom(settings);
  const volumeM3 = found.volumeM3.value;
  const { airflowM3PerMin } = found;
  const coats = plan.recipes.flatMap((recipe) => wholeCoats(input, recipe));
  const gaps = airGaps({
    volumeM3,
    airflowM3PerMin,
    mixingFactor,
    indoorC: dayC,
    outdoorC: null,
    coats: coats.flat(),
    alsoMissing: partAndCoatGaps(input, plan),
  });
  const refused = airProblems(gaps, coats.flat(), found, 'error').map((problem) => ({
    ...problem,
    message: `Batches cannot be kept under the health limit: ${lowerFirst(problem.message)}`,
    wayOut: `${problem.wayOut} Or let the calendar plan without the health limit.`,
  }));
  if (refused.length > 0 || volumeM3 === null || airflowM3PerMin === null)
    return { vapour: null, problems: refused };

  const room: AirRoom = { volumeM3, airflowM3PerMin, mixingFactor };
  const mostM2: Record<string, number> = {};
  let apartMin = 0;
  for (const liquids of coats) {
    const [first] = liquids;
    const load = fullest(room, liquids, dayC);
    if (first === undefined || load === null) continue;
    const { areaM2, stepId } = first.task;
    mostM2[stepId] = Math.min(mostM2[stepId] ?? Infinity, (OWN_SHARE * areaM2) / load.share);
    if (load.pauseMin === null) return { vapour: null, problems: [closedRoom()] };
    apartMin = Math.max(apartMin, Math.ceil(load.pauseMin));
  }
  return { vapour: { apartMin, mostM2 }, problems: [] };
}

/** Each coat of a recipe as if all of it were laid at once, at minute 0. */
function wholeCoats(input: ProjectInput, { id, areaM2, coats }: RecipePlan): AirCoatOfTask[][] {
  if (areaM2.value === 0) return [];
  return coats
    .filter(({ shares }) => shares.length > 0)
    .map((coat) => {
      const { stepId, number, name } = coat;
      const task = {
        id: `${id}:${stepId}-${number}`,
        recipeId: id,
        stepId,
        number,
        name,
        areaM2: areaM2.value ?? 0,
        layFromMinute: 0,
        touchDryMinute: null,
      };
      return airCoats({ ...input, doneTasks: [] }, { recipes: [{ id, areaM2, coats: [coat] }] }, [task]);
    });
}

/** The limit a coat comes nearest to, as a share of it, and how long its vapour takes; null where there is none. */
function fullest(
  room: AirRoom,
  liquids: readonly AirCoatOfTask[],
  airC: number,
): { readonly share: number; readonly pauseMin: number | null } | null {
  const lel = ({ lelPercent, molarMassGPerMol }: AirSubstance): number | null =>
    lelPercent === null || molarMassGPerMol === null ? null : lelMgPerM3(lelPercent, molarMassGPerMol, airC);
  const limits = [
    [(one: AirSubstance) => one.limitMgPerM3, HEALTH_INDEX_LIMIT],
    [(one: AirSubstance) => one.shortTermMgPerM3, HEALTH_INDEX_LIMIT],
    [(one: AirSubstance) => one.ceilingMgPerM3, HEALTH_INDEX_LIMIT],
    [lel, LEL_TARGET_SHARE],
  ] as const;
  const loads = limits.map(([limitOf, level]) => {
    const sources = coatSources(liquids, limitOf);
    return { sources, peak: roomPeak(room, sources).value, level };
  });
  const nearest = loads.reduce((most, one) => (one.peak / one.level > most.peak / most.level ? one : most));
  if (nearest.peak === 0) return null;
  return {
    share: nearest.peak / nearest.level,
    pauseMin: airOutMinute(room, nearest.sources, nearest.peak * LEFT_SHARE),
  };
}

function closedRoom(): Problem {
  return calendarProblem(
    'air-over-limit',
    'error',
    ['settings', null, 'fanM3PerHour'],
    'Batches cannot be kept under the health limit: the room is closed, so vapour never leaves it.',
    'Enter the fresh air that the room gets, or let the calendar plan without the health limit.',
  );
}

function lowerFirst(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
