import ICAL from 'ical.js';
import { pino } from 'pino';
import request from 'supertest';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { CalendarAnswer, CalendarNotice, ProjectState } from '../../server/http/contract.ts';
import { createApp } from '../../server/http/create-app.ts';
import { clockMinute } from '../../server/planning/display/clock-minute.ts';
import { formatVolume } from '../../server/planning/display/format-volume.ts';
import { calendarDocument } from './calendar-document.ts';
import { eventWindow } from './event-window.ts';
import { type OpenApp, openApp, startApp } from './open-app.ts';

const HOUR = 60;
const DAY = 1440;
const NO_REST = { restMs: 0, longestMs: 60_000 };

/** Friday 12 March 2027, 08:02 in New York: two nights before clocks are put forward. */
const FRIDAY = new Date('2027-03-12T13:02:00Z');

interface Opened {
  readonly app: OpenApp;
  readonly path: string;
  readonly setNow: (moment: Date) => void;
  readonly read: () => Promise<CalendarAnswer>;
  /** Asks until the plan is up to date. */
  readonly ready: () => Promise<CalendarAnswer>;
  readonly change: (changes: readonly object[]) => Promise<void>;
}

async function opened(changes: object = {}, config: object = {}): Promise<Opened> {
  let now = FRIDAY;
  const app = openApp({ now: () => now, calendar: NO_REST, ...config });
  const { body } = await app.send('post', '/api/projects/import', { ...calendarDocument, ...changes });
  const path = `/api/projects/${(body as ProjectState).id}`;
  const read = async (): Promise<CalendarAnswer> =>
    (await app.send('get', `${path}/calendar`)).body as CalendarAnswer;
  return {
    app,
    path,
    setNow: (moment) => {
      now = moment;
    },
    read,
    async ready() {
      await expect.poll(async () => (await read()).state, { timeout: 20_000 }).not.toBe('working');
      return read();
    },
    async change(some) {
      const { revision } = (await app.send('get', path)).body as ProjectState;
      const answer = await app.send('post', `${path}/changes`, { revision, changes: some });
      expect(answer.status).toBe(200);
    },
  };
}

const at = (day: number, hour: number, minute = 0): number => day * DAY + hour * HOUR + minute;

