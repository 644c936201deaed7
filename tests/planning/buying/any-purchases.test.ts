import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { taxOnLine } from '../../../server/planning/buying/tax-on-line.ts';
import type { Figure } from '../../../server/planning/figure.ts';
import type { ProblemCode } from '../../../server/planning/problem.ts';
import { aPack, aProduct } from '../finish/sample-project.ts';
import { aNeed, aSupplier, COAT_1, COAT_2, purchases, TABLE, tableCalendar } from './purchase-project.ts';

/** Whatever a user can type about orders, stock and suppliers, buying is planned without an exception, and it adds up. */

const productId = fc.constantFrom('', 'varnish', 'other', 'ply', 'screw', 'nowhere');
const supplierId = fc.constantFrom('', 'A', 'B', 'C', 'nowhere');
const date = fc.constantFrom('', '2027-02-20', '2027-03-01', '2027-03-04', '2027-12-31');
const amount = fc.oneof(fc.constantFrom(0, 1, 0.3, 5000), fc.double({ min: 0, max: 20, noNaN: true }));
const count = fc.integer({ min: 0, max: 12 });
const minor = fc.oneof(fc.constantFrom(0, 1, 999, 2_000_000_000), fc.integer({ min: 0, max: 20_000 }));
const maybeMinor = fc.option(minor);

const project = fc.record({
  packs: fc.array(
    fc.record({
      of: fc.constantFrom('varnish', 'other', 'screw', 'ply'),
      amount: fc.constantFrom(0.25, 0.946, 1, 3.785),
      price: maybeMinor,
      currency: fc.constantFrom('USD', 'USD', 'USD', 'EUR'),
      supplier: fc.constantFrom('A', 'B', 'C', null),
    }),
    { maxLength: 9 },
  ),
  terms: fc.array(
    fc.record({
      leadTimeDays: fc.option(fc.constantFrom(0, 1.5, 10)),
      currency: fc.constantFrom('USD', 'USD', 'EUR'),
      deliveryMinor: maybeMinor,
      freeDeliveryFromMinor: maybeMinor,
      minimumOrderMinor: maybeMinor,
      surchargeMinor: maybeMinor,
      workingDays: fc.constantFrom([0, 1, 2, 3, 4], [5], []),
      retired: fc.boolean(),
    }),
    { minLength: 3, maxLength: 3 },
  ),
  needs: fc.array(fc.tuple(productId, amount, maybeMinor, supplierId), { maxLength: 4 }),
  onHand: fc.array(fc.tuple(productId, amount, date, date), { maxLength: 4 }),
  orders: fc.array(fc.tuple(supplierId, date), { minLength: 1, maxLength: 2 }),
  orderLines: fc.array(
    fc.tuple(productId, count, fc.constantFrom(0.25, 0.946, 1, 3.785), maybeMinor, maybeMinor),
    {
      maxLength: 5,
    },
  ),
  receipts: fc.array(
    fc.tuple(fc.nat(4), fc.constantFrom('received' as const, 'returned' as const), date, count),
    {
      maxLength: 8,
    },
  ),
  uses: fc.array(fc.tuple(productId, date, amount), { maxLength: 3 }),
  done: fc.array(fc.tuple(fc.constantFrom(COAT_1, COAT_2, 'gone:show:15-1', 'nonsense'), fc.option(amount)), {
    maxLength: 3,
  }),
  substitutes: fc.array(fc.tuple(productId, productId), { maxLength: 3 }),
  taxPercent: fc.option(fc.constantFrom(0, 7.25, 20)),
  today: fc.constantFrom('2027-03-01', '2027-03-04', '2028-01-01'),
  calendar: fc.boolean(),
});

function figuresIn(value: unknown): readonly Figure[] {
  if (value === null || typeof value !== 'object') return [];
  if ('working' in value) return [value as Figure];
  return Object.values(value).flatMap(figuresIn);
}

