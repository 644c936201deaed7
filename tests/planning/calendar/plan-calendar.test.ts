import { describe, expect, it } from 'vitest';
import { planCalendar } from '../../../server/planning/calendar/plan-calendar.ts';
import { checkCalendar } from './check-calendar.ts';
import { at, coatOf, DAY, everyDay, HOUR, pieceOf, recipeOf, shopInput, stepOf } from './shop-input.ts';

describe('planCalendar', () => {
  it('lays two coats a day apart and proves that it cannot be sooner', () => {
    const input = shopInput({ recipes: [recipeOf([stepOf({ coats: 2 })])], pieces: [pieceOf()] });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    // 08:00 set-up 5, laid 08:05 to 08:07, clean-up to 08:17, rounded to 08:20. The first stroke of coat 2 may come 24 h
    // after the last of coat 1: 08:07; set-up from 08:02, so 08:05. Dry to handle 24 h after 08:05 + 5 + 2 = 08:12.
    expect(plan.tasks.map(({ startMinute }) => startMinute)).toEqual([at(0, 8), at(1, 8, 5)]);
    expect([plan.readyToAssembleMinute, plan.proven]).toEqual([at(2, 8, 12), true]);
    expect(plan.curedMinute).toBe(at(1, 8, 12) + 7 * DAY);
    expect([plan.visits, plan.visitsProven]).toEqual([2, true]);
  });

  it('has nothing to do for pieces without a finish', () => {
    const plan = planCalendar(shopInput({ pieces: [pieceOf({ showRecipeId: '' })] }));
    expect([plan.state, plan.readyToAssembleMinute]).toEqual(['nothing-to-do', null]);
  });

  it('says which drying time is missing and plans the other recipe, without a ready time for all', () => {
    const input = shopInput({
      recipes: [
        recipeOf([stepOf({ coat: coatOf({ handleDryMin: null }) })]),
        recipeOf([stepOf({ id: 'oil' })], { id: 's' }),
      ],
      pieces: [pieceOf(), pieceOf({ id: 'q', showRecipeId: 's' })],
    });
    const plan = planCalendar(input);
    expect(plan.problems.map(({ code, at: place }) => [code, place.id])).toEqual([
      ['drying-time-missing', 'topcoat'],
    ]);
    expect(plan.tasks.map(({ stepId }) => stepId)).toEqual(['oil']);
    expect([plan.state, plan.readyToAssembleMinute]).toEqual(['planned', null]);
  });

  it('keeps pins and done facts, and goes on from what was done', () => {
    const input = shopInput({
      startMinute: at(1, 12),
      recipes: [recipeOf([stepOf({ coats: 3 })])],
      pieces: [pieceOf()],
      done: [{ taskId: 'r+-#1:show:topcoat-1', startMinute: at(1, 9), endMinute: at(1, 9, 30) }],
      pins: [{ taskId: 'r+-#1:show:topcoat-3', startMinute: at(4, 15, 3) }],
    });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    // Coat 2: 24 h after 09:30 of day 1, set-up 5 minutes earlier: 09:25 of day 2.
    expect(plan.tasks.map(({ startMinute, state }) => [startMinute, state])).toEqual([
      [at(1, 9), 'done'],
      [at(2, 9, 25), 'planned'],
      [at(4, 15, 3), 'pinned'],
    ]);
  });

  it('waits for the material', () => {
    const input = shopInput({
      recipes: [recipeOf([stepOf({ materialMinute: at(3, 11) })])],
      pieces: [pieceOf()],
    });
    expect(planCalendar(input).tasks[0]?.startMinute).toBe(at(3, 11));
  });

  it('needs no more visits than it must for the same ready time', () => {
    // Two batches with one coat each, of which one can only start on day 1: both fit into the one visit of day 1.
    const input = shopInput({
      recipes: [recipeOf([stepOf()])],
      pieces: [pieceOf({ batchName: 'a' }), pieceOf({ id: 'q', batchName: 'b', readyMinute: at(1, 8, 20) })],
    });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    expect(plan.tasks.map(({ startMinute }) => startMinute)).toEqual([at(1, 8), at(1, 8, 20)]);
    expect([plan.visits, plan.visitsProven]).toEqual([1, true]);
  });

  it('keeps sanding away from wet coats, unless it is done in another room', () => {
    const recipes = [recipeOf([stepOf()]), recipeOf([stepOf({ kind: 'sand' })], { id: 's' })];
    const pieces = [pieceOf(), pieceOf({ id: 'q', showRecipeId: 's' })];
    const input = shopInput({
      recipes,
      pieces,
      pins: [{ taskId: 'r+-#1:show:topcoat-1', startMinute: at(0, 8) }],
    });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    // Laid by 08:07, touch dry 4 h later: 12:07, so 12:10.
    expect(plan.tasks[1]?.startMinute).toBe(at(0, 12, 10));
    expect(planCalendar({ ...input, sandsApart: true }).tasks[1]?.startMinute).toBe(at(0, 8, 20));
  });

  it('gives the same plan for the same seed', () => {
    const input = shopInput({
      rackM2: 0.5,
      recipes: [recipeOf([stepOf({ kind: 'sand' }), stepOf({ coats: 3 })])],
      pieces: [pieceOf({ count: 6, backRecipeId: 'r' })],
    });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    expect(planCalendar(input)).toEqual(plan);
  });

  it.each([
    ['hours for six days', { hours: everyDay([8, 18]).slice(1) }],
    ['a step that does not divide the hour', { stepMin: 7 }],
    ['no hands', { hands: 0 }],
    ['a start that is no number', { startMinute: Number.NaN }],
    ['a horizon beyond the drying horizon', { horizonDays: 401 }],
  ])('throws a RangeError for %s', (_, changes) => {
    expect(() => planCalendar(shopInput(changes))).toThrow(RangeError);
  });
});

