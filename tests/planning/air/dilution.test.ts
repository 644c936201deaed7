import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceMinutes } from '../../../server/planning/air/clearance-minutes.ts';
import { healthAirflow403Ft3PerMin } from '../../../server/planning/air/health-airflow-403-ft3-per-min.ts';
import { healthAirflowM3PerMin } from '../../../server/planning/air/health-airflow-m3-per-min.ts';
import { lelDilutionAirM3 } from '../../../server/planning/air/lel-dilution-air-m3.ts';
import { lelFraction } from '../../../server/planning/air/lel-fraction.ts';
import { makeUpAirHeatW } from '../../../server/planning/air/make-up-air-heat-w.ts';
import { mixtureIndex } from '../../../server/planning/air/mixture-index.ts';
import { steadyStateAirflowM3PerMin } from '../../../server/planning/air/steady-state-airflow-m3-per-min.ts';

describe('lelDilutionAirM3', () => {
  it('spreads vapour so that it makes the asked share of the limit', () => {
    // 228 L of toluene vapour, LEL 1.4 %, 25 %: 4 x 98.6 x 0.228 / 1.4 = 64.23 m3. In that air it makes 0.228 / 64.23 =
    // 0.355 % by volume, 25.4 % of the limit: the formula is a little short, as its docblock says.
    expect(lelDilutionAirM3(228, 1.4)).toBeCloseTo(64.23, 2);
  });

  it('asks for two and a half times as much air for a tenth as for a quarter', () => {
    expect(lelDilutionAirM3(100, 1, 0.1) / lelDilutionAirM3(100, 1, 0.25)).toBeCloseTo(2.5, 12);
  });

  it.each([
    [-1, 1, 0.25],
    [1, 0, 0.25],
    [1, 1, 0],
    [1, 1, 1.1],
    [Number.NaN, 1, 0.25],
  ])('refuses %d L, LEL %d, share %d', (vapour, lel, share) => {
    expect(() => lelDilutionAirM3(vapour, lel, share)).toThrow(RangeError);
  });
});

describe('healthAirflowM3PerMin', () => {
  const toluene = { gramsPerMin: 8.24, molarMassGPerMol: 92, limitPpm: 80, mixingFactor: 5, airC: 20 };

  it('gives its worked example', () => {
    // 8.24 / 92 x 24.055 L/mol x 5 x 1e6 / 80 = 134 658 L/min = 134.7 m3/min.
    expect(healthAirflowM3PerMin(toluene)).toBeCloseTo(134.66, 1);
  });

  it('grows with the mixing factor and falls with the limit', () => {
    const flow = healthAirflowM3PerMin(toluene);
    expect(healthAirflowM3PerMin({ ...toluene, mixingFactor: 10 })).toBeCloseTo(2 * flow, 9);
    expect(healthAirflowM3PerMin({ ...toluene, limitPpm: 160 })).toBeCloseTo(flow / 2, 9);
  });

  it.each([
    { gramsPerMin: -1 },
    { molarMassGPerMol: 0 },
    { limitPpm: 0 },
    { mixingFactor: 0.9 },
    { mixingFactor: 11 },
    { airC: Number.NaN },
  ])('refuses %o', (wrong) => {
    expect(() => healthAirflowM3PerMin({ ...toluene, ...wrong })).toThrow(RangeError);
  });
});

describe('healthAirflow403Ft3PerMin', () => {
  const toluene = {
    pintsPerMin: 0.02,
    specificGravity: 0.87,
    molarMassGPerMol: 92,
    limitPpm: 80,
    mixingFactor: 5,
  };

  it('gives its worked example', () => {
    // 403 x 0.87 x 1e6 x 5 x 0.02 / (92 x 80) = 4763.7.
    expect(healthAirflow403Ft3PerMin(toluene)).toBeCloseTo(4763.7, 1);
  });

  it.each([{ pintsPerMin: Number.NaN }, { specificGravity: 0.1 }, { limitPpm: 0 }, { mixingFactor: 0 }])(
    'refuses %o',
    (wrong) => {
      expect(() => healthAirflow403Ft3PerMin({ ...toluene, ...wrong })).toThrow(RangeError);
    },
  );
});

