import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../../server/exchange/export/write-csv.ts';
import { plannedDocument } from './planned-document.ts';

/** 4 hinges at 2.50 ordered, one of them sent back, 5.00 paid of it for half a project; screws still to be ordered. */
const document = {
  settings: {
    name: 'Shelves',
    units: 'metric',
    currency: 'EUR',
    taxPercent: 20,
    contingencyPercent: 10,
    readyMadeMinor: 5000,
  },
  parts: [{ id: '1', name: 'Side', quantity: '2' }],
  extras: [{ id: '9', name: 'Screws', category: 'hardware', quantity: 100, unitPriceMinor: 4 }],
  budgets: [{ category: 'hardware', amountMinor: 3000 }],
  suppliers: [{ id: 'shop', name: 'The shop', leadTimeDays: null }],
  orders: [{ id: '1', supplierId: 'shop', date: '2027-03-01', number: 'A-17', deliveryMinor: 500 }],
  orderLines: [
    { id: '1', orderId: '1', name: 'Hinges', category: 'hardware', count: 4, unitPriceMinor: 250 },
  ],
  receipts: [
    { id: '1', orderLineId: '1', kind: 'received', date: '2027-03-03', count: 3 },
    { id: '2', orderLineId: '1', kind: 'returned', date: '2027-03-04', count: 1 },
  ],
  payments: [
    { id: '1', orderId: '1', date: '2027-03-05', amountMinor: 1000, share: 0.5, receiptNumber: '=R1' },
    { id: '2', kind: 'refund', date: '2027-03-02', category: 'glue', amountMinor: 120, taxMinor: 20 },
  ],
};
const planned = plannedDocument(document);

describe('the tables of the ledger', () => {
  it('give every heading its money in major units, and what the whole comes to', () => {
    const headings = planned.column('ledger', 'Heading');
    const row = (heading: string) =>
      ['Budget', 'Planned', 'Ordered', 'Paid', 'Open', 'To order', 'Forecast', 'Left of budget'].map(
        (name) => planned.column('ledger', `${name} (EUR)`)[headings.indexOf(heading)],
      );
    // Planned: 100 screws at 0.04 = 4.00, tax 0.80. Ordered: 3 hinges 7.50, tax 1.50 = 9.00; delivery 5.00, tax 1.00 = 6.00.
    // Paid: half of 10.00, shared 9 to 6: 3.00 and 2.00.
    expect(row('hardware')).toEqual([30, 4.8, 9, 3, 6, 4.8, 13.8, 16.2]);
    expect(row('other')).toEqual([null, 0, 6, 2, 4, 0, 6, null]);
    expect(row('glue')).toEqual([null, 0, -1.2, -1.2, 0, 0, -1.2, null]);
    expect(row('all')).toEqual([30, 4.8, 13.8, 3.8, 10, 4.8, 18.6, 11.4]);
    const forecast = (heading: string) =>
      planned.column('ledger', 'Forecast (EUR)')[headings.indexOf(heading)];
    // 10 % of 4.80 is 0.48; 50.00 - 19.08 = 30.92. Hours are not counted, and nothing is finished.
    expect(forecast('contingency')).toBe(0.48);
    expect(forecast('forecast with contingency')).toBe(19.08);
    expect(forecast('saved by building it')).toBe(30.92);
    expect(forecast('own hours')).toBe(null);
    expect(forecast('forecast per square metre finished')).toBe(null);
  });

  it('list what is still to be ordered before what is ordered, pack by pack', () => {
    expect(planned.column('order-list', 'Item')).toEqual(['Screws', 'Hinges']);
    expect(planned.column('order-list', 'State')).toEqual(['to order', 'part received']);
    expect(planned.column('order-list', 'Supplier')).toEqual(['', 'The shop']);
    expect(planned.column('order-list', 'Order by, or ordered on')).toEqual(['', '2027-03-01']);
    expect(planned.column('order-list', 'Order')).toEqual(['', 'A-17']);
    expect(planned.column('order-list', 'Packs')).toEqual([100, 4]);
    expect(planned.column('order-list', 'Cost (EUR)')).toEqual([4, 7.5]);
    expect(planned.column('order-list', 'Received')).toEqual([null, 3]);
    expect(planned.column('order-list', 'Sent back')).toEqual([null, 1]);
  });

  it('list payments by date, with what the project bears of each', () => {
    expect(planned.column('payments', 'Date')).toEqual(['2027-03-02', '2027-03-05']);
    expect(planned.column('payments', 'Order')).toEqual(['', 'A-17']);
    expect(planned.column('payments', 'Heading')).toEqual(['glue', '']);
    expect(planned.column('payments', 'Borne by this project (EUR)')).toEqual([-1.2, 5]);
    expect(planned.column('payments', 'Of which tax (EUR)')).toEqual([0.2, null]);
    expect(planned.column('payments', 'Share (%)')).toEqual([100, 50]);
    expect(writeCsv(planned.table('payments'))).toContain("'=R1");
  });

  it('write money with the decimals of its currency', () => {
    const inCurrency = (currency: string) =>
      writeCsv(
        plannedDocument({ ...document, settings: { ...document.settings, currency } }).table('ledger'),
      );
    // 1380 minor units.
    expect(inCurrency('JPY')).toContain('\nall,3000,480,1380,380,1000,480,1860,1140\r');
    expect(inCurrency('KWD')).toContain('\nall,3.000,0.480,1.380,0.380,1.000,0.480,1.860,1.140\r');
  });
});
