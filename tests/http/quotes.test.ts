import { describe, expect, it } from 'vitest';
import type { ProjectState, QuoteAnswer } from '../../server/http/contract.ts';
import type { Figure } from '../../server/planning/figure.ts';
import { openApp } from './open-app.ts';

async function opened() {
  let now = new Date('2027-03-10T12:00:00Z');
  const app = openApp({ now: () => now });
  const state = await app.importSmall();
  const path = `/api/projects/${state.id}`;
  return {
    app,
    state,
    path,
    setNow: (moment: string) => {
      now = new Date(moment);
    },
    quote: async (id = state.rows.quotes[0]?.id): Promise<QuoteAnswer> =>
      (await app.send('get', `${path}/quotes/${id}`)).body as QuoteAnswer,
    change: async (changes: readonly object[]) => {
      const { revision } = (await app.send('get', path)).body as ProjectState;
      const answer = await app.send('post', `${path}/changes`, { revision, changes });
      expect(answer.status).toBe(200);
    },
  };
}

describe('a quote of a project', () => {
  it('is worked out with its workings', async () => {
    const { quote, change, state } = await opened();
    const id = state.rows.quotes[0]?.id;
    // By hand: 100.00, markup 15 % = 15.00, 20 h at 45.00 = 900.00: 1015.00; 10 % = 101.50.
    await change([{ op: 'update', table: 'quotes', id, values: { materialsMinor: 10_000, taxPercent: 10 } }]);
    const answer = await quote();
    expect([answer.net.value, answer.tax.value, answer.total.value]).toEqual([101_500, 10_150, 111_650]);
    expect(answer.labour.working.rule).toBe('labour = hours x rate, rounded half up');
    expect(answer.sheet).toMatchObject({ title: 'Window seat', expired: false, totalMinor: 111_650 });
    expect(answer.currency).toBe(state.settings.currency);
  });

  it('follows the buy list of the plan, whose figures it names', async () => {
    const { quote } = await opened();
    const { materials } = await quote();
    expect(materials.working.inputs.map(({ from }) => from)).toContain('buy/lines/birch-ply-18/cost');
  });

  it('opens each of its figures, and from each those it is made of', async () => {
    const { app, path, state } = await opened();
    const id = state.rows.quotes[0]?.id;
    const open = [`quotes/${id}/total`];
    const seen = new Set<string>();
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      const { status, body } = await app.send('get', `${path}/working?at=${at}`);
      expect([at, status]).toEqual([at, 200]);
      seen.add(at);
      const { inputs } = (body as { readonly figure: Figure }).figure.working;
      for (const { from } of inputs) if (from !== undefined && !seen.has(from)) open.push(from);
    }
    for (const field of ['net', 'materials', 'markup', 'labour'])
      expect([...seen]).toContain(`quotes/${id}/${field}`);
    await app.refused(app.send('get', `${path}/working?at=quotes/${id}/sheet`), 404, 'not-found');
    await app.refused(app.send('get', `${path}/working?at=quotes/9999/net`), 404, 'not-found');
  });

  it('expires by the date where the shop is', async () => {
    const { quote, setNow, change } = await opened();
    await change([{ op: 'settings', values: { timeZone: 'America/New_York' } }]);
    // 03:59 in UTC on 1 April is 23:59 on 31 March in New York, the last day of the quote.
    setNow('2027-04-01T03:59:00Z');
    expect((await quote()).sheet.expired).toBe(false);
    setNow('2027-04-01T04:00:00Z');
    const late = await quote();
    expect(late.sheet.expired).toBe(true);
    expect(late.problems.map(({ code }) => code)).toContain('quote-expired');
  });

  it('is refused when there is none of that number', async () => {
    const { app, path } = await opened();
    await app.refused(app.send('get', `${path}/quotes/99999`), 404, 'not-found');
    await app.refused(app.send('get', `${path}/quotes/first`), 404, 'not-found');
    await app.refused(app.send('get', '/api/projects/99999/quotes/1'), 404, 'not-found');
  });

  it('comes back by undo after it was deleted', async () => {
    const { app, path, quote, change, state } = await opened();
    const id = state.rows.quotes[0]?.id;
    await change([{ op: 'delete', table: 'quotes', id }]);
    await app.refused(app.send('get', `${path}/quotes/${id}`), 404, 'not-found');
    const { revision } = (await app.send('get', path)).body as ProjectState;
    await app.send('post', `${path}/undo`, { revision });
    expect((await quote()).sheet.title).toBe('Window seat');
  });
});
