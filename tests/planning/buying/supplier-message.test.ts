import { describe, expect, it } from 'vitest';
import { supplierMessage } from '../../../server/planning/buying/supplier-message.ts';
import { aPack, aProduct } from '../finish/sample-project.ts';
import { aNeed, aSupplier, purchases } from './purchase-project.ts';

const settings = { name: 'Bench', currency: 'USD' };
const stain = aProduct(
  'Walnut stain',
  'finish',
  {},
  {
    choices: { role: 'stain' },
    packs: [aPack('quart', 1, 1299, { supplierId: 'A' })],
  },
);
const glue = aProduct('Glue', 'glue', {}, { packs: [aPack('500 g', 500, null, { supplierId: 'A' })] });
const other = aProduct('Red stain', 'finish', {}, { packs: [aPack('red', 1, 900, { supplierId: 'A' })] });

function message(prices: boolean, supplierId = 'A', more: object = {}) {
  const products = [stain, glue, other];
  const buying = purchases({
    products,
    suppliers: [aSupplier('A'), aSupplier('B')],
    extras: [aNeed('1', 'Walnut stain', 1.5), aNeed('2', 'Glue', 700)],
    ...more,
  });
  return supplierMessage({ buying, supplierId, prices, settings, products });
}

describe('a message to a supplier', () => {
  it('lists whole packs with their sizes, asks for one batch of a colour, and names no price', () => {
    expect(message(false)).toEqual({
      supplierId: 'A',
      subject: 'Order for Bench',
      text: [
        'Order for Bench',
        '',
        '- Walnut stain: 2 x quart (all of one batch, please)',
        '- Glue: 2 x 500 g',
        '',
        'Please give the price of each line and the day of delivery.',
      ].join('\n'),
    });
  });

  it('names the prices that are known when they are asked for', () => {
    const { text } = message(true);
    expect(text).toContain('- Walnut stain: 2 x quart, $25.98 before tax (all of one batch, please)');
    expect(text).toContain('- Glue: 2 x 500 g\n');
    expect(text).toContain('Please confirm the prices and the day of delivery.');
  });

  it('names what is really bought where a substitute comes cheaper', () => {
    const substitutes = [{ id: '1', productId: 'Walnut stain', substituteId: 'Red stain' }];
    expect(message(false, 'A', { substitutes }).text).toContain('- Red stain: 2 x red');
  });

  it('says so where nothing is to be ordered', () => {
    expect(message(true, 'B').text).toBe('Order for Bench\n\nNothing is to be ordered.');
  });
});
