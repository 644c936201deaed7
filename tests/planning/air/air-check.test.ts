import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airCheck } from '../../../server/planning/air/air-check.ts';
import type { AirCheckInput, AirCoat } from '../../../server/planning/air/air-check-input.ts';
import type { AirSubstance } from '../../../server/planning/air/air-substance.ts';

// Figures as the NIOSH Pocket Guide prints them; short-term and ceiling limits left out unless a test is about them.
const naphtha: AirSubstance = {
  id: 'petroleum-naphtha',
  name: 'petroleum naphtha',
  molarMassGPerMol: 99,
  lelPercent: 1.1,
  lelSource: 'NIOSH Pocket Guide',
  lelCautious: null,
  limitMgPerM3: 350,
  limitSource: 'NIOSH REL',
  shortTermMgPerM3: null,
  ceilingMgPerM3: null,
};
const toluene: AirSubstance = {
  ...naphtha,
  id: 'toluene',
  name: 'toluene',
  molarMassGPerMol: 92.1,
  limitMgPerM3: 375,
};
const spirits: AirSubstance = {
  ...naphtha,
  id: 'mineral-spirits',
  name: 'mineral spirits',
  molarMassGPerMol: 144,
  lelPercent: null,
  lelSource: null,
  lelCautious: { percent: 0.7, source: 'woodworking forum answer' },
};
const coat: AirCoat = {
  id: '1',
  name: 'topcoat 1',
  startMinute: 600,
  litres: 0.5,
  vocGPerL: 450,
  solvents: [{ substance: naphtha, shareOfVoc: 1 }],
  emission: { kind: 'all-at-once' },
};
const input: AirCheckInput = {
  volumeM3: 50,
  airflowM3PerMin: 20,
  mixingFactor: 1,
  indoorC: 20,
  outdoorC: 5,
  coats: [coat],
};
const shares = (first: number | null, second: number | null): AirCoat => ({
  ...coat,
  solvents: [
    { substance: naphtha, shareOfVoc: first },
    { substance: toluene, shareOfVoc: second },
  ],
});
const closed = { ...input, airflowM3PerMin: 0 };
const fields = (checked: ReturnType<typeof airCheck>) => checked.missing.map((gap) => gap.field);

