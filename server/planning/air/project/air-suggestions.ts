import { formatAirflow } from '../../display/format-airflow.ts';
import { formatArea } from '../../display/format-area.ts';
import type { ProjectInput } from '../../project-input.ts';
import { airCheck } from '../air-check.ts';
import type { AirCheckInput } from '../air-check-input.ts';
import type { AirCheckResult } from '../air-check-result.ts';
import { MINUTES_PER_HOUR } from '../constants.ts';
import type { AirCoatOfTask } from './air-coats.ts';
import { airHolds } from './air-holds.ts';
import type { AirSuggestion } from './air-plan.ts';
import { crossDraughtM3PerH } from './cross-draught-m3-per-h.ts';
import { joinedAirflowM3PerH } from './joined-airflow-m3-per-h.ts';
import { openingAirflowM3PerH } from './opening-airflow-m3-per-h.ts';
import { spreadCoats } from './spread-coats.ts';
import { waterBasedCoats } from './water-based-coats.ts';

/** A house door standing open, and a window across the room, m2 free. Common practice, no source. */
const DOOR_M2 = 1.6;
const WINDOW_M2 = 0.5;
/** Strong window and box fans blow about so much, freely. Common practice, no source. */
const WINDOW_FANS_M3_PER_H = 4000;
/** A fan this much stronger than the search found is enough beyond its tolerance. Ours. */
const FAN_MARGIN = 1.001;
/** Parts and pauses that are tried, fewest and shortest first. Ours. */
const PARTS = [2, 3, 4, 6, 8];
const PAUSES_H = [1, 2, 3, 4, 6, 8, 12, 24];
/** More portions than this are not tried: nobody would coat like that. Ours. */
const MOST_PORTIONS = 120;

/**
 * What would bring the air within what was entered?
 *
 * @param project products and settings
 * @param input the room and its coats as they are: m3, m3/min, minutes
 * @param check its outcome
 * @param coats the coats with their tasks and products
 * @returns suggestions, each reckoned anew and found to hold; none where the air holds already
 *
 * Source: a rule of ours. Valid range: any. Departures: the calendar is not planned anew for them; it says itself what it
 * can do. For smaller batches and more time, the largest batch of each step stands for its step, all laid at one pace and
 * twice over. Example: a fan of 300 m3/h where 540 are needed: a fan that brings 540.
 */
