import { describe, expect, it } from 'vitest';
import type { BuyingLine, SupplierBasket } from '../../../server/planning/buying/buying-plan.ts';
import { supplierMessage } from '../../../server/planning/buying/supplier-message.ts';
import { type Figure, type FigureUnit, figure } from '../../../server/planning/figure.ts';

const known = (value: number | null, unit: FigureUnit = 'minor'): Figure =>
  figure(value, unit, { rule: 'given', inputs: [] });

function aLine(name: string, more: Partial<BuyingLine> = {}): BuyingLine {
  const id = name.toLowerCase().replaceAll(' ', '-');
  return {
    id,
    productId: id,
    name,
    category: 'hardware',
    unit: 'pcs',
    need: known(1, 'pcs'),
    onHand: known(0, 'pcs'),
    ordered: known(0, 'pcs'),
    received: known(0, 'pcs'),
    toOrder: known(1, 'pcs'),
    packs: [
      {
        packId: 'p',
        productId: id,
        label: 'box of 50',
        amount: 50,
        count: 2,
        priceMinor: 450,
        lineMinor: 900,
      },
    ],
    cost: known(900),
    tax: known(54),
    supplierId: 'counter',
    supplierName: 'Hardware counter',
    substituteId: null,
    state: 'to-order',
    neededBy: null,
    orderBy: null,
    orderByWorking: [],
    urgency: 'none',
    notes: [],
    ...more,
  };
}

const basket = (goods: number | null): SupplierBasket =>
  ({
    id: 'counter',
    name: 'Hardware counter',
    lineIds: [],
    goods: known(goods),
  }) as unknown as SupplierBasket;

function messageOf(
  lines: readonly BuyingLine[],
  more: { prices?: boolean; supplierId?: string; goods?: number } = {},
) {
  return supplierMessage({
    buying: { lines, baskets: [basket(more.goods ?? 900)] },
    supplierId: more.supplierId ?? 'counter',
    prices: more.prices ?? false,
    settings: { name: 'Window seat', currency: 'USD' },
    products: [{ id: 'other-screw', name: 'Other screw' }],
  });
}

describe('the message to a supplier', () => {
  it('names whole packs with their sizes and asks for prices, naming none itself', () => {
    const { subject, text, supplierId } = messageOf([
      aLine('Wood screw'),
      aLine('Brass hinge', {
        packs: [
          {
            packId: 'p',
            productId: 'h',
            label: 'pair',
            amount: 2,
            count: 4,
            priceMinor: 1799,
            lineMinor: 7196,
          },
        ],
      }),
    ]);
    expect([subject, supplierId]).toEqual(['Order for Window seat', 'counter']);
    expect(text.split('\n')).toEqual([
      'Order for Window seat',
      '',
      '- Wood screw: 2 x box of 50',
      '- Brass hinge: 4 x pair',
      '',
      'Please give the price of each line and the day of delivery.',
    ]);
    expect(text).not.toMatch(/\$|4[.]50|17[.]99|9[.]00/);
  });

  it('names prices, their sum, and asks to have them confirmed, where that is wanted', () => {
    const { text } = messageOf([aLine('Wood screw'), aLine('Brass hinge', { cost: known(null) })], {
      prices: true,
      goods: 900,
    });
    expect(text.split('\n')).toEqual([
      'Order for Window seat',
      '',
      '- Wood screw: 2 x box of 50, $9.00 before tax',
      '- Brass hinge: 2 x box of 50',
      '',
      'Goods: $9.00 before tax and delivery.',
      '',
      'Please confirm the prices and the day of delivery.',
    ]);
  });

  it('holds only what is still to be ordered from this supplier', () => {
    const { text } = messageOf([
      aLine('Wood screw'),
      aLine('Shelf pin', { toOrder: known(0, 'pcs') }),
      aLine('Oak strip', { supplierId: 'yard' }),
      aLine('Knob', { supplierId: null }),
    ]);
    expect(text).toContain('Wood screw');
    expect(text).not.toMatch(/Shelf pin|Oak strip|Knob/);
    expect(messageOf([aLine('Knob', { supplierId: null })], { supplierId: '' }).text).toContain('- Knob');
  });

  it('says so when nothing is to be ordered there, and asks for nothing', () => {
    const { text } = messageOf([aLine('Shelf pin', { toOrder: known(0, 'pcs') })]);
    expect(text.split('\n')).toEqual(['Order for Window seat', '', 'Nothing is to be ordered.']);
  });

  it('names the earliest day on which something is needed', () => {
    const { text } = messageOf([
      aLine('Wood screw', { neededBy: '2027-03-12' }),
      aLine('Shelf pin', { neededBy: '2027-03-09' }),
      aLine('Knob'),
    ]);
    // 1 March 2027 is a Monday, so the 9th is a Tuesday.
    expect(text).toContain('\nNeeded by Tuesday 2027-03-09.\n');
    expect(text).not.toContain('2027-03-12');
  });

  it('names the product that is really bought in place of another, and asks for one batch of a colour', () => {
    const { text } = messageOf([
      aLine('Wood screw', { substituteId: 'other-screw' }),
      aLine('Satin', { category: 'finish', notes: ['More than one can: ask for one batch.'] }),
    ]);
    expect(text).toContain('- Other screw: 2 x box of 50');
    expect(text).not.toContain('Wood screw');
    expect(text).toContain('- Satin: 2 x box of 50 (all of one batch, please)');
  });

  it('gives the amount itself where no pack is known', () => {
    expect(messageOf([aLine('Knob', { packs: [], toOrder: known(7, 'pcs') })]).text).toContain(
      '- Knob: 7 pcs',
    );
    expect(messageOf([aLine('Knob', { packs: [], toOrder: known(null, 'pcs') })]).text).toContain(
      '- Knob: amount to follow',
    );
  });
});
