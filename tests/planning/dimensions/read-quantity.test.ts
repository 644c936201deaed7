import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../server/planning/dimensions/read-quantity.ts';

describe('readQuantity', () => {
  it.each([
    ['4', 4],
    ['4 pcs', 4],
    ['4pc.', 4],
    ['1 piece', 1],
    ['(12)', 12],
    ['( 12 pcs )', 12],
    ['3 off', 3],
    ['x4', 4],
    ['4x', 4],
    ['× 4', 4],
    ['4 no.', 4],
    ['4 each', 4],
    [' 007 ', 7],
    ['100000', 100_000],
  ])('reads %s as %d', (text, quantity) => {
    expect(readQuantity(text)).toEqual({ ok: true, quantity, normalised: String(quantity) });
  });

  it.each([
    ['2.5', 'quantity-not-whole'],
    ['2,5', 'quantity-not-whole'],
    ['.5', 'quantity-not-whole'],
    ['-3', 'quantity-not-whole'],
    ['0', 'quantity-not-whole'],
    ['1,000', 'quantity-unreadable'],
    ['1.000', 'quantity-unreadable'],
    ['abc', 'quantity-unreadable'],
    ['', 'quantity-unreadable'],
    ['  ', 'quantity-unreadable'],
    ['1e3', 'quantity-unreadable'],
    ['NaN', 'quantity-unreadable'],
    ['4 5', 'quantity-unreadable'],
    ['pcs', 'quantity-unreadable'],
    ['100001', 'quantity-too-large'],
  ])('refuses %s', (text, code) => {
    expect(readQuantity(text)).toMatchObject({ ok: false, code });
  });

  it('refuses quantities of absurd length', () => {
    expect(readQuantity('9'.repeat(100))).toMatchObject({ code: 'quantity-too-large' });
    expect(readQuantity('9'.repeat(10_000))).toMatchObject({ code: 'quantity-unreadable' });
  });

  it('never throws, and reads its own digits back', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.integer().map(String)), (text) => {
        const reading = readQuantity(text);
        if (reading.ok) expect(readQuantity(reading.normalised)).toEqual(reading);
      }),
      { numRuns: 3000 },
    );
  });
});
