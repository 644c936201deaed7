import type { Problem, ProblemPlace, Severity } from '../../problem.ts';
import type { AirGap } from '../air-check-input.ts';
import type { AirCoatOfTask } from './air-coats.ts';
import type { ProjectRoom } from './project-room.ts';

const ROOM_FIELDS: readonly string[] = ['roomLengthM', 'roomWidthM', 'roomHeightM'];

/**
 * Where does the user enter what the air check misses?
 *
 * @param gaps what is missing, as airGaps lists it; no units of its own
 * @param coats the coats, for their products and steps
 * @param room the room, for the settings that are empty
 * @param severity of the problems: an error where something is refused for them
 * @returns one located problem per figure to be entered, each once
 *
 * Source: definition. Valid range: any. Departures: none. Example: no fan entered: the setting fanM3PerHour.
 */
export function airProblems(
  gaps: readonly AirGap[],
  coats: readonly AirCoatOfTask[],
  room: ProjectRoom,
  severity: Severity = 'warning',
): Problem[] {
  const problems = gaps.map((gap): Problem => {
    const coat = coats.find(({ id }) => id === gap.coatId);
    return {
      code: 'air-cannot-tell',
      severity,
      at: placeOf(gap, coat, room),
      message: named(gap.message, coat),
      wayOut: gap.wayOut,
    };
  });
  const once = new Map(problems.map((problem) => [JSON.stringify([problem.at, problem.message]), problem]));
  return [...once.values()];
}

function placeOf(gap: AirGap, coat: AirCoatOfTask | undefined, room: ProjectRoom): ProblemPlace {
  const setting = (named: readonly string[], otherwise: string): ProblemPlace => ({
    table: 'settings',
    id: null,
    field: named.find((name) => room.missing.some((one) => one === name)) ?? otherwise,
  });
  if (gap.at !== undefined) return gap.at;
  if (gap.field === 'room-volume') return setting(ROOM_FIELDS, 'roomLengthM');
  if (gap.field === 'airflow')
    return setting(['fanM3PerHour', 'airChangesPerHour', 'openingM2', ...ROOM_FIELDS], 'airKind');
  if (gap.field === 'litres' || coat === undefined || coat.product === null)
    return { table: 'steps', id: coat?.stepId ?? null, field: 'productId' };
  const field = gap.field === 'voc' ? 'voc' : 'solvents';
  return { table: 'products', id: coat.product.id, field };
}

/** One product in many coats is asked for once, so the coat's number goes. */
function named(message: string, coat: AirCoatOfTask | undefined): string {
  return coat?.product === null || coat === undefined
    ? message
    : message.replaceAll(coat.name, coat.product.name);
}
