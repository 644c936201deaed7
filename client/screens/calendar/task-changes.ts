import { actions } from '../../state/store.ts';
import type { TaskEntry } from './calendar-book.ts';

/** What can be done to a task; each is one step of undo. All answer whether it was taken. */

export async function pinTask({ task, pin, title }: TaskEntry, start: string): Promise<boolean> {
  const answer = await actions.change(
    [
      pin === null
        ? { op: 'insert', table: 'pins', values: { taskId: task.id, start } }
        : { op: 'update', table: 'pins', id: pin.id, values: { start } },
    ],
    `pin ${title}`,
  );
  return answer !== null;
}

export async function unpinTask({ pin, title }: TaskEntry): Promise<boolean> {
  if (pin === null) return true;
  return (await actions.change([{ op: 'delete', table: 'pins', id: pin.id }], `unpin ${title}`)) !== null;
}

export interface DoneValues {
  readonly start: string;
  readonly end: string;
  readonly litres: number | null;
}

export async function tickTask({ task, done, title }: TaskEntry, values: DoneValues): Promise<boolean> {
  const answer = await actions.change(
    [
      done === null
        ? { op: 'insert', table: 'doneTasks', values: { taskId: task.id, ...values } }
        : { op: 'update', table: 'doneTasks', id: done.id, values: { ...values } },
    ],
    `mark ${title} as done`,
  );
  return answer !== null;
}

export async function untickTask({ done, title }: TaskEntry): Promise<boolean> {
  if (done === null) return true;
  const answer = await actions.change(
    [{ op: 'delete', table: 'doneTasks', id: done.id }],
    `take back that ${title} is done`,
  );
  return answer !== null;
}