describe('mixtureIndex', () => {
  it('gives its worked example', () => {
    const terms = [
      { concentration: 50, limit: 100 },
      { concentration: 40, limit: 200 },
    ];
    expect(mixtureIndex(terms)).toEqual({ index: 0.7, complete: true });
  });

  it('is nothing for clean air', () => {
    expect(mixtureIndex([])).toEqual({ index: 0, complete: true });
  });

  it('never takes an unknown limit for harmless', () => {
    const terms = [
      { concentration: 50, limit: 100 },
      { concentration: 1, limit: null },
    ];
    expect(mixtureIndex(terms)).toEqual({ index: 0.5, complete: false });
    expect(mixtureIndex([{ concentration: 0, limit: null }]).complete).toBe(true);
  });

  it.each([
    { concentration: -1, limit: 1 },
    { concentration: Number.NaN, limit: 1 },
    { concentration: 1, limit: 0 },
    { concentration: 1, limit: Number.NaN },
  ])('refuses %o', (term) => {
    expect(() => mixtureIndex([term])).toThrow(RangeError);
  });
});

describe('lelFraction', () => {
  it('gives its worked example', () => {
    // 4190 of 41 903 mg/m3.
    const vapour = { concentrationMgPerM3: 4190, molarMassGPerMol: 144, lelPercent: 0.7 };
    expect(lelFraction([vapour], 20).index).toBeCloseTo(0.1, 3);
  });

  it('is incomplete while a limit is not known', () => {
    const vapour = { concentrationMgPerM3: 4190, molarMassGPerMol: 144, lelPercent: null };
    expect(lelFraction([vapour], 20)).toEqual({ index: 0, complete: false });
  });
});

describe('clearanceMinutes', () => {
  it('gives its worked example', () => {
    // -60 ln 0.01 / 6 = 46.05.
    expect(clearanceMinutes(6, 0.99)).toBeCloseTo(46.05, 2);
  });

  it('takes no time to remove nothing, without a minus sign', () => {
    expect(Object.is(clearanceMinutes(6, 0), 0)).toBe(true);
  });

  it('multiplies by the mixing factor', () => {
    expect(clearanceMinutes(6, 0.9, 3)).toBeCloseTo(3 * clearanceMinutes(6, 0.9), 9);
  });

  it.each([
    [0, 0.9],
    [6, 1],
    [6, -0.1],
    [Number.NaN, 0.9],
    [6, Number.NaN],
  ])('refuses %d air changes and a share of %d', (changes, share) => {
    expect(() => clearanceMinutes(changes, share)).toThrow(RangeError);
  });
});

describe('steadyStateAirflowM3PerMin', () => {
  it('gives its worked example', () => {
    // 2 x 1000 / 350 = 5.714.
    expect(steadyStateAirflowM3PerMin(1000, 350, 2)).toBeCloseTo(5.714, 3);
  });

  it('refuses a limit of nothing', () => {
    expect(() => steadyStateAirflowM3PerMin(1000, 0, 2)).toThrow(/limitPerM3/);
  });
});

describe('makeUpAirHeatW', () => {
  it('gives its worked example', () => {
    // 101 325 / (287.042 x 293.15) = 1.20414 kg/m3; x 1006 x 10 / 60 x 20 = 4037.9 W.
    expect(makeUpAirHeatW(10, 20, 0)).toBeCloseTo(4037.9, 0);
  });

  it('is nothing without airflow or difference, and below nothing when it is warmer outside', () => {
    expect(makeUpAirHeatW(0, 20, 0)).toBe(0);
    expect(Object.is(makeUpAirHeatW(0, 10, 20), 0)).toBe(true);
    expect(makeUpAirHeatW(10, 20, 30)).toBeLessThan(0);
  });

  it('grows in proportion to airflow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (flow) => {
        expect(makeUpAirHeatW(2 * flow, 20, 5)).toBeCloseTo(2 * makeUpAirHeatW(flow, 20, 5), 6);
      }),
    );
  });

  it.each([
    [-1, 20, 0],
    [1, Number.NaN, 0],
    [1, 20, -100],
  ])('refuses %d m3/min, %d C in, %d C out', (flow, indoor, outdoor) => {
    expect(() => makeUpAirHeatW(flow, indoor, outdoor)).toThrow(RangeError);
  });
});
