import { describe, expect, it } from 'vitest';
import { type LineOffer, lineOffers } from '../../../../server/planning/buying/suppliers/line-offers.ts';
import { offeredCatalogue } from '../../../../server/planning/buying/suppliers/offered-catalogue.ts';
import { piecesToOrder } from '../../../../server/planning/buying/suppliers/pieces-to-order.ts';
import { supplierCharges } from '../../../../server/planning/buying/suppliers/supplier-charges.ts';
import { termsIn } from '../../../../server/planning/buying/suppliers/terms-in.ts';
import type { Pack, Product } from '../../../../server/planning/product.ts';
import { aPack, aProduct } from '../../finish/sample-project.ts';
import { aSupplier } from '../purchase-project.ts';

const sheet = (id: string, lengthMm: number, widthMm: number, price: number, supplierId: string): Pack => ({
  ...aPack(id, 1, price, { supplierId }),
  lengthMm,
  widthMm,
});
const offersOf = (
  products: readonly Product[],
  wanted: Parameters<typeof lineOffers>[0]['wanted'],
  retired = '',
) =>
  lineOffers({
    products,
    wanted,
    catalogue: {
      products: [...products],
      suppliers: ['A', 'B', 'C'].map((id) => aSupplier(id, { retired: id === retired })),
    },
    currency: 'USD',
  });
const short = (offers: readonly LineOffer[]): unknown[] =>
  offers.map(({ supplierId, product, packs, costMinor }) => [
    supplierId,
    product.id,
    packs.map(({ pack, count }) => `${count} x ${pack.id}`).join(' + '),
    costMinor,
  ]);

describe('the offers for an amount', () => {
  const stain = aProduct(
    'stain',
    'finish',
    {},
    {
      packs: [
        aPack('a-quart', 1, 1000, { supplierId: 'A' }),
        aPack('a-gallon', 4, 3000, { supplierId: 'A' }),
        aPack('b-half', 0.5, 700, { supplierId: 'B' }),
        aPack('c-quart', 1, null, { supplierId: 'C' }),
      ],
    },
  );
  it('are the cheapest packs of each supplier, those without a price last', () => {
    // 3.5 L: at A four quarts 40.00 or a gallon 30.00; at B seven halves 49.00; at C four, price unknown
    expect(short(offersOf([stain], { kind: 'amount', amount: 3.5 }))).toEqual([
      ['A', 'stain', '1 x a-gallon', 3000],
      ['B', 'stain', '7 x b-half', 4900],
      ['C', 'stain', '4 x c-quart', null],
    ]);
    expect(short(offersOf([stain], { kind: 'amount', amount: 3.5 }, 'A'))[0]).toEqual([
      'B',
      'stain',
      '7 x b-half',
      4900,
    ]);
  });

  it('take the cheaper of the product and what may stand in for it, of equal ones the product', () => {
    const other = (price: number) =>
      aProduct('other', 'finish', {}, { packs: [aPack('o', 4, price, { supplierId: 'A' })] });
    const at = (price: number) => short(offersOf([stain, other(price)], { kind: 'amount', amount: 3.5 }))[0];
    expect(at(2999)).toEqual(['A', 'other', '1 x o', 2999]);
    expect(at(3000)).toEqual(['A', 'stain', '1 x a-gallon', 3000]);
    // Something counted in another unit is no substitute.
    const piece = aProduct('piece', 'hardware', {}, { packs: [aPack('p', 4, 1, { supplierId: 'A' })] });
    expect(short(offersOf([stain, piece], { kind: 'amount', amount: 3.5 }))[0]).toEqual([
      'A',
      'stain',
      '1 x a-gallon',
      3000,
    ]);
  });
});

