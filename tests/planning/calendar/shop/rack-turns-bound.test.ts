import { describe, expect, it } from 'vitest';
import type { CalendarInput } from '../../../../server/planning/calendar/calendar-input.ts';
import { calendarTasks } from '../../../../server/planning/calendar/calendar-tasks.ts';
import { planCalendar } from '../../../../server/planning/calendar/plan-calendar.ts';
import { rackTurnsBound } from '../../../../server/planning/calendar/shop/rack-turns-bound.ts';
import { shopJobOf } from '../../../../server/planning/calendar/shop/shop-job-of.ts';
import { coatOf, everyDay, HOUR, pieceOf, recipeOf, shopInput, stepOf } from '../shop-input.ts';

/** Two panels that do not fit on the rack together, two coats each; dry to handle and to recoat after 8 h. */
function twoPanels(rest: Partial<CalendarInput> = {}): CalendarInput {
  const coat = coatOf({
    touchDryMin: HOUR,
    handleDryMin: 8 * HOUR,
    recoat: [{ fromMin: 8 * HOUR, toMin: null, scuff: false }],
  });
  return shopInput({
    hours: everyDay([18, 21]),
    rackM2: 1.5,
    recipes: [recipeOf([stepOf({ coats: 2, coat })])],
    pieces: ['a', 'b'].map((id) => pieceOf({ id, batchName: id, showM2: 1, backM2: 0 })),
    ...rest,
  });
}

function boundOf(input: CalendarInput): number {
  const job = shopJobOf(input, calendarTasks(input).batches);
  return rackTurnsBound(job, new Float64Array(job.tasks.length));
}

describe('rackTurnsBound', () => {
  it('gives every coat an evening of its own where one dries overnight', () => {
    const input = twoPanels();
    const plan = planCalendar(input);
    // Four coats, four evenings: the last is laid on day 3 from 18:05, and is dry 8 h after its last stroke.
    const last = plan.tasks.at(-1);
    expect(Math.floor((last?.startMinute ?? 0) / 1440)).toBe(3);
    expect(boundOf(input)).toBeCloseTo((last?.layToMinute ?? 0) + 8 * HOUR, 6);
    expect(plan.readyToAssembleMinute).toBeCloseTo(boundOf(input), 6);
    expect(plan.proven).toBe(true);
  });

  it('says nothing where two batches fit on the rack together, or the rack never runs out', () => {
    expect(boundOf(twoPanels({ rackM2: 2 }))).toBe(0);
    expect(boundOf(twoPanels({ rackM2: null }))).toBe(0);
  });

  it('counts only the coats that are still to be laid', () => {
    const [first] = planCalendar(twoPanels()).tasks;
    if (first === undefined) throw new Error('nothing is planned');
    const { id: taskId, startMinute, endMinute } = first;
    const after = twoPanels({ startMinute: 24 * HOUR, done: [{ taskId, startMinute, endMinute }] });
    expect(boundOf(after)).toBeCloseTo(boundOf(twoPanels()), 6);
    expect(boundOf({ ...after, done: [] })).toBeCloseTo(boundOf(twoPanels()) + 24 * HOUR, 6);
  });
});
