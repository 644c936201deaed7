import { describe, expect, it } from 'vitest';
import { airSubstance } from '../../../server/planning/air/air-substance.ts';
import type { ExposureLimit, Solvent } from '../../../server/planning/air/solvent.ts';
import { strictestLimit } from '../../../server/planning/air/strictest-limit.ts';

const read = { basis: 'published', source: 'a handbook', readOn: '2026-11-25' } as const;
const limit = (
  kind: ExposureLimit['kind'],
  averagedOverMin: number | null,
  ppm: number | null,
  mgPerM3: number | null,
): ExposureLimit => ({ body: 'a body', kind, averagedOverMin, ppm, mgPerM3, ...read });
const solvent: Solvent = {
  id: 'a-solvent',
  name: 'a solvent',
  alsoCalled: [],
  casNumber: null,
  molarMassGPerMol: { value: 100, ...read },
  densityGPerL: null,
  lelPercent: { value: 1.2, ...read },
  uelPercent: null,
  lelElsewhere: [{ value: 0.9, ...read }],
  flashPointC: null,
  limits: [],
  idlhPpm: null,
  idlhMgPerM3: null,
  note: null,
};

describe('strictestLimit', () => {
  it('takes the lowest of a kind and says whose it is', () => {
    const limits = [limit('time-weighted', 600, 100, 375), limit('time-weighted', 480, null, 188)];
    expect(strictestLimit({ ...solvent, limits }, 'long-term')).toEqual({
      mgPerM3: 188,
      source: 'a body (a handbook)',
    });
  });

  it('converts a limit given in ppm alone, and needs a molar mass for it', () => {
    // 50 ppm x 100 / 24.45 = 204.5 mg/m3.
    const limits = [limit('time-weighted', 480, 50, null)];
    expect(strictestLimit({ ...solvent, limits }, 'long-term')?.mgPerM3).toBeCloseTo(204.5, 1);
    expect(strictestLimit({ ...solvent, limits, molarMassGPerMol: null }, 'long-term')).toBe(null);
  });

  it('takes a ceiling measured over 15 minutes for a short-term limit', () => {
    const limits = [limit('ceiling', 15, null, 1800), limit('ceiling', null, null, 3000)];
    expect(strictestLimit({ ...solvent, limits }, 'short-term')?.mgPerM3).toBe(1800);
    expect(strictestLimit({ ...solvent, limits }, 'ceiling')?.mgPerM3).toBe(3000);
  });

  it('knows no limit where none is given', () => {
    expect(strictestLimit(solvent, 'long-term')).toBe(null);
  });
});

describe('airSubstance', () => {
  it('goes by the known explosive limit and offers no stand-in for it', () => {
    expect(airSubstance(solvent)).toMatchObject({
      lelPercent: 1.2,
      lelSource: 'a handbook',
      lelCautious: null,
      limitMgPerM3: null,
      limitSource: null,
    });
  });

  it('keeps an unknown explosive limit unknown beside the lowest value found elsewhere', () => {
    const lelElsewhere = [
      { value: null, ...read },
      { value: 1.1, ...read },
      { value: 0.7, ...read, source: 'elsewhere' },
    ];
    const unknown = airSubstance({ ...solvent, lelPercent: { value: null, ...read }, lelElsewhere });
    expect(unknown.lelPercent).toBe(null);
    expect(unknown.lelCautious).toEqual({ percent: 0.7, source: 'elsewhere' });
    expect(airSubstance({ ...solvent, lelPercent: null, lelElsewhere: [] }).lelCautious).toBe(null);
  });

  it('holds a solvent with only a ceiling to it all day', () => {
    const limits = [limit('ceiling', null, 50, 150)];
    expect(airSubstance({ ...solvent, limits })).toMatchObject({ limitMgPerM3: 150, ceilingMgPerM3: 150 });
  });
});
