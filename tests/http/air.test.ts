import { describe, expect, it, onTestFinished } from 'vitest';
import type { AirAnswer, CalendarNotice, ProjectState } from '../../server/http/contract.ts';
import type { Figure } from '../../server/planning/figure.ts';
import { calendarDocument } from './calendar-document.ts';
import { eventWindow } from './event-window.ts';
import { openApp, startApp } from './open-app.ts';

const NO_REST = { restMs: 0, longestMs: 60_000 };
/** Friday 12 March 2027, 08:02 in New York. */
const FRIDAY = new Date('2027-03-12T13:02:00Z');
const ROOM = { roomLengthM: 5, roomWidthM: 4, roomHeightM: 2.5, fanM3PerHour: 360 };

async function opened(settings: object = {}) {
  const app = openApp({ now: () => FRIDAY, calendar: NO_REST });
  const document = { ...calendarDocument, settings: { ...calendarDocument.settings, ...settings } };
  const { body } = await app.send('post', '/api/projects/import', document);
  const path = `/api/projects/${(body as ProjectState).id}`;
  const read = async (): Promise<AirAnswer> => (await app.send('get', `${path}/air`)).body as AirAnswer;
  return {
    app,
    path,
    read,
    async ready() {
      await expect.poll(async () => (await read()).state, { timeout: 20_000 }).not.toBe('working');
      return read();
    },
    async change(values: object) {
      const { revision } = (await app.send('get', path)).body as ProjectState;
      const changes = [{ op: 'settings', values }];
      expect((await app.send('post', `${path}/changes`, { revision, changes })).status).toBe(200);
    },
  };
}

describe('the air of a project over HTTP', () => {
  it('says that the calendar is being worked out, and then what the coats of it do', async () => {
    const { read, ready } = await opened(ROOM);
    const first = await read();
    expect(first).toMatchObject({ state: 'working', stale: false, firstDate: '2027-03-12' });
    expect(first.air.verdict).toBe('cannot-tell');
    expect(first.air.problems[0]?.at).toEqual({ table: 'settings', id: null, field: 'calendar' });
    const { air, ...answer } = await ready();
    expect(answer).toMatchObject({ state: 'ready', timeZone: 'America/New_York' });
    expect(air.volumeM3).toBe(50);
    // Half of the fan's rating arrives.
    expect(air.airflow).toBe(180);
    expect(air.verdict).toBe('within-limits-entered');
    expect(air.coats).toHaveLength(2);
    expect(air.days.map(({ id }) => id)).toContain('2027-03-12');
    expect(air.cautions.length).toBeGreaterThan(5);
  });

  it('opens the working behind every figure it shows', async () => {
    const { app, path, ready } = await opened({ ...ROOM, outdoorC: 0, heatPricePerKwhMinor: 30 });
    const { air } = await ready();
    const coat = encodeURIComponent(air.coats[0]?.id ?? '');
    const paths = [
      'volumeM3',
      'airflow',
      'airChangesPerHour',
      'needed',
      'fire/peakPercent',
      'fire/needed',
      'health/peakIndex',
      'health/eightHourIndex',
      'health/shortTermIndex',
      'health/ceilingIndex',
      'health/needed',
      'health/steadyState',
      'health/airOut',
      'heatW',
      'heatKwh',
      'heatCost',
      `coats/${coat}/litres`,
      `coats/${coat}/vapourG`,
      `coats/${coat}/peakIndex`,
      `substances/${air.substances[0]?.id}/dilutionM3PerL`,
      'indoors/earliestWait',
      'indoors/latestWait',
    ];
    for (const at of paths) {
      const answer = await app.send('get', `${path}/working?at=${encodeURIComponent(`air/${at}`)}`);
      expect([at, answer.status]).toEqual([at, 200]);
      const { figure } = answer.body as { figure: Figure };
      expect(figure.working.rule).not.toBe('');
      // Every input that leads on leads somewhere.
      for (const { from } of figure.working.inputs)
        if (from !== undefined) {
          const next = await app.send('get', `${path}/working?at=${encodeURIComponent(from)}`);
          expect([from, next.status]).toEqual([from, 200]);
        }
    }
    expect((await app.send('get', `${path}/working?at=air/nothing`)).status).toBe(404);
  });

  it('is reckoned anew when a setting of the room changes, though the calendar stays', async () => {
    const { ready, change } = await opened(ROOM);
    expect((await ready()).air.verdict).toBe('within-limits-entered');
    await change({ fanM3PerHour: null });
    const { air, state } = await ready();
    expect(state).toBe('ready');
    expect(air.verdict).toBe('cannot-tell');
    expect(air.problems.map(({ at }) => at.field)).toEqual(['fanM3PerHour']);
  });

  it('refuses a project that is not there', async () => {
    const { app } = await opened();
    expect((await app.send('get', '/api/projects/99999/air')).status).toBe(404);
  });

  it('is worth reading again after word of a new calendar', async () => {
    const { url, close } = await startApp();
    onTestFinished(close);
    const body = JSON.stringify(calendarDocument);
    const headers = { 'content-type': 'application/json' };
    const imported = await fetch(`${url}/api/projects/import`, { method: 'POST', headers, body });
    const { id } = (await imported.json()) as ProjectState;
    const window = await eventWindow(url, id);
    const read = async (): Promise<AirAnswer> =>
      (await (await fetch(`${url}/api/projects/${id}/air`)).json()) as AirAnswer;
    expect((await read()).state).toBe('working');
    await window.until('calendar', ({ state }: CalendarNotice): boolean => state === 'ready');
    expect((await read()).air.coats).toHaveLength(2);
    window.close();
  });
});
