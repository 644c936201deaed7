import { describe, expect, it } from 'vitest';
import { type Figure, type FigureUnit, figure } from '../../../server/planning/figure.ts';
import { planTotals } from '../../../server/planning/ledger/plan-totals.ts';
import type { CoatPlan, MaterialPlan, PartPlan, RecipePlan } from '../../../server/planning/plan-output.ts';

const known = (value: number | null, unit: FigureUnit): Figure =>
  figure(value, unit, { rule: 'given', inputs: [] });
const part = (pieces: number | null, bandedM: number | null): PartPlan =>
  ({
    quantity: known(pieces, 'pcs'),
    totalBandedM: known(bandedM, 'm'),
    totalFinishM2: known(1, 'm2'),
  }) as PartPlan;
const recipe = (...coats: [CoatPlan['kind'], number | null][]): RecipePlan =>
  ({ coats: coats.map(([kind, litres]) => ({ kind, litres: known(litres, 'L') })) }) as unknown as RecipePlan;
const sheets = (stocks: number | null): MaterialPlan =>
  ({ kind: 'sheet', stocks: known(stocks, 'pcs') }) as MaterialPlan;

describe('the totals of a plan', () => {
  it('add what is known and count what is not', () => {
    const totals = planTotals({
      parts: [part(4, 2.5), part(null, 1), part(3, null)],
      banding: [],
      materials: [sheets(2), sheets(3)],
      recipes: [],
    });
    expect(totals.parts.value).toBe(3);
    expect(totals.pieces.value).toBe(7);
    expect(totals.pieces.working.notes).toEqual(['1 of 3 part rows are unknown and left out of the sum.']);
    expect(totals.bandedM.value).toBe(3.5);
    expect(totals.sheets.value).toBe(5);
  });

  it('leave dry work out of the litres', () => {
    expect(
      planTotals({
        parts: [],
        banding: [],
        materials: [],
        recipes: [recipe(['sand', null], ['seal', 0.4], ['topcoat', 0.6])],
      }).litres.value,
    ).toBe(1);
  });

  it('are unknown, not zero, when every summand is unknown', () => {
    expect(
      planTotals({
        parts: [],
        banding: [],
        materials: [],
        recipes: [recipe(['stain', null], ['topcoat', null])],
      }).litres.value,
    ).toBeNull();
    expect(
      planTotals({ parts: [part(null, null)], banding: [], materials: [sheets(null)], recipes: [] }).sheets
        .value,
    ).toBeNull();
  });

  it('are zero for an empty project', () => {
    const totals = planTotals({ parts: [], banding: [], materials: [], recipes: [] });
    expect([
      totals.pieces.value,
      totals.bandedM.value,
      totals.finishM2.value,
      totals.litres.value,
      totals.sheets.value,
    ]).toEqual([0, 0, 0, 0, 0]);
  });
});
