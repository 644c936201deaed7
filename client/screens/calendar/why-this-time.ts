import type { CalendarAnswer } from '../../../server/http/contract.ts';
import type { CalendarClock } from '../../format/calendar-clock.ts';
import type { Task, TaskEntry } from './calendar-book.ts';
import { STATE_WORDS } from './task-words.ts';

/** Starts stand on multiples of so many minutes, so one may come this much after the moment it waits for. */
const STEP_MIN = 5;

/** What of the plan explains the start of a task, as sentences read off the plan itself. */
export function whyThisTime(
  { task, before, pin }: TaskEntry,
  all: readonly Task[],
  answer: Pick<CalendarAnswer, 'days' | 'plannedFromMinute'>,
  clock: CalendarClock,
): readonly string[] {
  if (task.state === 'done') return ['These are the times you gave.'];
  if (task.state === 'assumed')
    return [`${capital(STATE_WORDS.assumed)}: a later step of the batch is ticked off.`];
  return [allowedWords(task, before, clock), holdWords(task, pin !== null, all, answer)].filter(
    (words) => words !== '',
  );
}

function allowedWords(task: Task, before: Task | null, clock: CalendarClock): string {
  const from = clock.moment(task.allowedFromMinute);
  const scuff = task.scuffFirst ? ' The coat before is scuff-sanded first.' : '';
  const to = task.allowedToMinute === null ? '' : ` and no later than ${clock.moment(task.allowedToMinute)}`;
  const since =
    before === null
      ? ''
      : before.layToMinute === null
        ? ', after the step before'
        : ', as the coat before dries';
  return `May start from ${from}${since}${to}.${scuff}`;
}

function holdWords(
  task: Task,
  pinned: boolean,
  all: readonly Task[],
  { days, plannedFromMinute }: Pick<CalendarAnswer, 'days' | 'plannedFromMinute'>,
): string {
  const { startMinute } = task;
  if (pinned || task.state === 'pinned') return 'You pinned it to this start.';
  const first = task.layFromMinute ?? startMinute;
  if (Math.min(startMinute, first) - task.allowedFromMinute < STEP_MIN)
    return 'This is the earliest it may be.';
  const after = all.find(
    (other) =>
      other.id !== task.id && startMinute - other.endMinute >= 0 && startMinute - other.endMinute < STEP_MIN,
  );
  if (after !== undefined)
    return after.batchId === task.batchId
      ? 'It follows at once on the step before.'
      : 'The hands are busy with another batch until then.';
  if (
    days.some(({ windows }) =>
      windows.some(({ fromMinute }) => startMinute - fromMinute >= 0 && startMinute - fromMinute < STEP_MIN),
    )
  )
    return 'It waits until the shop opens.';
  if (startMinute - plannedFromMinute < STEP_MIN) return 'Nothing is planned before this.';
  return 'Earlier would not make the job ready sooner: it waits for the air, the rack, dust to settle, or to share a visit.';
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
