import { describe, expect, it } from 'vitest';
import { readAmount } from '../../../client/format/read-amount.ts';

describe('a typed amount of a product', () => {
  it('is in the product’s unit when bare, in a metric project', () => {
    expect(readAmount('0.5', 'L', 'metric')).toEqual({ ok: true, value: 0.5 });
    expect(readAmount('25', 'm', 'metric')).toEqual({ ok: true, value: 25 });
    expect(readAmount('4', 'pcs', 'metric')).toEqual({ ok: true, value: 4 });
  });

  it('takes the units that cans and rolls are sold in', () => {
    expect(readAmount('500 mL', 'L', 'metric')).toEqual({ ok: true, value: 0.5 });
    // US gallon 3.785411784 L, quart a quarter of it, fluid ounce a 32nd of a quart. Exact.
    expect(readAmount('1 gal', 'L', 'us')).toEqual({ ok: true, value: 3.785411784 });
    expect(readAmount('1 qt', 'L', 'us')).toEqual({ ok: true, value: 0.946352946 });
    expect(readAmount('32 fl oz', 'L', 'us')).toEqual({ ok: true, value: 0.946352946 });
    expect(readAmount('32 fl. oz.', 'L', 'us')).toEqual({ ok: true, value: 0.946352946 });
    // 50 ft x 0.3048.
    expect(readAmount('50 ft', 'm', 'metric')).toEqual({ ok: true, value: 15.24 });
    expect(readAmount('1 kg', 'g', 'metric')).toEqual({ ok: true, value: 1000 });
  });

  it('takes bare lengths as feet and asks for the unit of bare volumes, in a US project', () => {
    expect(readAmount('50', 'm', 'us')).toEqual({ ok: true, value: 15.24 });
    expect(readAmount('1', 'L', 'us')).toMatchObject({ ok: false, message: expect.stringContaining('unit') });
  });

  it('refuses units of another quantity, and amounts below nothing', () => {
    expect(readAmount('1 ft', 'L', 'us')).toMatchObject({ ok: false });
    expect(readAmount('2 qt', 'm', 'us')).toMatchObject({ ok: false });
    expect(readAmount('some', 'L', 'metric')).toMatchObject({ ok: false });
    expect(readAmount('', 'L', 'metric')).toMatchObject({ ok: false });
    expect(readAmount('-1', 'L', 'metric')).toMatchObject({ ok: false });
  });
});