export function airSuggestions(
  project: ProjectInput,
  input: AirCheckInput,
  check: AirCheckResult,
  coats: readonly AirCoatOfTask[],
): AirSuggestion[] {
  if (coats.length === 0 || airHolds(check) !== null) return [];
  const { settings } = project;
  const has = input.airflowM3PerMin;
  const print = (m3PerHour: number): string => formatAirflow(m3PerHour, settings.units);
  return [openDoor(), moreAir(), waterBased(), moreTime(), smallerBatches()].flatMap((one) => one ?? []);

  function tried(
    id: AirSuggestion['id'],
    text: string,
    changed: Partial<Pick<AirCheckInput, 'airflowM3PerMin' | 'coats'>>,
  ): AirSuggestion | null {
    const anew = airCheck({ ...input, ...changed, withoutNeeds: true });
    const holds = airHolds(anew);
    if (holds === null) return null;
    const { fire, health } = anew;
    const fraction = holds === 'complete' ? fire.peakFraction : (fire.cautious?.peakFraction ?? null);
    return {
      id,
      text,
      peakIndex: health.peakIndex,
      peakPercent: fraction === null ? null : fraction * 100,
      cautiousFire: holds === 'cautious',
    };
  }

  function openDoor(): AirSuggestion | null {
    if (has === null) return null;
    const wind = settings.windMPerS;
    const joined = (m3PerHour: number): number => joinedAirflowM3PerH(has * MINUTES_PER_HOUR, m3PerHour);
    const door = joined(openingAirflowM3PerH(DOOR_M2, wind));
    const across = joined(crossDraughtM3PerH(WINDOW_M2, wind));
    return (
      tried(
        'open-door',
        `Leave a door wide open (${formatArea(DOOR_M2, settings)} free): about ${print(door)} of fresh air in a wind of ${wind} m/s.`,
        { airflowM3PerMin: door / MINUTES_PER_HOUR },
      ) ??
      tried(
        'open-door',
        `Open the door and a window across the room (${formatArea(WINDOW_M2, settings)} free): about ${print(across)} of fresh air in a wind of ${wind} m/s.`,
        { airflowM3PerMin: across / MINUTES_PER_HOUR },
      )
    );
  }

  function moreAir(): AirSuggestion | null {
    const fire = check.fire.neededAirflowM3PerMin ?? check.fire.cautious?.neededAirflowM3PerMin ?? null;
    const health = check.health.neededAirflowM3PerMin;
    if (fire === null || health === null) return null;
    const need = Math.max(fire, health) * FAN_MARGIN;
    const rated = need / settings.fanDerating;
    const large =
      rated * MINUTES_PER_HOUR > WINDOW_FANS_M3_PER_H ? ' That is more than window fans give.' : '';
    const fan = `a fan rated at ${print(rated * MINUTES_PER_HOUR)}, of which ${Math.round(settings.fanDerating * 100)} % arrives`;
    return tried('more-air', `Bring in ${print(need * MINUTES_PER_HOUR)} of fresh air: ${fan}.${large}`, {
      airflowM3PerMin: need,
    });
  }

  function waterBased(): AirSuggestion | null {
    const found = waterBasedCoats(project, coats);
    if (found === null) return null;
    const pairs = [...found.exchanged].map(([from, to]) => `${to} in place of ${from}`);
    return tried('water-based', `Use water-based products: ${pairs.join('; ')}.`, { coats: found.coats });
  }

  function moreTime(): AirSuggestion | null {
    return spread(
      1,
      (hours) => `Leave at least ${hours} h between the start of one coat and the start of the next.`,
    );
  }

  function smallerBatches(): AirSuggestion | null {
    for (const parts of PARTS) {
      const found = spread(
        parts,
        (hours) =>
          `Coat each batch in ${parts} equal parts, and leave at least ${hours} h from the start of one to the start of the next.`,
      );
      if (found !== null) return found;
    }
    return null;
  }

  /** Laid one after the other at a steady pace, the largest batch of each step stands for all of its step. */
  function spread(parts: number, text: (hours: number) => string): AirSuggestion | null {
    const round = largestOfEachStep(coats);
    const rounds = [...round, ...round.map((coat) => secondRound(coat))];
    if (new Set(rounds.map(({ task }) => task.id)).size * parts > MOST_PORTIONS) return null;
    const id = parts === 1 ? 'more-time' : 'smaller-batches';
    const at = (hours: number): AirSuggestion | null =>
      tried(id, text(hours), { coats: spreadCoats(rounds, parts, hours * MINUTES_PER_HOUR) });
    // The longest pause is the airiest: where that does not hold, no shorter one does.
    if (at(PAUSES_H.at(-1) ?? 0) === null) return null;
    for (const hours of PAUSES_H) {
      const found = at(hours);
      if (found !== null) return found;
    }
    return null;
  }
}

/** Every liquid of the largest task of each step, in order of time. */
function largestOfEachStep(coats: readonly AirCoatOfTask[]): AirCoatOfTask[] {
  const largest = new Map<string, AirCoatOfTask['task']>();
  for (const { task } of coats) {
    const key = `${task.recipeId}/${task.stepId}/${task.number}`;
    if (task.areaM2 > (largest.get(key)?.areaM2 ?? 0)) largest.set(key, task);
  }
  const kept = new Set([...largest.values()].map(({ id }) => id));
  return coats.filter(({ task }) => kept.has(task.id));
}

/** The same coat once more, so that what is left in the air of a first round counts. */
function secondRound(coat: AirCoatOfTask): AirCoatOfTask {
  return { ...coat, id: `${coat.id}~again`, task: { ...coat.task, id: `${coat.task.id}~again` } };
}