describe('the offers for whole sheets', () => {
  const full = sheet('a-full', 2440, 1220, 5000, 'A');
  const ply = aProduct(
    'ply',
    'sheet',
    {},
    {
      packs: [
        full,
        sheet('b-large', 3050, 1525, 9000, 'B'),
        sheet('b-full', 2440, 1220, 5100, 'B'),
        sheet('c-half', 1220, 1220, 2600, 'C'),
      ],
    },
  );
  it('are of equal or larger sheets, the cheapest that will do', () => {
    expect(short(offersOf([ply], { kind: 'pieces', packs: [{ pack: full, count: 3 }] }))).toEqual([
      ['A', 'ply', '3 x a-full', 15_000],
      ['B', 'ply', '3 x b-full', 15_300],
    ]);
    const large = ply.packs[1] as Pack;
    expect(short(offersOf([ply], { kind: 'pieces', packs: [{ pack: large, count: 1 }] }))).toEqual([
      ['B', 'ply', '1 x b-large', 9000],
    ]);
  });

  it('are one offer without a supplier where no one has all sizes', () => {
    const packs = [
      { pack: ply.packs[1] as Pack, count: 1 },
      { pack: aPack('x', 1, 1, { lengthMm: 4000, widthMm: 100 }), count: 1 },
    ];
    const long = aProduct(
      'long',
      'sheet',
      {},
      {
        packs: [ply.packs[1] as Pack, sheet('long', 4000, 100, 700, 'A')],
      },
    );
    expect(short(offersOf([long], { kind: 'pieces', packs }))).toEqual([
      ['', 'long', '1 x b-large + 1 x long', 9700],
    ]);
  });
});

describe('the pieces still to order', () => {
  const small = sheet('small', 1220, 1220, 1, 'A');
  const large = sheet('large', 2440, 1220, 1, 'A');
  const left = (ordered: Parameters<typeof piecesToOrder>[1]): unknown[] =>
    piecesToOrder(
      [
        { pack: large, count: 2 },
        { pack: small, count: 1 },
      ],
      ordered,
    ).map(({ pack, count }) => [pack.id, count]);
  it('are the planned ones less the same ones ordered, then less larger ones', () => {
    expect(left([])).toEqual([
      ['large', 2],
      ['small', 1],
    ]);
    expect(left([{ pack: large, amount: 1, count: 2 }])).toEqual([['small', 1]]);
    // Three large ones: two for the large, one for the small.
    expect(left([{ pack: large, amount: 1, count: 3 }])).toEqual([]);
    // Small ones never stand for large ones.
    expect(left([{ pack: small, amount: 1, count: 5 }])).toEqual([['large', 2]]);
    // A pack the catalogue has forgotten stands for one of its amount.
    expect(left([{ pack: null, amount: 1, count: 1 }])).toEqual([
      ['large', 1],
      ['small', 1],
    ]);
  });
});

describe('the terms of a supplier', () => {
  it('hold at their very thresholds, and charge nothing that is not in the project’s currency', () => {
    const supplier = aSupplier('A', {
      deliveryMinor: 900,
      freeDeliveryFromMinor: 5000,
      minimumOrderMinor: 2000,
      surchargeMinor: 300,
    });
    const charges = (goods: number, currency = 'USD') =>
      Object.values(supplierCharges(termsIn(supplier, currency), goods));
    expect([charges(1999), charges(2000), charges(4999), charges(5000)]).toEqual([
      [900, 300],
      [900, 0],
      [900, 0],
      [0, 0],
    ]);
    expect(charges(1, 'EUR')).toEqual([0, 0]);
    expect(termsIn(supplier, 'EUR').deliveryKnown).toBe(false);
    // Nothing is nothing in every currency; not known is not nothing; absurd is not known.
    expect(termsIn(aSupplier('B', { deliveryMinor: 0, currency: '' }), 'EUR').deliveryKnown).toBe(true);
    expect(termsIn(aSupplier('B', { deliveryMinor: null }), 'USD').deliveryKnown).toBe(false);
    expect(termsIn(aSupplier('B', { deliveryMinor: 2_000_000_000 }), 'USD').deliveryKnown).toBe(false);
  });
});

describe('what can be bought today', () => {
  it('is without the packs of retired suppliers, but for products that only those have', () => {
    const both = aProduct(
      'both',
      'finish',
      {},
      {
        packs: [aPack('a', 1, 1, { supplierId: 'A' }), aPack('n', 1, 1)],
      },
    );
    const only = aProduct('only', 'finish', {}, { packs: [aPack('a', 1, 1, { supplierId: 'A' })] });
    const catalogue = { products: [both, only], suppliers: [aSupplier('A')] };
    expect(offeredCatalogue(catalogue)).toBe(catalogue);
    const after = offeredCatalogue({ ...catalogue, suppliers: [aSupplier('A', { retired: true })] });
    expect(after.products.map(({ packs }) => packs.map(({ id }) => id))).toEqual([['n'], ['a']]);
  });
});
