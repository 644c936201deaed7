import { describe, expect, it } from 'vitest';
import { earlierValues } from '../../../client/screens/catalogue/earlier-values.ts';
import type { Product } from '../../../server/planning/product.ts';

const product = {
  name: 'Ply',
  note: null,
  packs: [{ id: 'sheet' }],
  figures: { thickness: { typical: 18 } },
  choices: { grain: 'along' },
} as unknown as Product;

describe('the values before a change of a product', () => {
  it('are those of the same fields, whole lists and nothing said included', () => {
    expect(earlierValues(product, { name: 'Plywood', note: 'x', packs: [] })).toEqual({
      name: 'Ply',
      note: null,
      packs: [{ id: 'sheet' }],
    });
  });

  it('take away a figure or a choice that was not there', () => {
    expect(
      earlierValues(product, {
        figures: { thickness: null, density: { typical: 600 } },
        choices: { core: 'veneer' },
      }),
    ).toEqual({ figures: { thickness: { typical: 18 }, density: null }, choices: { core: null } });
  });
});