describe('airCheck', () => {
  it('reckons a closed room from the mass that evaporates', () => {
    // 0.5 L x 450 g/L = 225 g in 50 m3: 4500 mg/m3. Over 350 mg/m3: 12.857. At 20 C the LEL of 1.1 % at 99 g/mol is
    // 0.011 x 1000 / 24.0553 x 99 = 45.271 g/m3: 4.5 / 45.271 = 0.0994.
    const checked = airCheck(closed);
    expect(checked.coats).toEqual([{ id: '1', vocGrams: 225 }]);
    expect(checked.health.peakIndex).toBeCloseTo(12.857, 3);
    expect(checked.health.peakMinute).toBe(null);
    expect(checked.fire.peakFraction).toBeCloseTo(0.0994, 4);
    expect(checked.verdict).toBe('over-health');
    expect(checked.health.neverAirsOut).toBe(true);
    expect(checked.health.airOutMin).toBe(null);
    expect(checked.airChangesPerHour).toBe(0);
  });

  it('names the worst of fire and health', () => {
    const litres = (amount: number) => ({ ...closed, coats: [{ ...coat, litres: amount }] });
    // 0.0994 of the LEL at 0.5 L: a tenth at 0.50302 L, a quarter at 1.25755 L; index 1 at 0.038889 L.
    const verdict = (amount: number) => airCheck(litres(amount)).verdict;
    expect(verdict(0.0388)).toBe('within-limits-entered');
    expect(verdict(0.039)).toBe('over-health');
    expect(verdict(0.5025)).toBe('over-health');
    expect(verdict(0.5035)).toBe('over-target');
    expect(verdict(1.257)).toBe('over-target');
    expect(verdict(1.258)).toBe('over-ceiling');
  });

  it('counts a limit that is just reached as broken', () => {
    // 0.5 L x 35 g/L = 17.5 g in 50 m3 is 350 mg/m3: index 1 exactly, approached for ever.
    const checked = airCheck({ ...closed, coats: [{ ...coat, vocGPerL: 35 }] });
    expect(checked.health.peakIndex).toBeCloseTo(1, 12);
    expect(airCheck({ ...closed, coats: [{ ...coat, vocGPerL: 35.001 }] }).verdict).toBe('over-health');
    expect(airCheck({ ...closed, coats: [{ ...coat, vocGPerL: 34.999 }] }).verdict).toBe(
      'within-limits-entered',
    );
  });

  it('says when the air is clear after the last coat', () => {
    // All at once: C = 4500 e^(-0.4 t) mg/m3 with 20 m3/min through 50 m3; down to 350: ln(12.857) / 0.4 = 6.385 min, and
    // the tenth of a minute the vapour takes to come off.
    const checked = airCheck(input);
    expect(checked.health.airOutMin).toBeGreaterThan(6.385);
    expect(checked.health.airOutMin).toBeLessThan(6.6);
    expect(checked.health.neverAirsOut).toBe(false);
  });

  it('finds the airflow under which neither side is over, and no fan is needed for a coat of water', () => {
    const drying = { ...coat, emission: { kind: 'touch-dry', touchDryMin: 240 } } as const;
    const checked = airCheck({ ...input, coats: [drying] });
    const needed = checked.neededAirflowM3PerMin ?? Number.NaN;
    expect(needed).toBeGreaterThan(0);
    expect(airCheck({ ...input, airflowM3PerMin: needed, coats: [drying] }).verdict).toBe(
      'within-limits-entered',
    );
    expect(airCheck({ ...input, airflowM3PerMin: needed * 0.99, coats: [drying] }).verdict).toBe(
      'over-health',
    );
    expect(checked.health.steadyStateAirflowM3PerMin).toBeGreaterThan(needed);
    expect(airCheck({ ...closed, coats: [{ ...coat, vocGPerL: 0, solvents: [] }] })).toMatchObject({
      verdict: 'within-limits-entered',
      neededAirflowM3PerMin: 0,
      missing: [],
    });
  });

  it('reckons the heat that goes out with the air', () => {
    // 1.20414 kg/m3 x 1006 x 20 / 60 x 15 = 6056.8 W.
    expect(airCheck(input).makeUpHeatW).toBeCloseTo(6056.8, 0);
    expect(airCheck({ ...input, outdoorC: null }).makeUpHeatW).toBe(null);
  });

  it('goes by averages when asked to', () => {
    // A short burst: high for minutes, little over eight hours.
    const burst = { ...input, coats: [{ ...coat, litres: 0.2 }] };
    const checked = airCheck({ ...burst, healthBasis: 'averages' });
    expect(checked.health.peakIndex).toBeGreaterThan(1);
    expect(checked.health.eightHourIndex).toBeLessThan(0.1);
    expect(checked.verdict).toBe('within-limits-entered');
    expect(airCheck(burst).verdict).toBe('over-health');
  });

  it('holds short-term and ceiling limits in both ways of judging', () => {
    const strict = (limits: Partial<AirSubstance>) => ({
      ...input,
      healthBasis: 'averages' as const,
      coats: [{ ...coat, solvents: [{ substance: { ...naphtha, ...limits }, shareOfVoc: 1 }] }],
    });
    expect(airCheck(strict({})).health.shortTermIndex).toBe(0);
    const shortTerm = airCheck(strict({ shortTermMgPerM3: 500 }));
    expect(shortTerm.health.shortTermIndex).toBeGreaterThan(1);
    expect(shortTerm.verdict).toBe('over-health');
    const ceiling = airCheck(strict({ ceilingMgPerM3: 3000 }));
    expect(ceiling.health.ceilingIndex).toBeGreaterThan(1);
    expect(ceiling.verdict).toBe('over-health');
  });
});

