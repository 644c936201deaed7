import { TZDate } from '@date-fns/tz';
import type { ZoneOffset } from '../exchange/calendar-file/time-zone-component.ts';
import type { FileEvent } from '../exchange/calendar-file/write-calendar-file.ts';
import type { CalendarPlan } from '../http/contract.ts';
import type { PlannedProject } from '../http/project-plans.ts';
import type { CalendarTaskPlan } from '../planning/calendar/calendar-plan.ts';
import { dayNumber } from '../planning/calendar/project/day-number.ts';
import { taskLitres } from '../planning/calendar/task-litres.ts';
import { formatArea } from '../planning/display/format-area.ts';
import { formatVolume } from '../planning/display/format-volume.ts';
import type { CalendarFeed } from './calendars.ts';
import { clockShiftsOf, momentAt } from './zone-days.ts';

/** A reminder comes so long before the time for a coat runs out, minutes. Ours. */
const REMIND_MIN = 60;
const MS_PER_MIN = 60_000;
const MS_PER_DAY = 86_400_000;

const KIND_WORDS = {
  sand: 'Sand',
  dust: 'Dust off',
  condition: 'Condition',
  stain: 'Stain',
  seal: 'Seal',
  topcoat: 'Topcoat',
  scuff: 'Scuff-sand',
  cure: 'Cure',
} as const satisfies Record<CalendarTaskPlan['kind'], string>;

const FACE_WORDS = { show: 'show faces', back: 'back faces', both: 'both faces' } as const;
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** What calendar programs are told of a project: an event for every task that somebody does with their hands. */
export function feedEvents(
  { input, plan: projectPlan, project }: PlannedProject,
  plan: CalendarPlan,
  { firstDate, events }: Pick<CalendarFeed, 'firstDate' | 'events'>,
): FileEvent[] {
  const { timeZone, units } = project.settings;
  const litres = taskLitres(projectPlan.recipes, plan.tasks);
  const at = (minute: number): Date => momentAt(minute, firstDate, timeZone);
  const partName = new Map(input.parts.map(({ id, name }) => [id, name.trim() || `Part ${id}`]));
  return plan.tasks.flatMap((task): FileEvent[] => {
    const told = events[task.id];
    if (told === undefined || task.state === 'assumed') return [];
    const batch = plan.batches.find(({ id }) => id === task.batchId);
    const pieces = (batch?.pieces ?? []).map(
      ({ pieceId, count }) => `${count} × ${partName.get(pieceId) ?? pieceId}`,
    );
    const liquid = litres[task.id];
    const lines = [
      liquid === undefined
        ? formatArea(task.areaM2, { units })
        : `${formatVolume(liquid, { units })} on ${formatArea(task.areaM2, { units })}`,
      ...(task.scuffFirst ? ['Scuff-sand the coat before, first.'] : []),
      ...windowLines(task),
      ...(pieces.length > 0 ? [pieces.join(', ')] : []),
    ];
    return [
      {
        uid: `project-${project.id}-${uidOf(task.id)}@plywright`,
        start: new Date(told.start),
        end: new Date(told.end),
        title: titleOf(task),
        description: lines.join('\n'),
        sequence: told.sequence,
        changedAt: new Date(told.at),
        alarm: alarmOf(task),
      },
    ];
  });

  function windowLines({ allowedFromMinute, allowedToMinute, state }: CalendarTaskPlan): string[] {
    if (allowedToMinute === null || state === 'done') return [];
    return [
      `May begin from ${words(at(allowedFromMinute), timeZone)} to ${words(at(allowedToMinute), timeZone)}.`,
    ];
  }

  function alarmOf(task: CalendarTaskPlan): FileEvent['alarm'] {
    const { allowedFromMinute, allowedToMinute, state } = task;
    if (allowedToMinute === null || state === 'done') return null;
    const minute = Math.max(allowedFromMinute, allowedToMinute - REMIND_MIN);
    const until = words(at(allowedToMinute), timeZone);
    return { at: at(Math.floor(minute)), text: `${titleOf(task)}: the time for it ends ${until}.` };
  }
}

/** The time zone of a project over the reach of its calendar. */
export function feedOffsets(firstDate: string, timeZone: string): ZoneOffset[] {
  const start = momentAt(0, firstDate, timeZone);
  const wall = dayNumber(firstDate) * MS_PER_DAY;
  const offsetAt = (aheadMin: number): number => Math.round((wall - start.getTime()) / MS_PER_MIN) + aheadMin;
  const shifts = clockShiftsOf(firstDate, timeZone);
  const first = shifts[0]?.fromMinute === 0 ? [] : [{ from: start, offsetMin: offsetAt(0) }];
  return [
    ...first,
    ...shifts.map(({ fromMinute, aheadMin }) => ({
      from: momentAt(fromMinute, firstDate, timeZone),
      offsetMin: offsetAt(aheadMin),
    })),
  ];
}

function titleOf({ kind, name, number, face }: CalendarTaskPlan): string {
  const coat = kind === 'sand' || kind === 'dust' || kind === 'scuff' ? '' : ` ${number}`;
  return `${KIND_WORDS[kind]}${coat}, ${FACE_WORDS[face]}${name === '' ? '' : `: ${name}`}`;
}

/** Letters, digits and marks that every calendar program takes in a UID, and no two tasks the same. */
function uidOf(taskId: string): string {
  return encodeURIComponent(taskId).replace(/%/g, '.');
}

/** "Sat 13 Mar 09:00" on the clock of the zone. */
function words(moment: Date, timeZone: string): string {
  const local = new TZDate(moment.getTime(), timeZone);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${WEEKDAYS[local.getDay()]} ${local.getDate()} ${MONTHS[local.getMonth()]} ${two(local.getHours())}:${two(local.getMinutes())}`;
}
