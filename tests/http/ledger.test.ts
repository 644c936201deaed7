import { describe, expect, it } from 'vitest';
import type { ChangeAnswer, LedgerAnswer, ProjectState, ProjectSummary } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

/** Wednesday 10 March 2027, noon in London. */
const NOW = new Date('2027-03-10T12:00:00Z');

async function opened(settings: object = {}) {
  const app = openApp({ now: () => NOW });
  const { body } = await app.send('post', '/api/projects', {
    name: 'Desk',
    units: 'metric',
    currency: 'EUR',
  });
  const path = `/api/projects/${(body as ProjectState).id}`;
  const change = async (changes: readonly object[]): Promise<ChangeAnswer> => {
    const { revision } = (await app.send('get', path)).body as ProjectState;
    const answer = await app.send('post', `${path}/changes`, { revision, changes });
    expect(answer.status).toBe(200);
    return answer.body as ChangeAnswer;
  };
  await change([{ op: 'settings', values: { timeZone: 'Europe/London', taxPercent: 20, ...settings } }]);
  const ledger = async (): Promise<LedgerAnswer> => {
    const answer = await app.send('get', `${path}/ledger`);
    expect(answer.status).toBe(200);
    return answer.body as LedgerAnswer;
  };
  return { app, path, change, ledger };
}

describe('the ledger over HTTP', () => {
  it('follows an order, its part delivery and its payment, and undo takes them back together', async () => {
    const { app, path, change, ledger } = await opened();
    // 2 x 25.00 with 20 % tax 60.00, delivery 6.00 with tax 7.20; 30.00 paid: 60/67.20 of it is 26.786, 7.20/67.20 is 3.214.
    const { revision, inserted } = await change([
      { op: 'insert', table: 'orders', tempId: 'o', values: { date: '2027-03-08', deliveryMinor: 600 } },
      {
        op: 'insert',
        table: 'orderLines',
        tempId: 'l',
        values: { orderId: 'o', name: 'Hinges', category: 'hardware', count: 2, unitPriceMinor: 2500 },
      },
      { op: 'insert', table: 'receipts', values: { orderLineId: 'l', date: '2027-03-09', count: 1 } },
      { op: 'insert', table: 'payments', values: { orderId: 'o', date: '2027-03-10', amountMinor: 3000 } },
    ]);
    const answer = await ledger();
    expect([answer.today, answer.currency, answer.currencyDigits]).toEqual(['2027-03-10', 'EUR', 2]);
    expect(answer.orders).toMatchObject([
      { id: inserted.o, total: { value: 6720 }, paid: { value: 3000 }, open: { value: 3720 } },
    ]);
    const headings = Object.fromEntries(answer.headings.map((one) => [one.id, one]));
    expect([headings.hardware?.paid.value, headings.other?.paid.value]).toEqual([2679, 321]);
    expect(answer.series).toEqual([
      { date: '2027-03-08', orderedMinor: 6720, paidMinor: 0 },
      { date: '2027-03-10', orderedMinor: 6720, paidMinor: 3000 },
    ]);
    await app.send('post', `${path}/undo`, { revision });
    expect((await ledger()).orders).toEqual([]);
  });

  it('takes what cannot be money for what it is, names the cell, and changes nothing', async () => {
    const { app, path, ledger } = await opened();
    const bad: readonly (readonly [string, object, string])[] = [
      ['payments', { amountMinor: -1 }, 'amountMinor'],
      ['payments', { amountMinor: 12.5 }, 'amountMinor'],
      ['payments', { amountMinor: 1e15 }, 'amountMinor'],
      ['payments', { amountMinor: '12' }, 'amountMinor'],
      ['payments', { amountMinor: 1, share: 1.5 }, 'share'],
      ['payments', { amountMinor: 1, date: '2027-02-30' }, 'date'],
      ['orders', { date: 'tomorrow' }, 'date'],
      ['orders', { deliveryMinor: -500 }, 'deliveryMinor'],
      ['budgets', { category: 'biscuits' }, 'category'],
      ['receipts', { orderLineId: '1', count: -2 }, 'count'],
      ['quotes', { markupPercent: -5 }, 'markupPercent'],
      ['workHours', { hours: -1 }, 'hours'],
    ];
    const before = (await app.send('get', path)).body as ProjectState;
    for (const [table, values, field] of bad) {
      const error = await app.refused(
        app.send('post', `${path}/changes`, {
          revision: before.revision,
          changes: [{ op: 'insert', table, values }],
        }),
        400,
        'bad-request',
      );
      expect(error.field).toBe(`changes.0.values.${field}`);
    }
    expect(((await app.send('get', path)).body as ProjectState).revision).toBe(before.revision);
    expect((await ledger()).totals.ordered.value).toBe(0);
  });

  it('refuses a document with money that cannot be, naming each place, and stores none of it', async () => {
    const app = openApp({ now: () => NOW });
    const count = async (): Promise<number> =>
      ((await app.send('get', '/api/projects')).body as { projects: unknown[] }).projects.length;
    const before = await count();
    const document = {
      format: 'plywright-project',
      version: 1,
      settings: { name: 'Bad', units: 'metric', currency: 'EUR', contingencyPercent: -1 },
      parts: [],
      orders: [{ id: '1', deliveryMinor: 1.5 }],
      orderLines: [{ orderId: '1', unitPriceMinor: 1e13 }],
      receipts: [{ orderLineId: '1', count: -3 }],
      payments: [{ amountMinor: -100, date: '2027-02-30' }],
      quotes: [{ validUntil: 'soon' }],
    };
    const error = await app.refused(app.send('post', '/api/projects/import', document), 400, 'bad-request');
    expect(error.faults?.map(({ field }) => field)).toEqual([
      'settings.contingencyPercent',
      'orders.0.deliveryMinor',
      'orderLines.0.unitPriceMinor',
      'receipts.0.count',
      'payments.0.date',
      'payments.0.amountMinor',
      'quotes.0.validUntil',
    ]);
    expect(await count()).toBe(before);
  });

  it('has as many decimals as ISO 4217 gives the currency', async () => {
    for (const [currency, digits] of [
      ['JPY', 0],
      ['KWD', 3],
      ['HUF', 2],
    ] as const) {
      const { ledger } = await opened({ currency });
      expect(await ledger()).toMatchObject({ currency, currencyDigits: digits });
    }
  });

  it('keeps a currency with other decimals from making other amounts of those there are', async () => {
    const { app, path, change, ledger } = await opened();
    await change([{ op: 'insert', table: 'payments', values: { amountMinor: 10700, category: 'sheets' } }]);
    const { revision } = (await app.send('get', path)).body as ProjectState;
    const setTo = (currency: string) => app.send('patch', `${path}/settings`, { revision, currency });
    const error = await app.refused(setTo('JPY'), 409, 'in-use');
    expect(error.message).toContain('EUR, with 2 decimals; JPY has no decimals');
    const changes = [{ op: 'settings', values: { currency: 'KWD' } }];
    await app.refused(app.send('post', `${path}/changes`, { revision, changes }), 409, 'in-use');
    expect(await ledger()).toMatchObject({ currency: 'EUR', totals: { paid: { value: 10700 } } });
    // As many decimals: the figures stay as they look.
    expect((await setTo('USD')).status).toBe(200);
    expect(await ledger()).toMatchObject({ currency: 'USD', totals: { paid: { value: 10700 } } });
  });

  it('works a quote out, and sends the customer’s sheet without anything inner', async () => {
    const { app, path, change } = await opened();
    const { inserted } = await change([
      {
        op: 'insert',
        table: 'quotes',
        tempId: 'q',
        values: {
          title: 'Desk',
          materialsMinor: 41117,
          hours: 17,
          rateMinorPerHour: 2903,
          markupPercent: 13,
          validUntil: '2027-03-10',
        },
      },
    ]);
    // 411.17 + 13 % 53.45 + 17 h x 29.03 = 493.51: 958.13; 20 % tax 191.63 (191.626).
    const { body } = await app.send('get', `${path}/quotes/${inserted.q}`);
    expect(body).toMatchObject({ net: { value: 95813 }, tax: { value: 19163 }, total: { value: 114976 } });
    const { text, body: sheet } = await app.send('get', `${path}/quotes/${inserted.q}/sheet`);
    expect(sheet).toMatchObject({ title: 'Desk', totalMinor: 114976, expired: false, currency: 'EUR' });
    for (const secret of ['41117', '5345', '49351', '2903', 'markup', 'hours', 'rule'])
      expect(text).not.toContain(secret);
    await app.refused(app.send('get', `${path}/quotes/9999`), 404, 'not-found');
    await app.refused(app.send('get', `${path}/quotes/x/sheet`), 404, 'not-found');
  });

  it('of a project that is not there is refused', async () => {
    const { app } = await opened();
    await app.refused(app.send('get', '/api/projects/999/ledger'), 404, 'not-found');
  });
});