describe('airCheck with figures missing', () => {
  it('cannot tell, and lists every missing figure with a way out', () => {
    const checked = airCheck({
      ...input,
      volumeM3: null,
      airflowM3PerMin: null,
      coats: [
        { ...coat, litres: null, vocGPerL: null, solvents: [] },
        {
          ...coat,
          id: '2',
          solvents: [
            {
              substance: { ...spirits, molarMassGPerMol: null, limitMgPerM3: null, lelCautious: null },
              shareOfVoc: null,
            },
          ],
        },
      ],
    });
    expect(checked.verdict).toBe('cannot-tell');
    expect(fields(checked)).toEqual([
      'room-volume',
      'airflow',
      'litres',
      'voc',
      'solvents',
      'molar-mass',
      'lel',
      'limit',
    ]);
    expect(checked.health.peakIndex).toBe(null);
    expect(checked.fire.peakFraction).toBe(null);
    expect(checked.neededAirflowM3PerMin).toBe(null);
    for (const gap of checked.missing) {
      expect(gap.message).toMatch(/^[A-Z].*\.$/);
      expect(gap.wayOut).toMatch(/^[A-Z].*\.$/);
    }
  });

  it.each([
    ['room-volume', { volumeM3: null }],
    ['airflow', { airflowM3PerMin: null }],
    ['litres', { coats: [{ ...coat, litres: null }] }],
    ['voc', { coats: [{ ...coat, vocGPerL: null }] }],
    ['solvents', { coats: [{ ...coat, solvents: [] }] }],
    [
      'lel',
      { coats: [{ ...coat, solvents: [{ substance: { ...naphtha, lelPercent: null }, shareOfVoc: 1 }] }] },
    ],
    [
      'limit',
      { coats: [{ ...coat, solvents: [{ substance: { ...naphtha, limitMgPerM3: null }, shareOfVoc: 1 }] }] },
    ],
    [
      'molar-mass',
      {
        coats: [
          { ...coat, solvents: [{ substance: { ...naphtha, molarMassGPerMol: null }, shareOfVoc: 1 }] },
        ],
      },
    ],
  ] as const)('is never within limits while %s is missing', (field, change) => {
    // So much air that the known part is far below every limit.
    const aired = { ...input, airflowM3PerMin: 1e6, ...change };
    const checked = airCheck(aired);
    expect(fields(checked)).toEqual([field]);
    expect(checked.verdict).toBe('cannot-tell');
  });

  it('still says what the known part breaks', () => {
    const unknownLel = { ...naphtha, lelPercent: null };
    const checked = airCheck({
      ...closed,
      coats: [{ ...coat, solvents: [{ substance: unknownLel, shareOfVoc: 1 }] }],
    });
    expect(checked.verdict).toBe('over-health');
    expect(checked.fire.verdict).toBe('cannot-tell');
    expect(fields(checked)).toEqual(['lel']);
  });

  it('finds the needed airflow while the airflow itself is not known', () => {
    const checked = airCheck({ ...input, airflowM3PerMin: null });
    expect(checked.verdict).toBe('cannot-tell');
    expect(checked.neededAirflowM3PerMin).toBe(airCheck(input).neededAirflowM3PerMin);
  });

  it('asks once for a substance that is in several coats', () => {
    const solvents = [{ substance: spirits, shareOfVoc: 1 }];
    const coats = [
      { ...coat, solvents },
      { ...coat, id: '2', solvents },
    ];
    expect(fields(airCheck({ ...input, coats }))).toEqual(['lel']);
  });
});

describe('airCheck of mineral spirits', () => {
  const solvents = [{ substance: spirits, shareOfVoc: 1 }];
  const checked = airCheck({ ...input, airflowM3PerMin: 1e4, coats: [{ ...coat, solvents }] });

  it('leaves an unknown explosive limit unknown', () => {
    expect(checked.verdict).toBe('cannot-tell');
    expect(checked.fire).toMatchObject({
      verdict: 'cannot-tell',
      complete: false,
      neededAirflowM3PerMin: null,
    });
    expect(fields(checked)).toEqual(['lel']);
    expect(checked.health.verdict).toBe('within-limits-entered');
  });

  it('offers the lowest value found elsewhere as a separate figure, with its source', () => {
    expect(checked.fire.cautious?.assumed).toEqual([
      {
        substanceId: 'mineral-spirits',
        name: 'mineral spirits',
        lelPercent: 0.7,
        source: 'woodworking forum answer',
      },
    ]);
    // Closed room: 4500 mg/m3 of 0.007 x 1000 / 24.0553 x 144 = 41 903 mg/m3: 0.10739.
    const shut = airCheck({ ...closed, coats: [{ ...coat, solvents }] });
    expect(shut.fire.cautious?.peakFraction).toBeCloseTo(0.10739, 4);
    expect(shut.fire.peakFraction).toBe(null);
    expect(shut.fire.verdict).toBe('cannot-tell');
  });

  it('offers no stand-in where more than the limit is missing', () => {
    const coats = [
      { ...coat, solvents },
      { ...coat, id: '2', vocGPerL: null },
    ];
    expect(airCheck({ ...input, coats }).fire.cautious).toBe(null);
    expect(airCheck(input).fire.cautious).toBe(null);
  });
});

