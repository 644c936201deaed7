import type { CalendarClock } from '../../format/calendar-clock.ts';
import type { Task, TaskEntry } from './calendar-book.ts';
import { STATE_WORDS } from './task-words.ts';

/** What of the plan explains the start of a task, as sentences. `named`: a task as people call it. */
export function whyThisTime(
  { task, before, pin }: TaskEntry,
  named: (taskId: string) => string,
  clock: CalendarClock,
): readonly string[] {
  if (task.state === 'done') return ['These are the times you gave.'];
  if (task.state === 'assumed')
    return [`${capital(STATE_WORDS.assumed)}: a later step of the batch is ticked off.`];
  return [
    allowedWords(task, before, clock),
    pin === null ? holdWords(task, named, clock) : 'You pinned it to this start.',
  ];
}

/** What the allowed time is of: the first stroke of a coat, or the start of dry work and of scuffing. */
export function allowedName({
  layFromMinute,
  scuffFirst,
}: Pick<Task, 'layFromMinute' | 'scuffFirst'>): string {
  return layFromMinute === null || scuffFirst ? 'May start' : 'May be laid';
}

function allowedWords(task: Task, before: Task | null, clock: CalendarClock): string {
  const from = clock.moment(task.allowedFromMinute);
  const scuff = task.scuffFirst ? ' The coat before is scuff-sanded first.' : '';
  const to = task.allowedToMinute === null ? '' : `, and no later than ${clock.moment(task.allowedToMinute)}`;
  const since =
    before === null
      ? ''
      : before.layToMinute === null
        ? ', after the step before'
        : ', as the coat before dries';
  return `${allowedName(task)} from ${from}${since}${to}.${scuff}`;
}

/** What keeps the task from starting sooner. */
function holdWords(
  { heldBy, startMinute }: Task,
  named: (taskId: string) => string,
  clock: CalendarClock,
): string {
  const other = heldBy?.taskId == null ? 'another task' : named(heldBy.taskId);
  switch (heldBy?.kind) {
    case undefined:
      return '';
    case 'pin':
      return 'You pinned it to this start.';
    case 'start':
      return 'Nothing is planned before this.';
    case 'material':
      return 'Held by its material or its pieces: they are not there sooner.';
    case 'before':
      return `Held by the step before: it follows at once on ${other}.`;
    case 'drying':
      return `Held by drying: ${other} is not ready for it sooner.`;
    case 'hours':
      return `Held by the working hours: no window before ${clock.moment(startMinute)} has room for it.`;
    case 'air':
      return 'Held by the air: sooner it is too cold, too hot, too humid or too near the dew point for the product.';
    case 'hands':
      return `Held by hands: they are busy with ${other} until then.`;
    case 'dust':
      return `Held by dust: nothing may be sanded while a coat is wet, and ${other} is in the way.`;
    case 'rack':
      return `Held by the rack: there is no room until ${other} is dry to handle.`;
    case 'vapour':
      return `Held by vapour: ${other} is too near for the air.`;
    case 'next-coat':
      return `Held by the coat that follows: sooner, the time for ${other} would run out before it can be laid.`;
    case 'nothing':
      return 'It could start sooner, but the job would not be ready sooner.';
  }
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