function figureAt(place: unknown, steps: readonly string[]): Figure | undefined {
  const [step, ...rest] = steps;
  if (step === undefined) return place as Figure;
  const inside = Array.isArray(place)
    ? place.find((one: { readonly id: string }) => one.id === step)
    : (place as Readonly<Record<string, unknown>> | undefined)?.[step];
  return figureAt(inside, rest);
}

describe('any buying at all', () => {
  it('covers every need it can, never below zero, and its totals are the sums of rounded lines', () => {
    const seen = new Set<ProblemCode | string>();
    fc.assert(
      fc.property(project, (given) => {
        const packsOf = (id: string) =>
          given.packs.flatMap(({ of, amount: size, price, currency, supplier }, at) =>
            of === id
              ? [
                  {
                    ...aPack(`p${at}`, id === 'ply' ? 1 : size, price, { currency, supplierId: supplier }),
                    ...(id === 'ply' ? { lengthMm: 1200 + 100 * at, widthMm: 1100 } : {}),
                  },
                ]
              : [],
          );
        const done = new Map(given.done.map(([taskId, litres], at) => [taskId, { at, litres }]));
        const { taxPercent, today } = given;
        const bought = purchases(
          {
            ...TABLE,
            parts: [{ ...TABLE.parts[0], materialId: 'ply' }] as never,
            products: [
              aProduct(
                'varnish',
                'finish',
                { coverage: 10, shelfLifeOpened: 6 },
                { packs: packsOf('varnish') },
              ),
              aProduct(
                'other',
                'finish',
                { coverage: 8, shelfLifeUnopened: 12 },
                { packs: packsOf('other') },
              ),
              aProduct('ply', 'sheet', { thicknessNominal: 18 }, { packs: packsOf('ply') }),
              aProduct('screw', 'hardware', {}, { packs: packsOf('screw') }),
            ],
            suppliers: given.terms.map((terms, at) => aSupplier('ABC'.charAt(at), terms)),
            extras: given.needs.map(([id, quantity, unitPriceMinor, supplier], at) =>
              aNeed(String(at), id === 'ply' ? '' : id, quantity, { unitPriceMinor, supplierId: supplier }),
            ),
            onHand: given.onHand.map(([id, size, bestBefore, openedOn], at) => ({
              id: String(at),
              productId: id,
              amount: size,
              count: 1,
              lengthMm: null,
              widthMm: null,
              bestBefore,
              openedOn,
            })),
            orders: given.orders.map(([supplier, on], at) => ({
              id: String(at),
              supplierId: supplier,
              date: on,
              number: '',
              deliveryMinor: 0,
              surchargeMinor: 0,
              taxPercent: null,
              note: '',
            })),
            orderLines: given.orderLines.map(
              ([id, packs, packAmount, unitPriceMinor, invoicedPriceMinor], at) => ({
                id: String(at),
                orderId: String(at % given.orders.length),
                productId: id,
                packId: `p${at}`,
                name: id,
                category: 'finish' as const,
                count: packs,
                packAmount,
                unitPriceMinor,
                invoicedPriceMinor,
                taxPercent: null,
              }),
            ),
            receipts: given.receipts.map(([line, kind, on, packs], at) => ({
              id: String(at),
              orderLineId: String(line),
              kind,
              date: on,
              count: packs,
              batch: '',
              place: '',
            })),
            stockUses: given.uses.map(([id, on, size], at) => ({
              id: String(at),
              productId: id,
              date: on,
              amount: size,
              note: '',
            })),
            doneTasks: [...done].map(([taskId, { at, litres }]) => ({
              id: String(at),
              taskId,
              start: '2027-03-02T18:00',
              end: '2027-03-02T19:00',
              litres,
            })),
            substitutes: given.substitutes.map(([id, substituteId], at) => ({
              id: String(at),
              productId: id,
              substituteId,
            })),
            settings: { taxPercent },
          },
          { today, calendar: given.calendar ? tableCalendar([...done.keys()]) : null },
        );

        for (const { value, unit } of figuresIn([
          bought.lines,
          bought.baskets,
          bought.stock,
          bought.choice,
        ])) {
          if (value === null) continue;
          expect(Number.isFinite(value)).toBe(true);
          expect(value).toBeGreaterThanOrEqual(0);
          if (unit === 'minor') expect(Number.isInteger(value)).toBe(true);
        }
        // A working that names another figure of this answer leads there, and to the same number.
        for (const { working } of figuresIn(bought))
          for (const { from, value } of working.inputs) {
            if (from === undefined || !from.startsWith('buying/')) continue;
            expect([from, figureAt(bought, from.split('/').slice(1))?.value]).toEqual([from, value]);
          }
        for (const line of bought.lines) {
          const toOrder = line.toOrder.value;
          const packed = line.packs.reduce((sum, pack) => sum + pack.amount * pack.count, 0);
          // What is ordered covers what is to be ordered, or nothing can be said to be.
          if (toOrder !== null && line.packs.length > 0)
            expect(packed + 1e-3).toBeGreaterThanOrEqual(toOrder);
          if (toOrder === 0) expect([line.packs, line.cost.value]).toEqual([[], 0]);
          if (line.cost.value !== null)
            expect(line.cost.value).toBe(
              line.packs.reduce((sum, { lineMinor }) => sum + (lineMinor ?? 0), 0),
            );
          const needsOrder = line.state === 'to-order' || line.state === 'part-ordered';
          expect(needsOrder).toBe(toOrder === null || toOrder > 0);
        }
        // Sums of rounded lines, basket by basket, and all of them together.
        let all = 0;
        for (const basket of bought.baskets) {
          const own = bought.lines.filter(({ id }) => basket.lineIds.includes(id));
          const costs = own.flatMap(({ cost }) => cost.value ?? []);
          const goods = costs.reduce((sum, cost) => sum + cost, 0);
          expect(basket.goods.value ?? 0).toBe(goods);
          const charges = [basket.delivery.value ?? 0, basket.surcharge.value ?? 0];
          const tax = [...costs, ...charges].reduce(
            (sum, lineMinor) => sum + (taxPercent === null ? 0 : taxOnLine({ lineMinor, taxPercent })),
            0,
          );
          if (basket.total.value !== null)
            expect(basket.total.value).toBe(goods + (charges[0] ?? 0) + (charges[1] ?? 0) + tax);
          if (costs.length > 0) all += goods + (charges[0] ?? 0) + (charges[1] ?? 0);
        }
        if (bought.lines.every(({ cost }) => cost.value !== null))
          expect(bought.choice.total.value).toBe(all);
        expect(bought.choice.bound.value).toBeLessThanOrEqual(bought.choice.total.value ?? 0);
        expect(bought.choice.total.value).toBeLessThanOrEqual(bought.choice.lineByLine.value ?? 0);
        const placed = bought.baskets.flatMap(({ lineIds }) => lineIds);
        expect(new Set(placed).size).toBe(placed.length);
        for (const { code, message, wayOut } of bought.problems) {
          seen.add(code);
          expect(message.endsWith('.') && wayOut.endsWith('.')).toBe(true);
          expect(`${message}${wayOut}`).not.toMatch(/undefined|NaN|null/);
        }
        for (const { state } of bought.lines) seen.add(state);
      }),
      { numRuns: 200, seed: 20270301 },
    );
    // The cases really reach the corners they are meant for.
    expect([...seen].sort()).toEqual(
      expect.arrayContaining([
        'covered',
        'litres-doubtful',
        'on-hand-expired',
        'order-overdue',
        'ordered',
        'part-ordered',
        'part-received',
        'price-doubtful',
        'price-too-large',
        'receipt-before-order',
        'receipt-in-future',
        'receipt-more-than-ordered',
        'receipt-returned-too-many',
        'received',
        'stock-missing',
        'stock-use-invalid',
        'substitute-invalid',
        'supplier-never-works',
        'supplier-other-currency',
        'supplier-retired',
        'supplier-unknown',
        'to-order',
      ]),
    );
  });
});
