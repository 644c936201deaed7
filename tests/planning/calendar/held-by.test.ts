import { describe, expect, it } from 'vitest';
import type { CalendarInput } from '../../../server/planning/calendar/calendar-input.ts';
import { planCalendar } from '../../../server/planning/calendar/plan-calendar.ts';
import { coatOf, DAY, everyDay, HOUR, pieceOf, recipeOf, shopInput, stepOf } from './shop-input.ts';

const pieces = (...ids: string[]) =>
  ids.map((id) => pieceOf({ id, batchName: id, showM2: 1, backM2: 0, edgeM2: 0 }));

/** What holds each task, in order of start, with the place of the other task in that order. */
function holdsOf(input: CalendarInput): (string | null)[] {
  const { tasks } = planCalendar(input);
  return tasks.map(({ heldBy }) => {
    if (heldBy === null) return null;
    const other = tasks.findIndex(({ id }) => id === heldBy.taskId);
    return other < 0 ? heldBy.kind : `${heldBy.kind} ${other}`;
  });
}

const slow = coatOf({
  touchDryMin: HOUR,
  handleDryMin: 4 * HOUR,
  recoat: [{ fromMin: 4 * HOUR, toMin: null, scuff: false }],
});

describe('what holds a task at its start', () => {
  it('is the working hours, the step before, and the coat before', () => {
    const recipes = [recipeOf([stepOf({ id: 'd', kind: 'dust' }), stepOf({ coats: 2, coat: slow })])];
    // Midnight to 08:00 closed; dusted, then coated at once; the second coat 4 h after the first.
    expect(holdsOf(shopInput({ hours: everyDay([8, 18]), recipes, pieces: pieces('a') }))).toEqual([
      'hours',
      'before 0',
      'drying 1',
    ]);
  });

  it('is the hands, when another batch has them', () => {
    const input = shopInput({ hours: everyDay([8, 18]), recipes: [recipeOf([stepOf({ coat: slow })])] });
    expect(holdsOf({ ...input, pieces: pieces('a', 'b'), startMinute: 8 * HOUR })).toEqual([
      'start',
      'hands 0',
    ]);
    expect(holdsOf({ ...input, pieces: pieces('a', 'b'), startMinute: 8 * HOUR, hands: 2 })).toEqual([
      'start',
      'start',
    ]);
  });

  it('is the rack, while another batch lies on it', () => {
    const input = shopInput({
      hours: everyDay([8, 18]),
      startMinute: 8 * HOUR,
      recipes: [recipeOf([stepOf({ coat: slow })])],
      pieces: pieces('a', 'b'),
      rackM2: 1.5,
    });
    expect(holdsOf(input)).toEqual(['start', 'rack 0']);
  });

  it('is the dust, while something is wet in the same air', () => {
    const input = shopInput({
      hours: everyDay([8, 18]),
      startMinute: 8 * HOUR,
      recipes: [
        recipeOf([stepOf({ coat: slow })], { id: 'coat' }),
        recipeOf([stepOf({ id: 's', kind: 'sand' })], { id: 'sand' }),
      ],
      pieces: [
        pieceOf({ id: 'a', showM2: 1, backM2: 0, showRecipeId: 'coat' }),
        pieceOf({ id: 'b', showM2: 1, backM2: 0, showRecipeId: 'sand', readyMinute: 8 * HOUR + 5 }),
      ],
    });
    const holds = holdsOf({
      ...input,
      pins: planCalendar({ ...input, pins: [] }).tasks.flatMap(({ id, kind }) =>
        kind === 'sand' ? [] : [{ taskId: id, startMinute: 8 * HOUR }],
      ),
    });
    expect(holds).toEqual(['pin', 'dust 0']);
  });

  it('is the material, where it comes later, and nothing for what is done', () => {
    const step = stepOf({ coats: 2, coat: slow, materialMinute: DAY + 9 * HOUR });
    const input = shopInput({ hours: everyDay([8, 18]), recipes: [recipeOf([step])], pieces: pieces('a') });
    expect(holdsOf(input)[0]).toBe('material');
    const [first] = planCalendar(input).tasks;
    if (first === undefined) throw new Error('nothing is planned');
    const done = [{ taskId: first.id, startMinute: first.startMinute, endMinute: first.endMinute }];
    expect(holdsOf({ ...input, done, startMinute: first.endMinute })).toEqual([null, 'drying 0']);
  });

  it('is the coat that follows, where its window would close before it can be laid', () => {
    // Closes 3 h after the first stroke, opens after 2 h; the shop is shut from 12:00 to 17:00 and one visit holds one coat.
    const hasty = coatOf({
      touchDryMin: HOUR,
      handleDryMin: 2 * HOUR,
      recoat: [{ fromMin: 2 * HOUR, toMin: 3 * HOUR, scuff: false }],
    });
    const input = shopInput({
      hours: everyDay([10, 12], [17, 21]),
      startMinute: 10 * HOUR + 30,
      recipes: [recipeOf([stepOf({ coats: 2, coat: hasty })])],
      pieces: pieces('a'),
    });
    const { tasks } = planCalendar(input);
    // From 10:30 on, the second coat could begin at 12:30 at the soonest: shut. So both go into the evening.
    expect(tasks.map(({ startMinute }) => Math.floor(startMinute / HOUR))).toEqual([17, 19]);
    expect(tasks[0]?.heldBy).toEqual({ kind: 'next-coat', taskId: tasks[1]?.id });
  });
});

describe('why it is not known when everything is cured', () => {
  it('names the steps whose product has no curing time, once each', () => {
    const recipes = [
      recipeOf([stepOf({ id: 'top', name: 'Varnish', coats: 2, coat: coatOf({ cureMin: null }) })]),
    ];
    const plan = planCalendar(shopInput({ hours: everyDay([8, 18]), recipes, pieces: pieces('a', 'b') }));
    expect(plan.curedMinute).toBeNull();
    expect(plan.uncured).toEqual([
      { recipeId: plan.tasks[0]?.recipeId, stepId: 'top', name: 'Varnish', because: 'not-known' },
    ]);
  });

  it('is empty when it is known', () => {
    const recipes = [recipeOf([stepOf({ coat: coatOf({ cureMin: 3 * DAY }) })])];
    const plan = planCalendar(shopInput({ hours: everyDay([8, 18]), recipes, pieces: pieces('a') }));
    expect(plan.curedMinute).not.toBeNull();
    expect(plan.uncured).toEqual([]);
  });
});
