import { describe, expect, it } from 'vitest';
import { calendarTasks } from '../../../server/planning/calendar/calendar-tasks.ts';
import { coatOf, everyDay, HOUR, pieceOf, recipeOf, shopInput, stepOf } from './shop-input.ts';

const recipes = [recipeOf([stepOf({ kind: 'sand' }), stepOf({ coats: 2 })])];

describe('calendarTasks', () => {
  it('passes all steps on the back face, then all on the show face', () => {
    const { batches } = calendarTasks(
      shopInput({ recipes, pieces: [pieceOf({ backRecipeId: 'r', edgeM2: 0.1 })] }),
    );
    expect(batches.map(({ id }) => id)).toEqual(['r+r#1']);
    expect(batches[0]?.tasks.map(({ id }) => id)).toEqual([
      'r+r#1:back:sand-1',
      'r+r#1:back:topcoat-1',
      'r+r#1:back:topcoat-2',
      'r+r#1:show:sand-1',
      'r+r#1:show:topcoat-1',
      'r+r#1:show:topcoat-2',
    ]);
    // The edge goes with the show face: 0.3 and 0.3 + 0.1.
    expect(batches[0]?.tasks.map(({ areaM2 }) => areaM2)).toEqual([0.3, 0.3, 0.3, 0.4, 0.4, 0.4]);
  });

  it('coats both faces in one task on points, and lays them on the rack once', () => {
    const points = [recipeOf(recipes[0]?.steps ?? [], { faces: 'points' })];
    const { batches } = calendarTasks(
      shopInput({ recipes: points, pieces: [pieceOf({ backRecipeId: 'r', edgeM2: 0.1 })] }),
    );
    expect(batches[0]?.tasks.map(({ face }) => face)).toEqual(['both', 'both', 'both']);
    expect(batches[0]?.tasks[0]?.areaM2).toBeCloseTo(0.7, 12);
    expect(batches[0]?.footprintM2).toBe(0.3);
  });

  it('coats the edge with the back where the show face gets nothing', () => {
    const { batches } = calendarTasks(
      shopInput({ recipes, pieces: [pieceOf({ showRecipeId: '', backRecipeId: 'r', edgeM2: 0.1 })] }),
    );
    expect(batches[0]?.tasks.map(({ face, areaM2 }) => [face, areaM2])).toEqual([
      ['back', 0.4],
      ['back', 0.4],
      ['back', 0.4],
    ]);
  });

  it.each([
    // 10 pieces of 0.3 m2 = 3 m2 by rack.
    [3, [10]],
    [2.9, [5, 5]],
    [1, [3, 3, 2, 2]],
    [0.3, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]],
  ])('shares ten pieces of 0.3 m2 out over a rack of %d m2', (rackM2, counts) => {
    const { batches } = calendarTasks(shopInput({ recipes, rackM2, pieces: [pieceOf({ count: 10 })] }));
    expect(batches.map(({ pieces }) => pieces[0]?.count)).toEqual(counts);
  });

  it('keeps pieces of different recipes, and of different batch names, apart', () => {
    const { batches } = calendarTasks(
      shopInput({
        recipes,
        pieces: [
          pieceOf(),
          pieceOf({ id: 'q', backRecipeId: 'r' }),
          pieceOf({ id: 's', batchName: 'doors' }),
        ],
      }),
    );
    expect(batches.map(({ id }) => id)).toEqual(['r+-#1', 'r+r#1', 'r+-~doors#1']);
  });

  it('cuts batches so that every visit fits the longest window', () => {
    // Sanding 1 h: 60 - 5 (step) - 10 (fixed) = 45 min at 0.1 m2/min = 4.5 m2, so 15 pieces of 0.3 m2: 2 batches of 20.
    const { batches } = calendarTasks(
      shopInput({ recipes, hours: everyDay([8, 9]), pieces: [pieceOf({ count: 20 })] }),
    );
    expect(batches.map(({ pieces }) => pieces[0]?.count)).toEqual([10, 10]);
    for (const { tasks } of batches)
      for (const { times } of tasks) expect(times.handsOnMin).toBeLessThanOrEqual(60);
  });

  it('warns of a piece too large for the working time, and plans it alone', () => {
    const quick = [recipeOf([stepOf({ coat: coatOf({ workingTimeMin: 10 }) })])];
    // 10 min at 0.15 m2/min = 1.5 m2.
    const { batches, problems } = calendarTasks(
      shopInput({ recipes: quick, pieces: [pieceOf({ showM2: 1.6, count: 2 })] }),
    );
    expect(batches.map(({ pieces }) => pieces[0]?.count)).toEqual([1, 1]);
    expect(problems.map(({ code, severity, at }) => [code, severity, at.id])).toEqual([
      ['batch-too-large', 'warning', 'p'],
    ]);
    expect(problems[0]?.message).toContain('1.60 m²');
    expect(problems[0]?.message).toContain('1.50 m²');
  });

  it('says that recoat and curing times are missing, and plans with the time to handle', () => {
    const vague = [
      recipeOf([stepOf({ coats: 2, coat: coatOf({ recoat: [], cureMin: null }) }), stepOf({ kind: 'cure' })]),
    ];
    const { batches, problems } = calendarTasks(shopInput({ recipes: vague, pieces: [pieceOf()] }));
    expect(problems.map(({ code }) => code).sort()).toEqual(['cure-unknown', 'recoat-unknown']);
    expect(batches[0]?.tasks[0]?.coat?.recoat).toEqual([{ fromMin: 24 * HOUR, toMin: null, scuff: false }]);
  });

  it('has no batches for no pieces and for recipes of nothing but curing', () => {
    expect(calendarTasks(shopInput({ recipes })).batches).toEqual([]);
    const cure = [recipeOf([stepOf({ kind: 'cure' })])];
    expect(calendarTasks(shopInput({ recipes: cure, pieces: [pieceOf()] })).batches).toEqual([]);
  });

  it('shares out ten thousand pieces', () => {
    const { batches } = calendarTasks(
      shopInput({ recipes, rackM2: 300, pieces: [pieceOf({ count: 10_000 })] }),
    );
    const total = batches.reduce((sum, { pieces }) => sum + (pieces[0]?.count ?? 0), 0);
    expect(total).toBe(10_000);
  });
});
