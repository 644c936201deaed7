import { describe, expect, it } from 'vitest';
import { expectedOn } from '../../../../server/planning/buying/dates/expected-on.ts';
import { orderBy } from '../../../../server/planning/buying/dates/order-by.ts';
import { workingDayFrom } from '../../../../server/planning/buying/dates/supplier-days.ts';
import { urgency } from '../../../../server/planning/buying/dates/urgency.ts';

/*
 * March and April 2027 (Easter Sunday is 28 March 2027, so Good Friday is 26 March and Easter Monday 29 March):
 *   Mon 22  Tue 23  Wed 24  Thu 25  Fri 26 (holiday)  Sat 27  Sun 28
 *   Mon 29 (holiday)  Tue 30  Wed 31  Thu 1 April  Fri 2
 */
const EASTER = new Set(['2027-03-26', '2027-03-29']);
const WEEKDAYS = [0, 1, 2, 3, 4];
const yard = { name: 'Timber yard', leadTimeDays: 2, workingDays: WEEKDAYS };
const by = (neededBy: string, supplier = yard, daysOff: ReadonlySet<string> = new Set()): string | null =>
  orderBy({ neededBy, why: 'the first coat.', supplier, daysOff }).date;

describe('the last day to order', () => {
  it('is so many working days before the day of need', () => {
    // needed Friday 2 April, 2 days: Thursday 1 April, Wednesday 31 March
    expect(by('2027-04-02')).toBe('2027-03-31');
    expect(by('2027-04-02', { ...yard, leadTimeDays: 0 })).toBe('2027-04-02');
  });

  it('goes back over a weekend', () => {
    // needed Monday 22 March: Friday 19, Thursday 18
    expect(by('2027-03-22')).toBe('2027-03-18');
    // needed on Sunday 21 March: it must come by Friday 19; Thursday 18, Wednesday 17
    expect(by('2027-03-21')).toBe('2027-03-17');
  });

  it('goes back over a weekend with a holiday on either side', () => {
    // needed Tuesday 30 March: Monday is off, Sunday, Saturday, Friday is off; so Thursday 25, Wednesday 24
    expect(by('2027-03-30', yard, EASTER)).toBe('2027-03-24');
    // needed on the holiday itself, Monday 29 March: it must come by Thursday 25; Wednesday 24, Tuesday 23
    expect(by('2027-03-29', yard, EASTER)).toBe('2027-03-23');
    const { working } = orderBy({
      neededBy: '2027-03-30',
      why: 'the first coat.',
      supplier: yard,
      daysOff: EASTER,
    });
    expect(working.join(' ')).toContain('Wednesday 2027-03-24');
    expect(working.at(-1)).toBe(
      'Not counted: Monday 2027-03-29, Sunday 2027-03-28, Saturday 2027-03-27, Friday 2027-03-26.',
    );
  });

  it('follows the days on which the supplier works, and counts a part of a day as a day', () => {
    // works on Tuesday and Saturday only: needed Friday 2 April, comes Tuesday 30 March, one day before is Saturday 27
    const rare = { ...yard, leadTimeDays: 0.5, workingDays: [1, 5] };
    expect(by('2027-04-02', rare)).toBe('2027-03-27');
  });

  it('is not known without a day of need, a lead time, a supplier or a working day, and says so', () => {
    const told = (
      more: Partial<Parameters<typeof orderBy>[0]>,
    ): readonly [string | null, string | undefined] => {
      const found = orderBy({
        neededBy: '2027-04-02',
        why: 'why.',
        supplier: yard,
        daysOff: EASTER,
        ...more,
      });
      return [found.date, found.working.at(-1)];
    };
    expect(told({ neededBy: null, why: 'The calendar is not worked out yet.' })).toEqual([
      null,
      'The calendar is not worked out yet.',
    ]);
    expect(told({ supplier: { ...yard, leadTimeDays: null } })[1]).toBe(
      'The lead time of Timber yard is not known.',
    );
    expect(told({ supplier: null })[1]).toContain('No supplier');
    expect(told({ supplier: { ...yard, workingDays: [] } })[1]).toContain('has no working days');
  });
});

describe('the day an order should be here', () => {
  it('is so many working days after the order, from the first day on which it is worked on', () => {
    // ordered Thursday 18 March, 2 days: Friday 19, Monday 22
    expect(expectedOn('2027-03-18', yard, EASTER)).toBe('2027-03-22');
    // ordered Thursday 25: Tuesday 30, Wednesday 31
    expect(expectedOn('2027-03-25', yard, EASTER)).toBe('2027-03-31');
    // ordered on Saturday 20: taken up on Monday 22, so Wednesday 24
    expect(expectedOn('2027-03-20', yard, EASTER)).toBe('2027-03-24');
    expect(expectedOn('', yard, EASTER)).toBeNull();
    expect(expectedOn('2027-03-20', { ...yard, leadTimeDays: null }, EASTER)).toBeNull();
  });

  it('undoes the last day to order, for any dates: ordered on that day, it is here by the day of need', () => {
    for (let day = 1; day <= 31; day++)
      for (const leadTimeDays of [0, 1, 3, 7]) {
        const needed = `2027-03-${String(day).padStart(2, '0')}`;
        const order = by(needed, { ...yard, leadTimeDays }, EASTER) as string;
        const here = expectedOn(order, { ...yard, leadTimeDays }, EASTER) as string;
        expect(here <= needed).toBe(true);
        // A working day later it would be too late.
        const next = workingDayFrom(order, 1, 'on', { workingDays: WEEKDAYS, daysOff: EASTER })
          ?.date as string;
        expect((expectedOn(next, { ...yard, leadTimeDays }, EASTER) as string) > needed).toBe(true);
      }
  });
});

describe('the urgency of an order', () => {
  it('is late, today, soon within a week, or none', () => {
    const at = (last: string | null, needed: string | null = null) => urgency(last, needed, '2027-03-10');
    expect([
      at('2027-03-09'),
      at('2027-03-10'),
      at('2027-03-11'),
      at('2027-03-17'),
      at('2027-03-18'),
    ]).toEqual(['late', 'today', 'soon', 'soon', 'none']);
    // Without a lead time, the day of need itself is the last word.
    expect([at(null, '2027-03-09'), at(null, '2027-05-01'), at(null)]).toEqual(['late', 'none', 'none']);
  });
});