describe('the ledger of the wall cabinet', () => {
  it('shows orders under way: a part delivery, a deposit, a return with its refund, and half a receipt', async () => {
    const app = openApp();
    const { projects } = (await app.send('get', '/api/projects')).body as { projects: ProjectSummary[] };
    const id = projects.find(({ name }) => name === 'Bicycle-workshop wall cabinet')?.id;
    const ledger = (await app.send('get', `/api/projects/${id}/ledger`)).body as LedgerAnswer;
    // Sheets 107.00 + 35.00, tape charged 13.50, delivery 29.00, each with 20 %: 128.40 + 42.00 + 16.20 + 34.80 = 221.40,
    // of which 100.00 is paid. Screws 5.90, hinges 2 x 6.90 kept of 3, knobs 2 x 2.90: 7.08 + 16.56 + 6.96 = 30.60, paid
    // 38.88 less 8.28. Half of 12.90.
    expect(ledger.orders.map(({ total, open }) => [total.value, open.value])).toEqual([
      [22140, 12140],
      [3060, 0],
    ]);
    expect(ledger.totals.ordered.value).toBe(22140 + 3060 + 645);
    expect(ledger.totals.paid.value).toBe(10000 + 3060 + 645);
    // Agreed 12.90, charged 13.50: 15.48 and 16.20 with tax.
    expect(ledger.orders[0]?.priceChange.value).toBe(72);
    expect(ledger.totals.budget.value).toBe(42500);
    expect(ledger.problems).toEqual([]);
    // The last entry is of the day before the demo's own, which is less than a week ago.
    const last = Date.parse(ledger.series.at(-1)?.date ?? '');
    const days = (Date.parse(ledger.today) - last) / 86_400_000;
    expect(days).toBeGreaterThanOrEqual(1);
    expect(days).toBeLessThanOrEqual(7);
  });
});