describe('planCalendar, when nothing fits', () => {
  const blocksOf = (changes: Parameters<typeof shopInput>[0]) => {
    const input = shopInput({
      horizonDays: 20,
      recipes: [recipeOf([stepOf({ coats: 2 })])],
      pieces: [pieceOf()],
      ...changes,
    });
    const plan = planCalendar(input);
    expect(checkCalendar(input, plan)).toEqual([]);
    expect([plan.state, plan.proven]).toEqual(['does-not-fit', true]);
    expect(plan.problems.some(({ code }) => code === 'calendar-does-not-fit')).toBe(true);
    const [block] = plan.blocks;
    return {
      kind: block?.kind,
      taskId: block?.taskId,
      ways: block?.waysOut.map(({ change }) => change) ?? [],
    };
  };

  it('names the window that is too short, and that longer hours help', () => {
    // 20 minutes of hands-on time against a window of 15.
    const hours = everyDay([8, 18]).map(() => [{ fromMin: 480, toMin: 495 }]);
    const block = blocksOf({ hours });
    expect([block.kind, block.taskId]).toEqual(['working-window', 'r+-#1:show:topcoat-1']);
    expect(block.ways).toContain('longer-windows');
    expect(block.ways).not.toContain('more-hands');
  });

  it('refuses more tasks than it can plan, at once', () => {
    // 100,000 panels of 0.3 m2 on a rack of 0.5 m2: one a batch, two coats each.
    const plan = planCalendar(
      shopInput({
        rackM2: 0.5,
        recipes: [recipeOf([stepOf({ coats: 2 })])],
        pieces: [pieceOf({ count: 100_000 })],
      }),
    );
    expect([plan.state, plan.proven]).toEqual(['not-found', false]);
    expect(plan.problems[0]?.message).toContain('200000 tasks in 100000 batches');
  });

  it('names missing working hours', () => {
    expect(blocksOf({ hours: everyDay() }).kind).toBe('working-window');
  });

  it('names the air that is too cold, and that a warmer shop helps', () => {
    const block = blocksOf({ climate: { kind: 'constant', air: { airC: 6, relativeHumidityPercent: 50 } } });
    expect(block.kind).toBe('air');
    expect(block.ways).toEqual(['warmer-shop']);
  });

  it('names the cold in which a coat never dries', () => {
    const coat = coatOf({ minTemperatureC: null, handleDryMin: 100 * HOUR });
    const drying = { kind: 'day-night', dayFromMinute: 480, nightFromMinute: 500 } as const;
    const air = {
      day: { airC: 12, relativeHumidityPercent: 50 },
      night: { airC: 2, relativeHumidityPercent: 50 },
    };
    const block = blocksOf({ climate: { ...drying, ...air }, recipes: [recipeOf([stepOf({ coat })])] });
    // 20 minutes a day at rate 0.5 = 10 label minutes a day: 100 h take 600 days, more than the 400 looked at. 5 C
    // warmer, nights of 7 C count too.
    expect(block.kind).toBe('drying');
    expect(block.ways).toContain('warmer-shop');
  });

  it('names the rack that is too small for one piece', () => {
    const block = blocksOf({ rackM2: 0.2 });
    expect(block.kind).toBe('rack');
    expect(block.ways).toContain('larger-rack');
  });

  it('names the recoat time that ends before the shop opens again, and that longer hours help', () => {
    // Recoat from 10 h to 12 h only; the shop is open from 08:00 to 09:00. Open until 19:00 or so it would do.
    const coat = coatOf({ recoat: [{ fromMin: 10 * HOUR, toMin: 12 * HOUR, scuff: false }] });
    const block = blocksOf({ hours: everyDay([8, 9]), recipes: [recipeOf([stepOf({ coats: 2, coat })])] });
    expect(block.kind).toBe('recoat');
    expect(block.ways).toContain('longer-windows');
  });

  it('names the pin outside working hours, and offers to drop it', () => {
    const block = blocksOf({ pins: [{ taskId: 'r+-#1:show:topcoat-1', startMinute: at(0, 3) }] });
    expect([block.kind, block.taskId]).toEqual(['pin', 'r+-#1:show:topcoat-1']);
    expect(block.ways).toContain('drop-pin');
  });

  it('names the coat whose recoat time was missed', () => {
    const coat = coatOf({ recoat: [{ fromMin: HOUR, toMin: 2 * HOUR, scuff: false }] });
    const block = blocksOf({
      startMinute: at(1, 8),
      recipes: [recipeOf([stepOf({ coats: 2, coat })])],
      done: [{ taskId: 'r+-#1:show:topcoat-1', startMinute: at(0, 9), endMinute: at(0, 9, 10) }],
    });
    expect([block.kind, block.taskId]).toEqual(['done', 'r+-#1:show:topcoat-1']);
    expect(block.ways).toContain('forget-done');
  });

  it('names the hands when pinned tasks overlap', () => {
    const block = blocksOf({
      recipes: [recipeOf([stepOf()])],
      pieces: [pieceOf({ batchName: 'a' }), pieceOf({ id: 'q', batchName: 'b' })],
      pins: [
        { taskId: 'r+-~a#1:show:topcoat-1', startMinute: at(0, 8) },
        { taskId: 'r+-~b#1:show:topcoat-1', startMinute: at(0, 8, 10) },
      ],
    });
    expect(block.kind).toBe('pin');
    expect(block.ways).toEqual(expect.arrayContaining(['drop-pin', 'more-hands']));
  });
});
