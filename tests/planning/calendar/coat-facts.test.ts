import { describe, expect, it } from 'vitest';
import { coatFacts } from '../../../server/planning/calendar/coat-facts.ts';
import type { Product, ProductFigure } from '../../../server/planning/product.ts';

const range = (low: number | null, typical: number | null, high: number | null): ProductFigure => ({
  low,
  typical,
  high,
  unit: 'min',
  basis: 'user',
  source: '',
  readOn: null,
});

function finish(figures: Product['figures'], changes: Partial<Product> = {}): Product {
  return {
    id: 'finish',
    kind: 'finish',
    name: 'finish',
    shortName: 'finish',
    unit: 'L',
    choices: { carrier: 'oil' },
    figures,
    recoat: [],
    recoatEvidence: null,
    packs: [],
    retired: false,
    origin: 'user',
    note: null,
    ...changes,
  };
}

describe('coatFacts', () => {
  it('takes the slow end of drying and the short end of working time', () => {
    const facts = coatFacts([finish({ touchDry: range(30, null, 60), workingTime: range(10, null, 20) })]);
    expect([facts.touchDryMin, facts.workingTimeMin, facts.handleDryMin]).toEqual([60, 10, null]);
  });

  it('takes the more careful figure of a blend, and nothing where a component is silent', () => {
    const first = finish({ handleDry: range(null, 100, null), cure: range(null, 900, null) });
    const recoat = [{ fromMin: 240, toMin: null, scuff: false }];
    const second = finish({ handleDry: range(null, 200, null) }, { choices: { carrier: 'water' }, recoat });
    const facts = coatFacts([first, second]);
    expect([facts.handleDryMin, facts.cureMin, facts.carrier, facts.recoat]).toEqual([
      200,
      null,
      null,
      recoat,
    ]);
  });

  it('throws a RangeError for no product', () => {
    expect(() => coatFacts([])).toThrow(RangeError);
  });
});
