import { describe, expect, it } from 'vitest';
import { figure } from '../../../server/planning/figure.ts';
import { plannedCostByCategory } from '../../../server/planning/ledger/planned-cost-by-category.ts';
import type { BuyLine } from '../../../server/planning/plan-output.ts';
import { COST_CATEGORIES, type CostCategory } from '../../../server/planning/project-input.ts';

const none = figure(null, 'minor', { rule: '', inputs: [] });

const aLine = (id: string, category: CostCategory, cost: number | null): BuyLine => ({
  id,
  productId: id,
  name: id,
  category,
  supplierId: null,
  supplierName: '',
  unit: 'pcs',
  need: none,
  onHand: none,
  toBuy: none,
  packs: [],
  boughtAmount: none,
  leftover: none,
  cost: figure(cost, 'minor', { rule: '', inputs: [] }),
  fewestPacks: [],
  fewestPacksCost: none,
  notes: [],
});

describe('the planned cost of each category', () => {
  const costs = plannedCostByCategory([
    aLine('sealer', 'finish', 5999),
    aLine('hinge', 'hardware', null),
    aLine('stain', 'finish', 1899),
    aLine('varnish', 'finish', null),
  ]);
  const of = (id: CostCategory) => costs.find((category) => category.id === id);

  it('lists every category in the order of the ledger', () => {
    expect(costs.map(({ id }) => id)).toEqual([...COST_CATEGORIES]);
  });

  it('adds up the lines whose cost is known, and counts the others', () => {
    expect(of('finish')?.planned.value).toBe(7898); // 5999 + 1899
    expect(of('finish')?.unpricedLines.value).toBe(1);
    expect(of('finish')?.planned.working.notes).toEqual(['1 of 3 lines is unknown and left out of the sum.']);
    expect(of('finish')?.planned.working.inputs[0]?.from).toBe('buy/lines/sealer/cost');
  });

  it('is unknown where no line is priced, and 0 where there is none', () => {
    expect(of('hardware')?.planned.value).toBeNull();
    expect(of('hardware')?.unpricedLines.value).toBe(1);
    expect(of('sheets')?.planned.value).toBe(0);
    expect(of('sheets')?.unpricedLines.value).toBe(0);
  });
});
