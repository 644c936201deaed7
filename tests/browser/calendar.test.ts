import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { calendarDocument } from '../http/calendar-document.ts';
import { importProject } from './import-project.ts';
import { axeFaults, sidewaysOverflow, type VisitOptions } from './open-browser.ts';
import { type Opened, screens, textOf, textsOf, type as typeInto } from './open-screen.ts';

/** The calendar screen, on a job of one sanding and two coats, open every day from 9:00 to 17:00. */

const SLOW = { timeout: 20_000 };
const PHONE = { width: 390, height: 844, phone: true } as const;

const all = screens();

/** The small job, once its plan is there. */
async function openJob(options: VisitOptions = {}, changes: object = {}): Promise<Opened> {
  const { id } = await importProject(all.url(), { ...calendarDocument, ...changes });
  const opened = await all.open('calendar', { projectId: id, ...options });
  await opened.page.waitForSelector('.timeline [data-task]', SLOW);
  return opened;
}

const bar = (page: Page, place: number) => page.locator('.timeline [data-task]').nth(place);
const focused = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.activeElement?.getAttribute('data-task') ?? null);

/** The dialog of the task with this title. */
async function openTask(page: Page, title: string): Promise<void> {
  await page.locator('[data-open-task]', { hasText: title }).first().click();
  await page.waitForSelector('dialog .task-dialog', SLOW);
}

const startField = 'dialog form[aria-label="Pin the start"] [name=start]';
const doneForm = 'dialog form[aria-label="Mark as done"]';

describe('the timeline', () => {
  it('leads the keyboard from bar to bar, says what holds each, and opens one', async () => {
    const { page } = await openJob();
    const ids = await page
      .locator('.timeline [data-task]')
      .evaluateAll((bars) => bars.map((one) => one.getAttribute('data-task')));
    expect(ids).toHaveLength(3);
    await bar(page, 0).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => focused(page), SLOW).toBe(ids[1]);
    await page.keyboard.press('End');
    await expect.poll(() => focused(page), SLOW).toBe(ids[2]);
    await expect.poll(() => textOf(page.locator('.task-card .task-why')), SLOW).toContain('Held by drying');
    await page.keyboard.press('Home');
    await expect.poll(() => focused(page), SLOW).toBe(ids[0]);
    await page.keyboard.press('Enter');
    await page.waitForSelector('dialog .task-dialog', SLOW);
    await expect.poll(() => textOf(page.locator('dialog h2')), SLOW).toBe('Sand');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog .task-dialog').count(), SLOW).toBe(0);
  });

  it('pins a bar where it is dragged to, and plans the rest around it', async () => {
    const { page, stored } = await openJob();
    const last = bar(page, 2);
    await last.scrollIntoViewIfNeeded();
    const box = await last.locator('.bar').boundingBox();
    if (box === null) throw new Error('the bar is not drawn');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y, { steps: 4 });
    await expect.poll(() => page.locator('.timeline .ghost').count(), SLOW).toBe(1);
    await page.mouse.up();
    await expect.poll(async () => (await stored()).rows.pins.length, SLOW).toBe(1);
    const [pin] = (await stored()).rows.pins;
    expect(pin?.taskId).toBe(await last.getAttribute('data-task'));
    expect(pin?.start).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d[05]$/);
  });
});

describe('a task', () => {
  it('starts when it is told to, until it is unpinned', async () => {
    const { page, stored } = await openJob();
    await openTask(page, 'Sand');
    const date = (await page.locator(startField).inputValue()).slice(0, 10);
    const next = new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
    await page.locator(startField).fill(`${next}T10:15`);
    await page.locator('dialog button', { hasText: 'Pin' }).first().click();
    await page.waitForSelector('.task-table tr[data-state=pinned]', SLOW);
    const [pin] = (await stored()).rows.pins;
    expect(pin?.start).toBe(`${next}T10:15`);
    await expect
      .poll(() => textOf(page.locator('.task-table tr[data-state=pinned]')), SLOW)
      .toContain('10:15');
    await openTask(page, 'Sand');
    await expect
      .poll(() => textOf(page.locator('dialog .task-why')), SLOW)
      .toContain('You pinned it to this start.');
    await page.locator('dialog button', { hasText: 'Unpin' }).click();
    await expect.poll(() => page.locator('.task-table tr[data-state=pinned]').count(), SLOW).toBe(0);
    expect((await stored()).rows.pins).toEqual([]);
  });

  it('is done at the times and with the litres given, and the rest is planned from them', async () => {
    const { page, stored } = await openJob();
    await openTask(page, 'Topcoat 1');
    const began = await page.locator(`${doneForm} [name=start]`).inputValue();
    await page.locator(`${doneForm} [name=end]`).fill(began.replace(/T.*/, 'T00:00'));
    await page.locator(`${doneForm} button.button`).first().click();
    await expect.poll(() => textOf(page.locator('dialog .fault')), SLOW).toContain('before it began');
    await page.locator(`${doneForm} [name=end]`).fill(began.replace(/:(\d\d)$/, ':59'));
    await page.locator(`${doneForm} [name=litres]`).fill('250 mL');
    await page.locator(`${doneForm} button.button`).first().click();
    await page.waitForSelector('.task-table tr[data-state=done]', SLOW);
    const [done] = (await stored()).rows.doneTasks;
    expect(done?.start).toBe(began);
    expect(done?.litres).toBeCloseTo(0.25, 9);
    // Sanding comes before and was not ticked off: it is taken as done, and that is said.
    await page.waitForSelector('.task-table tr[data-state=assumed]', SLOW);
    await expect
      .poll(() => textsOf(page.locator('.said-list .said')), SLOW)
      .toContainEqual(expect.stringContaining('is not ticked off'));
  });
});

