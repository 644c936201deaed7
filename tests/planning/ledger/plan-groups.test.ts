import { describe, expect, it } from 'vitest';
import { type Figure, type FigureUnit, figure } from '../../../server/planning/figure.ts';
import { planGroups } from '../../../server/planning/ledger/plan-groups.ts';
import { planTotals } from '../../../server/planning/ledger/plan-totals.ts';
import type { PartPlan } from '../../../server/planning/plan-output.ts';
import type { PartInput } from '../../../server/planning/project-input.ts';

const known = (value: number | null, unit: FigureUnit): Figure =>
  figure(value, unit, { rule: 'given', inputs: [] });

type Row = readonly [name: string, section: string, material: string, pieces: number | null, bandedM: number];

const partsOf = (rows: readonly Row[]): PartInput[] =>
  rows.map(([name, section, materialId], index) => ({
    ...({} as PartInput),
    id: String(index + 1),
    name,
    section,
    materialId,
  }));
const plansOf = (rows: readonly Row[]): PartPlan[] =>
  rows.map(
    ([, , , pieces, bandedM], index) =>
      ({
        id: String(index + 1),
        quantity: known(pieces, 'pcs'),
        totalBandedM: known(bandedM, 'm'),
        totalFinishM2: known(0.5, 'm2'),
      }) as PartPlan,
  );
const groupsOf = (rows: readonly Row[]) => planGroups(partsOf(rows), plansOf(rows));

const ROWS: readonly Row[] = [
  ['Side', 'Carcass', 'ply-18', 2, 3.6],
  ['Seat', 'Stool', 'ply-18', 1, 1.2],
  ['Shelf', 'Carcass', 'ply-18', 5, 4.5],
  ['Back', '', 'ply-6', null, 0],
];

describe('the groups of a plan', () => {
  it('sum the rows of each section and material, in the order in which the list names them', () => {
    const { sections, materials } = groupsOf(ROWS);
    // Carcass: 2 + 5 pieces, 3.6 + 4.5 m, 0.5 + 0.5 m2; the part without a section is a group of its own.
    expect(
      sections.map(({ id, rows, pieces, bandedM, finishM2 }) => [
        id,
        rows,
        pieces.value,
        bandedM.value,
        finishM2.value,
      ]),
    ).toEqual([
      ['Carcass', 2, 7, 8.1, 1],
      ['Stool', 1, 1, 1.2, 0.5],
      ['', 1, null, 0, 0.5],
    ]);
    // ply-18: 2 + 1 + 5 pieces.
    expect(materials.map(({ id, rows, pieces }) => [id, rows, pieces.value])).toEqual([
      ['ply-18', 3, 8],
      ['ply-6', 1, null],
    ]);
  });

  it('say which rows went in, each with the path to its own working', () => {
    const carcass = groupsOf(ROWS).sections[0];
    expect(carcass?.bandedM.working.inputs).toEqual([
      { name: 'Side', value: 3.6, unit: 'm', from: 'parts/1/totalBandedM' },
      { name: 'Shelf', value: 4.5, unit: 'm', from: 'parts/3/totalBandedM' },
    ]);
  });

  it('say what is left out when a row is unknown', () => {
    const rows: Row[] = [
      ['Side', 'A', '', 2, 1],
      ['', 'A', '', null, 1],
    ];
    const pieces = groupsOf(rows).sections[0]?.pieces;
    expect(pieces?.value).toBe(2);
    expect(pieces?.working.notes).toEqual(['1 of 2 part rows are unknown and left out of the sum.']);
    expect(pieces?.working.inputs[1]?.name).toBe('part without a name');
  });

  it('spell out forty rows and count a longer list', () => {
    const many = (count: number): Row[] =>
      Array.from({ length: count }, (_, index): Row => [`Slat ${index}`, 'Bed', '', 1, 0.25]);
    expect(groupsOf(many(40)).sections[0]?.pieces.working.inputs).toHaveLength(40);
    const long = groupsOf(many(41)).sections[0];
    expect(long?.pieces.working.inputs).toEqual([{ name: 'part rows', value: 41, unit: 'pcs' }]);
    // 41 x 0.25 m.
    expect(long?.bandedM.value).toBe(10.25);
  });

  it('are none for an empty list, and refuse plans of other rows', () => {
    expect(groupsOf([])).toEqual({ sections: [], materials: [] });
    expect(() => planGroups(partsOf(ROWS), [])).toThrow(RangeError);
  });

  it('add up to the totals', () => {
    const totals = planTotals({ parts: plansOf(ROWS), banding: [], materials: [], recipes: [] });
    const { sections, materials } = groupsOf(ROWS);
    for (const groups of [sections, materials]) {
      expect(groups.reduce((sum, { rows }) => sum + rows, 0)).toBe(totals.parts.value);
      expect(groups.reduce((sum, { pieces }) => sum + (pieces.value ?? 0), 0)).toBe(totals.pieces.value);
      expect(groups.reduce((sum, { bandedM }) => sum + (bandedM.value ?? 0), 0)).toBeCloseTo(9.3, 9);
    }
  });
});