describe('airCheck with solvent shares missing', () => {
  it('takes the whole for the worst solvent, for each limit on its own, and says so', () => {
    // Health: naphtha has the stricter limit (350 against 375). Fire: LEL 1.1 % both; toluene with the smaller molar mass
    // reaches it with less: 0.011 x 1000 / 24.0553 x 92.1 = 42.115 g/m3, 4.5 / 42.115 = 0.10685.
    const checked = airCheck({ ...closed, coats: [shares(null, null)] });
    expect(checked.health.peakIndex).toBeCloseTo(4500 / 350, 9);
    expect(checked.fire.peakFraction).toBeCloseTo(0.10685, 4);
    expect(checked.missing).toEqual([]);
    expect(checked.notes.join(' ')).toContain(
      'The solvent shares of "topcoat 1" are not known: all of it is taken to be the worst of these for each limit: petroleum naphtha, toluene.',
    );
  });

  it('gives a known share its own limit and the rest the worst of the others', () => {
    // 0.4 x 4500 / 375 + 0.6 x 4500 / 350 = 4.8 + 7.714 = 12.514.
    const checked = airCheck({ ...closed, coats: [shares(null, 0.4)] });
    expect(checked.health.peakIndex).toBeCloseTo(12.514, 3);
    expect(checked.notes.join(' ')).toContain('60 % of the solvent of "topcoat 1" is not known');
  });

  it('fills up shares that do not reach the whole with the worst of them', () => {
    // 0.5 / 375 + 0.3 / 350 + 0.2 / 350, times 4500.
    const checked = airCheck({ ...closed, coats: [shares(0.3, 0.5)] });
    expect(checked.health.peakIndex).toBeCloseTo(4500 * (0.5 / 375 + 0.5 / 350), 9);
  });

  it('is never below any split that the known shares allow', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (known, split) => {
        const rest = 1 - known;
        const solvents = [naphtha, toluene, { ...toluene, id: 'x', limitMgPerM3: 200, lelPercent: 2 }];
        const coatOf = (one: number, two: number | null, three: number | null): AirCoat => ({
          ...coat,
          solvents: solvents.map((substance, index) => ({
            substance,
            shareOfVoc: [one, two, three][index] ?? null,
          })),
        });
        const worst = airCheck({ ...closed, coats: [coatOf(known, null, null)] });
        const real = airCheck({ ...closed, coats: [coatOf(known, rest * split, rest * (1 - split))] });
        expect(worst.health.peakIndex ?? 0).toBeGreaterThanOrEqual((real.health.peakIndex ?? 0) * (1 - 2e-4));
        expect(worst.fire.peakFraction ?? 0).toBeGreaterThanOrEqual(
          (real.fire.peakFraction ?? 0) * (1 - 2e-4),
        );
      }),
      { numRuns: 50 },
    );
  });

  it.each([
    [0.7, 0.4],
    [-0.1, 0.5],
    [1.1, null],
    [Number.NaN, 0.5],
  ])('asks again about shares of %d and %d', (first, second) => {
    const checked = airCheck({ ...input, airflowM3PerMin: 1e6, coats: [shares(first, second)] });
    expect(fields(checked)).toEqual(['solvent-shares']);
    expect(checked.verdict).toBe('cannot-tell');
  });

  it('leaves out a solvent whose share is nothing', () => {
    const coats = [{ ...coat, solvents: [...coat.solvents, { substance: spirits, shareOfVoc: 0 }] }];
    expect(airCheck({ ...input, coats }).missing).toEqual([]);
  });
});

