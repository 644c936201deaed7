import { describe, expect, it } from 'vitest';
import { taskTimes } from '../../../server/planning/calendar/task-times.ts';

const of = { method: 'brush', scuffFirst: false, stepMin: 5 } as const;

describe('taskTimes', () => {
  it('sets up, lays and cleans up', () => {
    // Brush: 5 + 3 / 0.15 = 20, + 10.
    expect(taskTimes({ ...of, kind: 'topcoat', areaM2: 3 })).toEqual({
      sandToMin: 0,
      layFromMin: 5,
      layToMin: 25,
      handsOnMin: 35,
    });
  });

  it('rounds laying up to whole minutes and the visit up to the step', () => {
    // 5 + 3.01 / 0.15 = 20.07, so 21, + 10 = 36, so 40.
    expect(taskTimes({ ...of, kind: 'topcoat', areaM2: 3.01 }).handsOnMin).toBe(40);
  });

  it('scuff-sands first where the recoat interval asks for it', () => {
    // 5 + 3 / 0.25 = 17 of sanding, then as above.
    expect(taskTimes({ ...of, kind: 'topcoat', areaM2: 3, scuffFirst: true })).toEqual({
      sandToMin: 17,
      layFromMin: 22,
      layToMin: 42,
      handsOnMin: 55,
    });
  });

  it('sands, and makes no dust when dusting off', () => {
    // 10 + 3 / 0.1 = 40; 5 + 3 / 0.5 = 11, so 15.
    expect(taskTimes({ ...of, kind: 'sand', areaM2: 3 })).toMatchObject({ sandToMin: 40, handsOnMin: 40 });
    expect(taskTimes({ ...of, kind: 'dust', areaM2: 3 })).toMatchObject({ sandToMin: 0, handsOnMin: 15 });
  });

  it('takes the fixed minutes for no area', () => {
    expect(taskTimes({ ...of, kind: 'topcoat', areaM2: 0 }).handsOnMin).toBe(15);
  });

  it('throws a RangeError for a negative area', () => {
    expect(() => taskTimes({ ...of, kind: 'topcoat', areaM2: -1 })).toThrow(RangeError);
  });
});
