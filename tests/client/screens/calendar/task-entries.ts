import type { Task, TaskEntry } from '../../../../client/screens/calendar/calendar-book.ts';

/** A brushed topcoat on day 0 from 09:00 to 09:30, laid 09:05 to 09:20, that stays open for the next for good. */
export function aTask(changes: Partial<Task> = {}): Task {
  return {
    id: 'b:show:top-1',
    batchId: 'b',
    recipeId: 'r',
    stepId: 'top',
    number: 1,
    kind: 'topcoat',
    name: 'Varnish',
    method: 'brush',
    face: 'show',
    areaM2: 1,
    state: 'planned',
    startMinute: 540,
    endMinute: 570,
    handsOnMin: 30,
    scuffFirst: false,
    layFromMinute: 545,
    layToMinute: 560,
    touchDryMinute: 620,
    handleDryMinute: 800,
    allowedFromMinute: 500,
    allowedToMinute: null,
    heldBy: { kind: 'start', taskId: null },
    ...changes,
  };
}

export function anEntry(task: Partial<Task> = {}, changes: Partial<TaskEntry> = {}): TaskEntry {
  return {
    task: aTask(task),
    title: 'Topcoat 1',
    batch: { title: 'Clear', parts: '2 Shelf' },
    litres: 0.2,
    pin: null,
    done: null,
    before: null,
    ...changes,
  };
}
