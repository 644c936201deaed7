import { describe, expect, it } from 'vitest';
import { calendarClock } from '../../../../client/format/calendar-clock.ts';
import { dayList } from '../../../../client/screens/calendar/day-list.ts';
import { taskShapes } from '../../../../client/screens/calendar/lane-shapes.ts';
import { missedTasks } from '../../../../client/screens/calendar/missed-tasks.ts';
import { nextBar } from '../../../../client/screens/calendar/next-bar.ts';
import { sortTasks } from '../../../../client/screens/calendar/sort-tasks.ts';
import { timeScale } from '../../../../client/screens/calendar/time-scale.ts';
import { whyThisTime } from '../../../../client/screens/calendar/why-this-time.ts';
import { anEntry, aTask } from './task-entries.ts';

/** Saturday 13 March 2027; clocks are not changed. */
const clock = calendarClock('2027-03-13', []);
const DAY = 1440;

describe('the bar an arrow key leads to', () => {
  const tasks = [
    aTask({ id: 'a1', batchId: 'a', startMinute: 540 }),
    aTask({ id: 'b1', batchId: 'b', startMinute: 600 }),
    aTask({ id: 'b2', batchId: 'b', startMinute: 900 }),
    aTask({ id: 'a2', batchId: 'a', startMinute: 1000 }),
  ];
  it.each([
    ['a1', 'ArrowRight', 'a2'],
    ['a1', 'ArrowLeft', null],
    ['a2', 'Home', 'a1'],
    ['b1', 'End', 'b2'],
    // 1000 lies nearer to 900 than to 600; 540 nearer to 600.
    ['a2', 'ArrowDown', 'b2'],
    ['a1', 'ArrowDown', 'b1'],
    ['b2', 'ArrowUp', 'a2'],
    ['b1', 'ArrowDown', null],
  ] as const)('from %s by %s is %s', (from, key, to) => {
    expect(nextBar(tasks, ['a', 'b'], from, key)).toBe(to);
  });
});

describe('tasks that were missed', () => {
  it('are overdue when they were to be over, and closed when their window is', () => {
    const overdue = anEntry({ id: 'o' });
    const closed = anEntry({ id: 'c', allowedToMinute: 580 });
    const later = anEntry({ id: 'l', startMinute: 900, endMinute: 930, allowedToMinute: 590 });
    expect(
      missedTasks([overdue, closed, later], 600).map(({ entry, kind }) => [entry.task.id, kind]),
    ).toEqual([
      ['o', 'overdue'],
      ['c', 'closed'],
    ]);
  });

  it('are none while they are on, when they are done, or when ticked off and not planned anew yet', () => {
    expect(missedTasks([anEntry()], 569)).toEqual([]);
    expect(missedTasks([anEntry({ state: 'done' }), anEntry({ state: 'assumed' })], 5000)).toEqual([]);
    const ticked = { id: '1', position: 1, taskId: 'b:show:top-1', start: '', end: '', litres: null };
    expect(missedTasks([anEntry({}, { done: ticked })], 5000)).toEqual([]);
  });
});

describe('the list of tasks', () => {
  const first = anEntry({ id: '1', allowedToMinute: 700 }, { title: 'Topcoat 10', litres: null });
  const second = anEntry({ id: '2', startMinute: DAY + 540 }, { title: 'Topcoat 2' });
  const ids = (entries: readonly { task: { id: string } }[]) => entries.map(({ task }) => task.id);
  it('sorts numbers in words as numbers, and keeps what has no value last both ways', () => {
    expect(ids(sortTasks([first, second], { field: 'task', down: false }))).toEqual(['2', '1']);
    expect(ids(sortTasks([first, second], { field: 'start', down: true }))).toEqual(['2', '1']);
    expect(ids(sortTasks([first, second], { field: 'litres', down: false }))).toEqual(['2', '1']);
    expect(ids(sortTasks([first, second], { field: 'litres', down: true }))).toEqual(['2', '1']);
    expect(ids(sortTasks([second, first], { field: 'closes', down: true }))).toEqual(['1', '2']);
  });

  it('is put under the days tasks start on', () => {
    expect(dayList([first, second], clock).map(({ date, entries }) => [date, ids(entries)])).toEqual([
      ['2027-03-13', ['1']],
      ['2027-03-14', ['2']],
    ]);
  });
});

