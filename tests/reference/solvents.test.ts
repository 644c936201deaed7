import { describe, expect, it } from 'vitest';
import { parseSolvents, readSolvents } from '../../db/catalogue/read-solvents.ts';
import { airSubstance } from '../../server/planning/air/air-substance.ts';
import { ppmToMgPerM3 } from '../../server/planning/air/ppm-to-mg-per-m3.ts';
import type { ExposureLimit, Solvent, SolventFigure } from '../../server/planning/air/solvent.ts';

const solvents = readSolvents();
const solvent = (id: string): Solvent => {
  const found = solvents.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no solvent ${id}`);
  return found;
};
const limitOf = (id: string, body: string, kind: ExposureLimit['kind']) =>
  solvent(id).limits.find((limit) => limit.body === body && limit.kind === kind);

describe('the shipped solvents', () => {
  it('hold the common ones, each once', () => {
    const ids = solvents.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of [
      'toluene',
      'ethanol',
      'isopropanol',
      'acetone',
      'xylene',
      'n-butyl-acetate',
      '2-butoxyethanol',
      'mineral-spirits',
      'petroleum-naphtha',
      'turpentine',
    ])
      expect(ids).toContain(id);
  });

  it('name a source and the day it was read for every published figure', () => {
    const figures = solvents.flatMap((one) => [
      one.molarMassGPerMol,
      one.densityGPerL,
      one.lelPercent,
      one.uelPercent,
      one.flashPointC,
      one.idlhPpm,
      one.idlhMgPerM3,
      ...one.lelElsewhere,
      ...one.limits,
    ]);
    const published = figures.filter((figure) => figure?.basis === 'published');
    expect(published.length).toBeGreaterThan(130);
    for (const figure of published) {
      expect(figure?.source).not.toBe('');
      expect(figure?.readOn).toBe('2026-11-25');
    }
    for (const figure of figures.filter((one) => one?.basis === 'memory')) expect(figure?.readOn).toBe(null);
  });

  it('print limits in ppm and mg/m3 that agree by the molar mass within rounding', () => {
    // Bodies round to two or three digits, and OSHA calls its mg/m3 approximate: 4 %. The petroleum families have no one
    // molar mass: ACGIH's 100 ppm = 525 mg/m3 of mineral spirits means 128 g/mol, NIOSH assumes 144.
    for (const one of solvents.filter(({ id }) => !id.includes('spirits') && !id.includes('naphtha')))
      for (const { ppm, mgPerM3 } of one.limits)
        if (ppm !== null && mgPerM3 !== null && one.molarMassGPerMol?.value)
          expect(
            Math.abs(ppmToMgPerM3(ppm, one.molarMassGPerMol.value) / mgPerM3 - 1),
            `${one.id} ${ppm} ppm`,
          ).toBeLessThan(0.04);
  });

  it('put the IDLH at a tenth of the explosive limit where its note says so', () => {
    const tenths = solvents.filter(({ idlhPpm }) => idlhPpm?.note?.includes('tenth'));
    expect(tenths.length).toBeGreaterThan(5);
    for (const { id, idlhPpm, lelPercent } of tenths)
      expect(idlhPpm?.value, id).toBeCloseTo((lelPercent?.value ?? 0) * 1000, 6);
  });
});

describe('figures of the NIOSH Pocket Guide and OSHA pages, one by one', () => {
  const value = (figure: SolventFigure | null) => figure?.value ?? null;

  it.each([
    // id, molar mass, g/L, LEL %, UEL %, IDLH ppm
    ['toluene', 92.1, 870, 1.1, 7.1, 500],
    ['ethanol', 46.1, 790, 3.3, 19, 3300],
    ['isopropanol', 60.1, 790, 2.0, 12.7, 2000],
    ['n-butanol', 74.1, 810, 1.4, 11.2, 1400],
    ['turpentine', 136, 860, 0.8, null, 800],
    ['petroleum-naphtha', 99, 645, 1.1, 5.9, 1100],
  ])('%s', (id, molarMass, density, lel, uel, idlh) => {
    const one = solvent(id);
    expect([
      value(one.molarMassGPerMol),
      value(one.densityGPerL),
      value(one.lelPercent),
      value(one.uelPercent),
      value(one.idlhPpm),
    ]).toEqual([molarMass, density, lel, uel, idlh]);
  });

  it.each([
    ['toluene', 'NIOSH REL', 'time-weighted', 100, 375],
    ['toluene', 'NIOSH REL', 'short-term', 150, 560],
    ['toluene', 'OSHA PEL', 'time-weighted', 200, null],
    ['toluene', 'OSHA PEL', 'ceiling', 300, null],
    ['ethanol', 'NIOSH REL', 'time-weighted', 1000, 1900],
    ['isopropanol', 'NIOSH REL', 'short-term', 500, 1225],
    ['acetone', 'NIOSH REL', 'time-weighted', 250, 590],
    ['acetone', 'OSHA PEL', 'time-weighted', 1000, 2400],
    ['xylene', 'NIOSH REL', 'time-weighted', 100, 435],
    ['n-butyl-acetate', 'NIOSH REL', 'short-term', 200, 950],
    ['2-butoxyethanol', 'NIOSH REL', 'time-weighted', 5, 24],
    ['2-butoxyethanol', 'OSHA PEL', 'time-weighted', 50, 240],
    ['mineral-spirits', 'NIOSH REL', 'time-weighted', null, 350],
    ['mineral-spirits', 'NIOSH REL', 'ceiling', null, 1800],
    ['mineral-spirits', 'OSHA PEL', 'time-weighted', 500, 2900],
    ['n-butanol', 'NIOSH REL', 'ceiling', 50, 150],
  ] as const)('%s, %s %s', (id, body, kind, ppm, mgPerM3) => {
    expect(limitOf(id, body, kind)).toMatchObject({ ppm, mgPerM3 });
  });
});

describe('mineral spirits', () => {
  it('have no explosive limit of their own: NIOSH prints "Unknown"', () => {
    const spirits = solvent('mineral-spirits');
    expect(spirits.lelPercent).toMatchObject({ value: null, basis: 'published' });
    expect(airSubstance(spirits).lelPercent).toBe(null);
  });

  it('carry the cautious 0.7 percent of a woodworking forum beside it', () => {
    expect(airSubstance(solvent('mineral-spirits')).lelCautious).toEqual({
      percent: 0.7,
      source: 'woodworking forum answer on explosion hazard when varnishing indoors',
    });
  });

  it('are held to 350 mg/m3 for a shift and 1800 over 15 minutes', () => {
    expect(airSubstance(solvent('mineral-spirits'))).toMatchObject({
      limitMgPerM3: 350,
      shortTermMgPerM3: 1800,
      ceilingMgPerM3: null,
    });
  });
});

describe('the reader of solvents', () => {
  const good = JSON.parse(JSON.stringify(solvent('toluene'))) as Record<string, unknown>;
  const parse = (change: Record<string, unknown>) => () =>
    parseSolvents(JSON.stringify([{ ...good, ...change }]));
  const figure = { basis: 'published', source: 'a handbook', readOn: '2026-11-25' };

  it('takes what the file ships', () => {
    expect(parse({})()).toEqual([solvent('toluene')]);
  });

  it.each([
    ['an unknown key', { colour: 'clear' }],
    ['a figure of nothing', { lelPercent: { value: 0, ...figure } }],
    ['a percentage above the whole', { lelPercent: { value: 101, ...figure } }],
    ['a figure as text', { lelPercent: { value: '1.1', ...figure } }],
    ['a published figure without a source', { lelPercent: { value: 1.1, ...figure, source: '' } }],
    ['a date that is none', { lelPercent: { value: 1.1, ...figure, readOn: '2026-13-01' } }],
    ['explosive limits the wrong way round', { lelPercent: { value: 9, ...figure } }],
    ['a CAS number with a wrong check digit', { casNumber: '108-88-4' }],
    [
      'a limit in no unit',
      {
        limits: [{ body: 'x', kind: 'ceiling', averagedOverMin: null, ppm: null, mgPerM3: null, ...figure }],
      },
    ],
    [
      'an average over no time',
      {
        limits: [{ body: 'x', kind: 'short-term', averagedOverMin: null, ppm: 5, mgPerM3: null, ...figure }],
      },
    ],
    ['a missing key', { note: undefined }],
  ])('refuses %s', (_what, change) => {
    expect(parse(change)).toThrow(/The solvents are wrong/);
  });

  it('refuses an id used twice', () => {
    expect(() => parseSolvents(JSON.stringify([good, good]))).toThrow(/must not use an id twice/);
  });
});
