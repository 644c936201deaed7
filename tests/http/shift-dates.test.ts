import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { readProjectDocument } from '../../server/exchange/project-document.ts';
import { shiftDates } from '../../server/shift-dates.ts';

const read = readProjectDocument(
  {
    format: 'plywright-project',
    version: 1,
    settings: { name: 'Old', units: 'metric', currency: 'EUR' },
    parts: [],
    // Thursday.
    orders: [{ id: '1', date: '2026-03-05' }],
    payments: [{ amountMinor: 1, date: '' }],
    quotes: [{ date: '2026-03-02', validUntil: '2026-03-30' }],
  },
  readCatalogue(),
);
if (!read.ok) throw new Error('the document is unreadable');
const { input } = read;

describe('dates of a demo', () => {
  it('move by whole weeks up to the day they are wanted for, and keep their weekdays', () => {
    // From Wednesday 11 March to Tuesday 31 March are 20 days: two weeks. Thursday the 5th becomes Thursday the 19th.
    const moved = shiftDates(input, '2026-03-11', '2026-03-31');
    expect(moved.orders[0]?.date).toBe('2026-03-19');
    expect([moved.quotes[0]?.date, moved.quotes[0]?.validUntil]).toEqual(['2026-03-16', '2026-04-13']);
    expect(shiftDates(input, '2026-03-11', '2026-04-01').orders[0]?.date).toBe('2026-03-26');
  });

  it('move back on a machine whose clock is behind', () => {
    // One day before: a week back.
    expect(shiftDates(input, '2026-03-11', '2026-03-10').orders[0]?.date).toBe('2026-02-26');
  });

  it('stay away where there are none', () => {
    expect(shiftDates(input, '2026-03-11', '2027-01-01').payments[0]?.date).toBe('');
  });
});