describe('the calendar of a project', () => {
  it('is worked out when it is first asked for, and then kept', async () => {
    const { read, ready } = await opened();
    const first = await read();
    expect(first).toMatchObject({ state: 'working', stale: false, plan: null, firstDate: '2027-03-12' });
    const { plan, ...answer } = await ready();
    expect(answer).toMatchObject({ state: 'ready', stale: false, timeZone: 'America/New_York' });
    // 08:02, rounded up to five minutes.
    expect([answer.nowMinute, answer.plannedFromMinute]).toEqual([at(0, 8, 2), at(0, 8, 5)]);
    // 0.6 m2 of faces and 2 x 1 m x 18 mm of front edges: 10 + 0.636 / 0.1 min of sanding is 20 with the step; water-based
    // polyurethane is recoated from 240 min, so both coats fit into Friday's eight hours.
    expect(plan?.state).toBe('planned');
    expect(plan?.proven).toBe(true);
    expect(plan?.tasks.map(({ kind, startMinute }) => [kind, startMinute])).toEqual([
      ['sand', at(0, 9)],
      ['topcoat', at(0, 9, 20)],
      ['topcoat', expect.any(Number)],
    ]);
    expect(plan?.tasks[2]?.startMinute).toBeLessThan(at(0, 17));
    const [sand, coat] = plan?.tasks ?? [];
    expect(answer.coatLitres).toMatchObject({ [coat?.id ?? '']: expect.any(Number) });
    expect(answer.coatLitres).not.toHaveProperty(sand?.id ?? '');
    expect(answer.neededBy['water-poly-satin']).toBe(coat?.startMinute);
    expect(answer.neededBy['disc-125-150']).toBe(sand?.startMinute);
    expect(Object.values(answer.names.recipes)).toEqual(['Clear']);
  });

  it('shows days, hours and clock changes: the Sunday after next night is 23 hours long', async () => {
    const { ready } = await opened({ settings: { ...calendarDocument.settings, startDate: '2027-03-14' } });
    const { days, clockShifts, plan, climate } = await ready();
    expect(days.slice(0, 3).map(({ date, toMinute, fromMinute }) => [date, toMinute - fromMinute])).toEqual([
      ['2027-03-12', DAY],
      ['2027-03-13', DAY],
      ['2027-03-14', 23 * HOUR],
    ]);
    expect(clockShifts[0]).toEqual({ fromMinute: at(2, 2), aheadMin: 60 });
    // 09:00 on Sunday is eight real hours after its midnight.
    expect(days[2]?.windows).toEqual([{ fromMinute: at(2, 8), toMinute: at(2, 16) }]);
    expect(plan?.tasks[0]?.startMinute).toBe(at(2, 8));
    expect(clockMinute(plan?.tasks[0]?.startMinute ?? 0, clockShifts)).toBe(at(2, 9));
    expect(climate[0]).toEqual({ minute: 0, temperatureC: 22, humidityPercent: 50, nearDew: false });
  });

  it('is not worked out again by the clock, only on another day, when asked to, or after a change that matters', async () => {
    const { ready, read, setNow, change, app, path } = await opened();
    const before = await ready();
    setNow(new Date(FRIDAY.getTime() + 3 * HOUR * 60_000));
    const later = await read();
    expect(later).toMatchObject({ state: 'ready', plannedFromMinute: at(0, 8, 5), nowMinute: at(0, 11, 2) });
    expect(later.plan).toEqual(before.plan);
    const { rows } = (await app.send('get', path)).body as ProjectState;
    await change([{ op: 'update', table: 'parts', id: rows.parts[0]?.id, values: { note: 'dusty' } }]);
    expect((await read()).state).toBe('ready');

    const asked = await app.send('post', `${path}/calendar/replan`);
    expect([asked.status, asked.body.state, asked.body.stale]).toEqual([202, 'working', true]);
    const anew = await ready();
    expect(anew.plannedFromMinute).toBe(at(0, 11, 5));
    expect(anew.plan?.tasks[0]?.startMinute).toBe(at(0, 11, 5));

    await change([{ op: 'settings', values: { hands: 2 } }]);
    expect((await read()).state).toBe('working');
    await ready();
    setNow(new Date('2027-03-13T15:00:00Z'));
    const nextDay = await ready();
    expect([nextDay.firstDate, nextDay.plan?.tasks[0]?.startMinute]).toEqual(['2027-03-13', at(0, 10)]);
  });

  it('plans around what is pinned and what is done', async () => {
    const { ready, change, setNow } = await opened();
    const { plan } = await ready();
    const [sand, first, second] = plan?.tasks.map(({ id }) => id) ?? [];
    setNow(new Date('2027-03-12T15:30:00Z'));
    await change([
      {
        op: 'insert',
        table: 'doneTasks',
        values: { taskId: sand, start: '2027-03-12T09:00', end: '2027-03-12T09:35' },
      },
      { op: 'insert', table: 'pins', values: { taskId: first, start: '2027-03-12T14:10' } },
    ]);
    const after = await ready();
    const tasks = new Map(after.plan?.tasks.map((task) => [task.id, task]));
    expect(tasks.get(sand ?? '')).toMatchObject({
      state: 'done',
      startMinute: at(0, 9),
      endMinute: at(0, 9, 35),
    });
    expect(tasks.get(first ?? '')).toMatchObject({ state: 'pinned', startMinute: at(0, 14, 10) });
    // Recoat from 240 min after the last stroke: not before 18:15, when the shop is closed.
    expect(tasks.get(second ?? '')).toMatchObject({ state: 'planned', startMinute: at(1, 9) });
    // A day later the day that work began on is still day 0.
    setNow(new Date('2027-03-13T13:00:00Z'));
    const nextDay = await ready();
    expect(nextDay.firstDate).toBe('2027-03-12');
    expect(nextDay.problems.map(({ code, at: place }) => [code, place.table, place.field])).toEqual([
      ['calendar-pin-kept-from', 'pins', 'start'],
    ]);
  });

  it('tells open windows when it is there', async () => {
    const { url, close } = await startApp();
    onTestFinished(close);
    const body = JSON.stringify(calendarDocument);
    const headers = { 'content-type': 'application/json' };
    const imported = await fetch(`${url}/api/projects/import`, { method: 'POST', headers, body });
    const { id } = (await imported.json()) as ProjectState;
    const window = await eventWindow(url, id);
    const calendar = (await (await fetch(`${url}/api/projects/${id}/calendar`)).json()) as CalendarAnswer;
    expect(calendar.state).toBe('working');
    const ready = ({ state }: CalendarNotice): boolean => state === 'ready';
    expect(await window.until('calendar', ready)).toEqual({ revision: 1, state: 'ready', stale: false });
    window.close();
  });

  it('says so when it cannot be worked out in time, and does not try again by itself', async () => {
    const { read, ready } = await opened({}, { calendar: { restMs: 0, longestMs: 0 } });
    expect((await ready()).state).toBe('failed');
    expect(await read()).toMatchObject({ state: 'failed', plan: null });
  });

  it('is stopped by what cannot be, with the place and a way out', async () => {
    const cases: [object, string, string, string | null][] = [
      [{ shopHours: [] }, 'calendar-no-hours', 'shopHours', null],
      [
        { shopHours: [{ weekday: 1, from: '17:00', to: '9:00' }] },
        'calendar-hours-backwards',
        'shopHours',
        'to',
      ],
      [
        { shopHours: [{ weekday: 1, from: 'early', to: '9:00' }] },
        'calendar-time-unreadable',
        'shopHours',
        'from',
      ],
      [
        { settings: { ...calendarDocument.settings, startDate: '2032-03-12' } },
        'calendar-date-out-of-reach',
        'settings',
        'startDate',
      ],
    ];
    for (const [changes, code, table, field] of cases) {
      const { read } = await opened(changes);
      const { state, plan, problems } = await read();
      expect([state, plan]).toEqual(['ready', null]);
      expect(problems.map((one) => [one.code, one.at.table, one.at.field])).toContainEqual([
        code,
        table,
        field,
      ]);
      for (const { message, wayOut } of problems)
        expect([message.length > 10, wayOut.length > 10]).toEqual([true, true]);
    }
  });

  it('goes on without a row that cannot be read, and says which', async () => {
    const { ready } = await opened({
      daysOff: [{ date: 'Easter' }, { date: '2027-03-12' }],
      pins: [
        { taskId: 'gone', start: '2027-03-13T09:00' },
        { taskId: 'late', start: '2032-03-13T09:00' },
        { taskId: 'when', start: 'soon' },
      ],
      doneTasks: [{ taskId: 'x', start: '2027-03-12T10:00', end: '2027-03-12T09:00' }],
      arrivals: [
        { productId: 'water-poly-satin', date: '2027-03-15' },
        { productId: 'no-such', date: '2027-03-15' },
        { productId: 'water-poly-satin', date: '15 March' },
      ],
    });
    const { plan, problems, days } = await ready();
    expect(problems.map(({ code, at: { table, field } }) => `${code} ${table}.${field}`).sort()).toEqual([
      'calendar-date-out-of-reach pins.start',
      'calendar-date-unreadable arrivals.date',
      'calendar-date-unreadable daysOff.date',
      'calendar-date-unreadable pins.start',
      'calendar-hours-backwards doneTasks.end',
      'calendar-task-unknown pins.taskId',
      'product-unknown arrivals.productId',
    ]);
    expect(days[0]).toMatchObject({ off: true, windows: [] });
    // Saturday is the first working day; the finish is there from Monday, 15 March, day 3, an hour short by then.
    expect(plan?.tasks[0]?.startMinute).toBe(at(1, 9));
    expect(plan?.tasks[1]?.startMinute).toBe(at(3, 8));
  });

  it('names pins that contradict each other, and what is in the way', async () => {
    const { ready, change } = await opened();
    const { plan } = await ready();
    const [, first, second] = plan?.tasks.map(({ id }) => id) ?? [];
    await change([
      { op: 'insert', table: 'pins', values: { taskId: second, start: '2027-03-13T10:00' } },
      { op: 'insert', table: 'pins', values: { taskId: first, start: '2027-03-13T11:00' } },
    ]);
    const { plan: none, problems, wayOutChanges } = await ready();
    expect([none?.state, none?.proven, none?.blocks[0]?.kind]).toEqual(['does-not-fit', true, 'pin']);
    expect(none?.blocks[0]?.waysOut.map(({ change }) => change)).toContain('drop-pin');
    expect(none?.blocks[0]?.message).toBe('Batch 1 of “Clear” cannot keep what is pinned in it.');
    expect(problems.map(({ code, at: place }) => [code, place.table, place.field])).toContainEqual([
      'calendar-pins-contradict',
      'pins',
      'start',
    ]);
    // A way out is offered with the edits that make it real, and they do free the plan.
    const ways = none?.blocks[0]?.waysOut.map(({ change }) => change) ?? [];
    const edits = wayOutChanges[0]?.[ways.indexOf('drop-pin')] ?? [];
    expect(edits.map(({ op }) => op)).toContain('delete');
    await change(edits);
    expect((await ready()).plan?.state).toBe('planned');
  });
});

