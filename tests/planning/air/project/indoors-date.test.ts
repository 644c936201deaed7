import { describe, expect, it } from 'vitest';
import { indoorsDate } from '../../../../server/planning/air/project/indoors-date.ts';
import { airOf, airProject, aVarnish, VARNISH_FIGURES } from './air-project.ts';

const DAY = 1440;
/** The last stroke of the coat: Saturday 09:07. */
const LAST = 547;

describe('when the piece may come indoors', () => {
  it('is the later of curing and of fading', () => {
    // Cure 10 days, fading 7.
    const { earliestMinute, latestMinute, earliestWait, missing } = airOf().indoors;
    expect(earliestWait.value).toBe(10 * DAY);
    expect([earliestMinute, latestMinute]).toEqual([LAST + 10 * DAY, LAST + 10 * DAY]);
    expect(missing).toEqual([]);
    // Cured in two days: fading is later.
    const quick = airOf({ varnish: aVarnish({}, { ...VARNISH_FIGURES, cure: 2 * DAY }) });
    expect(quick.indoors.earliestWait.value).toBe(7 * DAY);
  });

  it('is a range where the label gives one', () => {
    const varnish = aVarnish();
    const cure = { ...varnish.figures.cure, low: 2 * DAY, typical: 7 * DAY, high: 20 * DAY } as never;
    const { indoors } = airOf({ varnish: { ...varnish, figures: { ...varnish.figures, cure } } });
    expect([indoors.earliestWait.value, indoors.latestWait.value]).toEqual([7 * DAY, 20 * DAY]);
    expect(indoors.advice[0]).toMatchObject({ what: 'Cure of Varnish', says: '2 to 20 days' });
    expect(indoors.earliestWait.working.notes?.join(' ')).toContain('Low confidence');
  });

  it('is not before the air of the shop is clear', () => {
    const { input, calendar } = airProject();
    expect(indoorsDate(input, calendar, LAST + 12 * DAY).earliestWait.value).toBe(12 * DAY);
  });

  it('is not known where the curing time of the last coat is not, and names it', () => {
    const { cure: _, ...figures } = VARNISH_FIGURES;
    const { indoors } = airOf({ varnish: aVarnish({}, figures) });
    expect(indoors).toMatchObject({ earliestMinute: null, latestMinute: null, missing: ['Varnish'] });
    expect(indoors.earliestWait.value).toBe(null);
  });

  it('shows advice that disagrees side by side, each with its source', () => {
    const said = airOf().indoors.advice;
    expect(said.map(({ says }) => says)).toEqual(
      expect.arrayContaining([
        'steady after 7 days in chamber tests',
        'gives off vapour for over 200 days',
        'vapour is over after 24 hours',
        'wait 3 to 4 weeks; while it smells, it still cures',
      ]),
    );
    for (const { source } of said) expect(source).not.toBe('');
  });
});
