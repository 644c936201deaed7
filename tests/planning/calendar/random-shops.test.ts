import { describe, expect, it } from 'vitest';
import { calendarTasks } from '../../../server/planning/calendar/calendar-tasks.ts';
import { planCalendar } from '../../../server/planning/calendar/plan-calendar.ts';
import { seededRandom } from '../../bench/seeded-random.ts';
import { bestByTrying } from './best-by-trying.ts';
import { checkCalendar } from './check-calendar.ts';
import { randomShop } from './random-shop.ts';

describe('planCalendar on random jobs', () => {
  it('agrees with trying every schedule on 500 jobs of up to six tasks', { timeout: 300_000 }, () => {
    const random = seededRandom(20);
    let impossible = 0;
    for (let round = 0; round < 500; round++) {
      const input = randomShop(random, true);
      const plan = planCalendar(input);
      expect([round, checkCalendar(input, plan)]).toEqual([round, []]);
      const best = bestByTrying(input, calendarTasks(input).batches);
      if (best === null) {
        impossible++;
        expect([round, plan.state, plan.proven]).toEqual([round, 'does-not-fit', true]);
        continue;
      }
      expect([round, plan.state, plan.proven, plan.visitsProven]).toEqual([round, 'planned', true, true]);
      expect([round, plan.readyToAssembleMinute]).toEqual([round, expect.closeTo(best.readyMinute, 2)]);
      expect([round, plan.visits]).toEqual([round, best.visits]);
    }
    // Both outcomes are met often enough to count as tested.
    expect(impossible).toBeGreaterThan(30);
    expect(impossible).toBeLessThan(400);
  });

  it('breaks no rule on 1,500 larger jobs', { timeout: 300_000 }, () => {
    const random = seededRandom(21);
    let planned = 0;
    for (let round = 0; round < 1500; round++) {
      const input = randomShop(random, false);
      const plan = planCalendar(input);
      expect([round, checkCalendar(input, plan)]).toEqual([round, []]);
      if (plan.state === 'planned') planned++;
    }
    expect(planned).toBeGreaterThan(1000);
  });
});