describe('the calendar for calendar programs', () => {
  it('is read by an independent parser: times, zone, texts, alarms', async () => {
    const { ready, app } = await opened();
    const { plan, feedPath, coatLitres } = await ready();
    const answer = await app.send('get', feedPath);
    expect(answer.headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(answer.headers['content-disposition']).toContain('inline');
    for (const line of answer.text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(answer.text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);

    const calendar = new ICAL.Component(ICAL.parse(answer.text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('x-wr-calname')).toBe('Two shelves; "oak", 1/2: coats');
    const zone = new ICAL.Timezone(calendar.getFirstSubcomponent('vtimezone') as ICAL.Component);
    expect(zone.tzid).toBe('America/New_York');
    // UTC-5 before 14 March 2027, 02:00, and UTC-4 after it.
    const offset = (text: string): number => zone.utcOffset(ICAL.Time.fromDateTimeString(text)) / 3600;
    expect([
      offset('2027-03-13T12:00:00'),
      offset('2027-03-15T12:00:00'),
      offset('2027-11-08T12:00:00'),
    ]).toEqual([-5, -4, -5]);

    const events = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(events).toHaveLength(3);
    const [sand, coat, last] = events;
    expect(sand?.summary).toMatch(/^Sand, show faces: Sanding disc/);
    expect(sand?.startDate.toString()).toBe('2027-03-12T09:00:00');
    expect(sand?.startDate.zone.tzid).toBe('America/New_York');
    expect(coat?.summary).toBe('Topcoat 1, show faces: Water-based polyurethane, satin');
    const litres = coatLitres[plan?.tasks[1]?.id ?? ''] ?? 0;
    expect(coat?.description).toContain(`${formatVolume(litres, { units: 'metric' })} on 0.64 m²`);
    expect(coat?.description).toContain('2 × Shelf, long');
    // The window of the second coat: 240 to 1440 min after the first, without sanding.
    expect(last?.description).toMatch(/May begin from Fri 12 Mar 13:\d\d to Sat 13 Mar \d\d:\d\d\./);
    const [alarm] = last?.component.getAllSubcomponents('valarm') ?? [];
    const closes = plan?.tasks[2]?.allowedToMinute ?? 0;
    const trigger = alarm?.getFirstPropertyValue('trigger') as ICAL.Time;
    expect(trigger.toJSDate().getTime()).toBe(
      // An hour before it closes; midnight in New York is 05:00 UTC.
      Date.UTC(2027, 2, 12, 5) + Math.floor(closes - HOUR) * 60_000,
    );
    expect(coat?.component.getAllSubcomponents('valarm')).toHaveLength(0);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(3);
  });

  it('keeps the name of every event over a re-plan, and numbers those that moved', async () => {
    const { ready, app, setNow, path } = await opened();
    const read = async () => {
      const { feedPath } = await ready();
      const { text } = await app.send('get', feedPath);
      const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
      return events.map((one) => {
        const event = new ICAL.Event(one);
        return { uid: event.uid, start: event.startDate.toString(), sequence: event.sequence };
      });
    };
    const before = await read();
    expect(await read()).toEqual(before);
    setNow(new Date('2027-03-12T16:00:00Z'));
    await app.send('post', `${path}/calendar/replan`);
    await ready();
    const after = await read();
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after.map(({ start }) => start)).not.toEqual(before.map(({ start }) => start));
    for (const [index, { start, sequence }] of after.entries())
      expect(sequence).toBe(start === before[index]?.start ? 0 : 1);
  });

  it('is open to whoever has its key, without the passphrase, and to nobody else', async () => {
    const { app, read, path } = await opened();
    const { feedPath } = await read();
    const { key } = Object.fromEntries(new URL(feedPath, 'http://x').searchParams);
    expect(key).toMatch(/^[\w-]{24}$/);
    await app.refused(app.send('get', `${path}/calendar.ics?key=${key}x`), 403, 'not-allowed');
    await app.refused(app.send('get', `${path}/calendar.ics`), 400, 'bad-request');
    const fresh = (await app.send('post', `${path}/calendar/feed-key`)).body as CalendarAnswer;
    expect(fresh.feedPath).not.toBe(feedPath);
    await app.refused(app.send('get', feedPath), 403, 'not-allowed');

    const locked = createApp(app.db, {
      clientFolder: null,
      allowedHosts: [],
      passphrase: 'four grey planes',
      log: pino({ level: 'silent' }),
    });
    onTestFinished(() => locked.close());
    expect((await request(locked.express).get(`${path}/calendar`)).status).toBe(401);
    const open = await request(locked.express).get(fresh.feedPath);
    expect([open.status, open.text.slice(0, 15)]).toEqual([200, 'BEGIN:VCALENDAR']);
    expect((await request(locked.express).get(feedPath)).status).toBe(403);
    expect((await request(locked.express).post(`${path}/calendar/feed-key`)).status).toBe(401);
  });
});