describe('the words of an air check', () => {
  it('never call anything safe', () => {
    const results = [input, closed, { ...input, volumeM3: null }, { ...input, coats: [shares(null, 2)] }].map(
      airCheck,
    );
    for (const result of results) {
      const words = JSON.stringify(result);
      expect(words).not.toMatch(/\bsafe(ly)?\b|\bharmless\b|\bno danger\b/i);
    }
  });

  it('always carry the cautions', () => {
    const words = airCheck(input).cautions.join(' ');
    for (const caution of ['label', 'pilot lights', 'respirator', 'rags', 'isocyanates', 'Local codes'])
      expect(words).toContain(caution);
  });

  it('say how fast each coat was taken to dry', () => {
    const drying = { ...coat, emission: { kind: 'touch-dry', touchDryMin: 240 } } as const;
    expect(airCheck({ ...input, coats: [drying] }).notes.join(' ')).toContain('touch-dry time of 240 min');
    expect(airCheck(input).notes.join(' ')).toContain('in the air at once');
  });
});

describe('airCheck against nonsense', () => {
  it.each([
    { volumeM3: -1 },
    { volumeM3: Number.NaN },
    { airflowM3PerMin: -1 },
    { airflowM3PerMin: Number.NaN },
    { mixingFactor: 0 },
    { mixingFactor: 11 },
    { indoorC: Number.NaN },
    { coats: [{ ...coat, litres: -1 }] },
    { coats: [{ ...coat, vocGPerL: Number.NaN }] },
    { coats: [{ ...coat, startMinute: Number.NaN }] },
    { coats: [{ ...coat, emission: { kind: 'touch-dry', touchDryMin: 0 } as const }] },
  ])('refuses %o', (wrong) => {
    expect(() => airCheck({ ...input, ...wrong })).toThrow(RangeError);
  });
});

describe('relations of an air check', () => {
  const litres = fc.double({ min: 0.05, max: 5, noNaN: true });
  const airflow = fc.double({ min: 0, max: 60, noNaN: true });
  const touchDryMin = fc.double({ min: 10, max: 600, noNaN: true });
  const job = (amount: number, flow: number, dry: number): AirCheckInput => ({
    ...input,
    airflowM3PerMin: flow,
    coats: [0, 240, 300].map((startMinute, index) => ({
      ...coat,
      id: String(index),
      startMinute,
      litres: amount,
      emission: { kind: 'touch-dry', touchDryMin: dry },
    })),
  });

  it('more air never raises an index, more litres never lower one', () => {
    fc.assert(
      fc.property(litres, airflow, touchDryMin, (amount, flow, dry) => {
        const base = airCheck(job(amount, flow, dry));
        const aired = airCheck(job(amount, flow + 5, dry));
        const fuller = airCheck(job(amount * 1.5, flow, dry));
        for (const figure of ['peakIndex', 'eightHourIndex'] as const) {
          expect(aired.health[figure] ?? 0).toBeLessThanOrEqual((base.health[figure] ?? 0) * (1 + 1e-4));
          expect(fuller.health[figure] ?? 0).toBeGreaterThanOrEqual((base.health[figure] ?? 0) * (1 - 1e-4));
        }
        expect(aired.fire.peakFraction ?? 0).toBeLessThanOrEqual((base.fire.peakFraction ?? 0) * (1 + 1e-9));
        expect(fuller.neededAirflowM3PerMin ?? 0).toBeGreaterThanOrEqual(
          (base.neededAirflowM3PerMin ?? 0) * 0.9998,
        );
      }),
      { numRuns: 40 },
    );
  });

  it('the needed airflow is enough', () => {
    fc.assert(
      fc.property(litres, touchDryMin, (amount, dry) => {
        const needed = airCheck(job(amount, 0, dry)).neededAirflowM3PerMin ?? Number.NaN;
        expect(airCheck(job(amount, needed, dry)).verdict).toBe('within-limits-entered');
      }),
      { numRuns: 40 },
    );
  });
});