describe('the marks of a task', () => {
  const scale = (minute: number): number => minute / 10;
  it('stand where its work, its drying and its window are', () => {
    expect(taskShapes(aTask({ startMinute: 500, endMinute: 600, allowedToMinute: 900 }), scale)).toEqual({
      bar: { x: 50, width: 10 },
      touchTail: { x: 56, width: 6 },
      handleTail: { x: 62, width: 18 },
      window: { x: 50, width: 40, open: false },
    });
  });

  it('are wide enough to be hit, and without tails for dry work', () => {
    const dry = aTask({
      layFromMinute: null,
      layToMinute: null,
      touchDryMinute: null,
      handleDryMinute: null,
    });
    const { bar, touchTail, handleTail, window } = taskShapes(dry, scale);
    expect([bar.width, touchTail, handleTail, window.open]).toEqual([6, null, null, true]);
  });
});

describe('the width of a day', () => {
  const day = (from: number) => ({
    date: '',
    weekday: 0,
    fromMinute: from,
    toMinute: from + DAY,
    windows: [{ fromMinute: from + 540, toMinute: from + 1260 }],
    off: false,
    note: '',
  });
  const days = [day(0), day(DAY), day(2 * DAY)];
  it('is a seventh of the room in a week, and more where there are fewer days', () => {
    const week = Array.from({ length: 14 }, (_, at) => day(at * DAY));
    expect(timeScale(week, { zoom: 'week', width: 700, narrowed: false })(DAY)).toBe(100);
    expect(timeScale(days, { zoom: 'week', width: 700, narrowed: false })(3 * DAY)).toBe(700);
    expect(timeScale(days, { zoom: 'day', width: 700, narrowed: false })(DAY)).toBe(700);
  });

  it('goes to working hours first where closed ones are narrowed', () => {
    const scale = timeScale(days, { zoom: 'whole', width: 300, narrowed: true });
    // Each day 100: 720 open minutes, 720 closed ones at 0.18; 720 / (720 + 129.6) = 84.7 of 100.
    expect(scale(1260) - scale(540)).toBeCloseTo(84.746, 2);
    expect(scale(3 * DAY)).toBeCloseTo(300, 9);
  });
});

describe('what holds a task', () => {
  const named = (taskId: string): string => `<${taskId}>`;
  const why = (kind: NonNullable<ReturnType<typeof aTask>['heldBy']>['kind'], taskId: string | null = 'x') =>
    whyThisTime(anEntry({ heldBy: { kind, taskId } }), named, clock).at(-1);
  it('names the task that is in the way', () => {
    for (const kind of ['before', 'drying', 'hands', 'dust', 'rack', 'vapour', 'next-coat'] as const)
      expect(why(kind)).toContain('<x>');
    expect(why('hands')).toBe('Held by hands: they are busy with <x> until then.');
  });

  it('is said in a sentence of its own for each reason', () => {
    const kinds = ['start', 'material', 'before', 'drying', 'hours', 'air', 'hands', 'dust', 'rack'] as const;
    const said = [...kinds, 'vapour' as const, 'next-coat' as const, 'nothing' as const].map((kind) =>
      why(kind),
    );
    expect(new Set(said).size).toBe(12);
    expect(why('hours')).toContain('Sat 13 Mar 09:00');
  });

  it('is the pin, also before the plan knows of it; and for done tasks the times given', () => {
    const pin = { id: '1', position: 1, taskId: 'b:show:top-1', start: '2027-03-13T09:00' };
    expect(whyThisTime(anEntry({}, { pin }), named, clock)).toContain('You pinned it to this start.');
    expect(whyThisTime(anEntry({ state: 'done' }), named, clock)).toEqual(['These are the times you gave.']);
  });
});