describe('a window that has closed', () => {
  it('is said, with the way out, when the coat is not ticked off', async () => {
    const { page } = await openJob();
    // Five days later, as the server's clock would tell.
    await page.route(/\/calendar(\?|$)/, async (route) => {
      const answer = await route.fetch();
      const body = (await answer.json()) as { nowMinute: number };
      await route.fulfill({ json: { ...body, nowMinute: body.nowMinute + 5 * 1440 } });
    });
    await page.reload();
    await page.waitForSelector('.standing-box.error', SLOW);
    const words = await textOf(page.locator('.standing-box.error'));
    expect(words).toContain('A window has closed');
    expect(words).toContain('Topcoat 2');
    expect(words).toContain('the next window, or scuff-sanding first');
    await page.unrouteAll({ behavior: 'wait' });
    await page.locator('.standing-box.error button', { hasText: 'plan the rest from now' }).click();
    await page.waitForSelector('.standing-box.error', { state: 'detached', ...SLOW });
  });
});

describe('the plan elsewhere', () => {
  it('is on paper a page for each day', async () => {
    const { page } = await openJob();
    const days = new Set(await textsOf(page.locator('.task-table tbody td:first-child')));
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#calendar-paper .paper-day').count()).toBe(days.size);
    expect(await page.locator('#calendar-paper .paper-day').first().isVisible()).toBe(true);
    expect(await page.locator('.calendar-screen').isVisible()).toBe(false);
    await expect.poll(() => textOf(page.locator('#calendar-paper')), SLOW).toContain('Topcoat 2');
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('#calendar-paper').count()).toBe(0);
  });

  it('is at an address that calendar programs read', async () => {
    const { page } = await openJob();
    await page.locator('button', { hasText: 'Subscribe' }).click();
    const address = await page.locator('.feed-address').inputValue();
    const answer = await fetch(address);
    expect(answer.headers.get('content-type')).toContain('text/calendar');
    expect((await answer.text()).match(/BEGIN:VEVENT/g)).toHaveLength(3);
  });
});

describe('the shop', () => {
  it('is planned anew when its hours are changed', async () => {
    const { page, stored } = await openJob();
    const before = await textsOf(page.locator('.task-table tbody tr'));
    const { shopHours } = (await stored()).rows;
    // Every day but one is closed by taking its window away; the last is opened later.
    for (const { id } of shopHours.slice(1)) {
      await page.locator(`[data-row="shopHours/${id}"] button`).first().click();
      await expect.poll(() => page.locator(`[data-row="shopHours/${id}"]`).count(), SLOW).toBe(0);
    }
    await typeInto(page, `shopHours/${shopHours[0]?.id}/from`, '11:00');
    await expect.poll(() => textsOf(page.locator('.task-table tbody tr')), SLOW).not.toEqual(before);
    await expect
      .poll(() => textsOf(page.locator('.task-table tbody td:first-child')), SLOW)
      .toSatisfy((days: string[]) => days.length > 0 && days.every((day) => day.startsWith('Mon')));
  });

  it('that cannot do the job says what is in the way and offers ways out', async () => {
    const { id } = await importProject(all.url(), {
      ...calendarDocument,
      settings: { ...calendarDocument.settings, dayC: 5 },
    });
    const { page } = await all.open('calendar', { projectId: id });
    await page.waitForSelector('.standing-box.error', SLOW);
    await expect.poll(() => textOf(page.locator('.standing-box.error')), SLOW).toMatch(/°C/);
    await page.locator('.standing-box.error button[aria-label*="warmer"]').first().click();
    await page.waitForSelector('.timeline [data-task]', SLOW);
  });
});

describe('on every screen', () => {
  it('fits a phone, day by day', async () => {
    const { page } = await openJob({ ...PHONE, mode: 'dark' });
    await page.waitForSelector('.agenda .agenda-task', SLOW);
    await expect.poll(() => sidewaysOverflow(page), SLOW).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.locator('.agenda .agenda-task').first().click();
    await page.waitForSelector('dialog .task-dialog', SLOW);
    await expect.poll(() => sidewaysOverflow(page), SLOW).toBe(0);
  });

  it.each(['light', 'dark'] as const)('has no faults of access in the %s', async (mode) => {
    const { page } = await openJob({ mode });
    expect(await axeFaults(page)).toEqual([]);
  });
});
