import type {
  CalendarAnswer,
  CalendarPlan,
  DoneTaskRow,
  PinRow,
  ProjectState,
} from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { type CalendarClock, calendarClock } from '../../format/calendar-clock.ts';
import { type BatchNames, batchNames } from './batch-names.ts';
import { taskTitle } from './task-words.ts';

export type Task = CalendarPlan['tasks'][number];
export type Batch = CalendarPlan['batches'][number];

/** One task with everything the screen and the paper say of it. */
export interface TaskEntry {
  readonly task: Task;
  /** "Topcoat 2" */
  readonly title: string;
  readonly batch: BatchNames;
  /** Null for dry work, and where it is not known. */
  readonly litres: number | null;
  /** What the user has pinned or ticked off; the plan shown may not know of it yet. */
  readonly pin: PinRow | null;
  readonly done: DoneTaskRow | null;
  /** The task before it in its batch. */
  readonly before: Task | null;
}

export interface CalendarBook {
  readonly answer: CalendarAnswer;
  readonly plan: CalendarPlan;
  readonly clock: CalendarClock;
  /** In order of start. */
  readonly entries: readonly TaskEntry[];
  readonly byId: ReadonlyMap<string, TaskEntry>;
  readonly batches: ReadonlyMap<string, BatchNames>;
}

let last: {
  readonly answer: CalendarAnswer;
  readonly project: ProjectState;
  readonly book: CalendarBook;
} | null = null;

/** Null until the first plan is there. */
export function calendarBook({ project }: ScreenBook, answer: CalendarAnswer | null): CalendarBook | null {
  if (answer === null || answer.plan === null) return null;
  if (last?.answer === answer && last.project === project) return last.book;
  const { plan, names } = answer;
  const coats = new Map(project.rows.steps.map(({ id, coats }) => [id, coats]));
  const pins = new Map(project.rows.pins.map((row) => [row.taskId, row]));
  const done = new Map(project.rows.doneTasks.map((row) => [row.taskId, row]));
  const batches = batchNames(plan, names);
  const before = new Map<string, Task>();
  const entries = plan.tasks.map((task): TaskEntry => {
    const earlier = before.get(task.batchId) ?? null;
    before.set(task.batchId, task);
    return {
      task,
      title: taskTitle(task, coats.get(task.stepId) ?? 1),
      batch: batches.get(task.batchId) ?? { title: task.batchId, parts: '' },
      litres: answer.coatLitres[task.id] ?? null,
      pin: pins.get(task.id) ?? null,
      done: done.get(task.id) ?? null,
      before: earlier,
    };
  });
  const book = {
    answer,
    plan,
    clock: calendarClock(answer.firstDate, answer.clockShifts),
    entries,
    byId: new Map(entries.map((entry) => [entry.task.id, entry])),
    batches,
  };
  last = { answer, project, book };
  return book;
}
