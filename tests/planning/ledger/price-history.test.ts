import { describe, expect, it } from 'vitest';
import { aPack, aProduct } from '../finish/sample-project.ts';
import { anOrder, anOrderLine, ledgerOf } from './ledger-project.ts';

const varnish = aProduct(
  'varnish',
  'finish',
  {},
  {
    packs: [
      aPack('litre', 1, 2500, { supplierId: 'shop', readOn: '2027-01-10' }),
      aPack('old', 1, 2200, { supplierId: 'shop' }),
      aPack('pounds', 1, 1900, { currency: 'GBP' }),
      aPack('unpriced', 5, null),
    ],
  },
);

describe('the prices of a product', () => {
  it('are those of the catalogue, agreed and charged, by date, for one pack', () => {
    const { prices } = ledgerOf({
      products: [varnish, aProduct('idle', 'glue', {}, { packs: [aPack('pot', 1, 100)] })],
      orders: [
        anOrder('1', { date: '2027-03-02', supplierId: 'yard' }),
        anOrder('2', { date: '2027-02-01' }),
      ],
      orderLines: [
        anOrderLine('1', '1', 'finish', 2, 2450, {
          productId: 'varnish',
          packId: 'litre',
          invoicedPriceMinor: 2600,
        }),
        anOrderLine('2', '2', 'finish', 2, null, { productId: 'varnish', packId: 'litre' }),
      ],
    });
    expect(prices.map(({ id }) => id)).toEqual(['varnish']);
    expect(
      prices[0]?.points.map(({ kind, date, supplierId, priceMinor }) => [kind, date, supplierId, priceMinor]),
    ).toEqual([
      ['catalogue', null, 'shop', 2200],
      ['catalogue', '2027-01-10', 'shop', 2500],
      ['agreed', '2027-03-02', 'yard', 2450],
      ['charged', '2027-03-02', 'yard', 2600],
    ]);
  });
});
