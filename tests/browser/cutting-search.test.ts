import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { CuttingSearchAnswer, ProjectState } from '../../server/http/contract.ts';
import { hardCutting } from '../http/hard-cutting.ts';
import { type StartedApp, startApp } from '../http/open-app.ts';
import { importProject, readProject } from './import-project.ts';
import {
  axeFaults,
  type OpenBrowser,
  openBrowser,
  sidewaysOverflow,
  type Visit,
  type VisitOptions,
} from './open-browser.ts';

let app: StartedApp;
let browser: OpenBrowser;
let visits: Visit[] = [];

beforeAll(async () => {
  app = await startApp({ PLYWRIGHT_CUTTING_SECONDS: '3' });
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await app?.close();
});
afterEach(async () => {
  const complaints = visits.flatMap((visit) => visit.complaints);
  for (const visit of visits) await visit.close();
  visits = [];
  expect(complaints).toEqual([]);
});

async function cutting(document: object, options: VisitOptions = {}) {
  const state = await importProject(app.url, document);
  const visit = await browser.visit(`${app.url}/#/p/${state.id}/cutting`, options);
  visits.push(visit);
  await visit.page.waitForSelector('.cutting-screen .layout');
  return { page: visit.page, state };
}

const cost = ({ plan }: ProjectState): number => plan.materials[0]?.costMinor ?? 0;

describe('the cutting screen during a search', () => {
  it('says that it searches, shows the better plan when there is one, and offers to search longer', async () => {
    const { page, state } = await cutting(hardCutting());
    const strip = page.locator('.cutting-search');
    await strip.and(page.locator('[data-state="running"]')).waitFor();
    await expect
      .poll(() => strip.locator('p').textContent())
      .toContain('Searching for a cheaper plan. Best so far');
    expect(await axeFaults(page)).toEqual([]);

    // The number on the screen goes down by itself, without an edit.
    // The better plan may be there before it is looked for, so the price is held against the one first sent.
    const money = page.locator('.stats dd').filter({ hasText: '€' }).first();
    const shownMinor = async () =>
      Math.round(Number((await money.textContent())?.replace(/[^\d.]/g, '')) * 100);
    await expect.poll(shownMinor, { timeout: 20_000 }).toBeLessThan(cost(state));
    const now = await readProject(app.url, state.id);
    expect(cost(now)).toBeLessThan(cost(state));
    expect(now.revision).toBe(state.revision);

    // It ends proven, which the heading says, or idle with a way to go on.
    const ended = '.cutting-search[data-state="idle"], .chip.good';
    await page.waitForSelector(ended, { timeout: 20_000 });
    const longer = page.getByRole('button', { name: 'Search longer' });
    if ((await longer.count()) > 0) {
      await longer.click();
      await strip.and(page.locator('[data-state="running"]')).waitFor();
      await page.getByRole('button', { name: 'Stop' }).click();
      // Stopped, or proven in the moment before.
      await page.waitForSelector(ended);
    }
  });

  it('lists what is worth knowing, and leads to the part', async () => {
    // Two doors of 1219 mm and a saw cut of 3.2 are 1.2 mm too long for a sheet of 2440 mm.
    const { page } = await cutting({
      format: 'plywright-project',
      version: 1,
      settings: { name: 'Two doors', units: 'metric', currency: 'EUR', kerfMm: 3.2, sheetTrimMm: 0 },
      parts: [
        {
          id: 'door',
          name: 'Door',
          quantity: '2',
          length: '1219',
          width: '1200',
          materialId: 'birch-ply-18',
        },
      ],
    });
    const advice = page.getByRole('heading', { name: 'Worth knowing' }).locator('..');
    await advice.getByText('“Door” 1 mm shorter: 1 sheet in place of').waitFor({ timeout: 20_000 });
    expect(await axeFaults(page)).toEqual([]);
    await advice.getByRole('button', { name: 'Go to the part' }).first().click();
    await page.waitForSelector('.screen[data-screen="parts"] .ag-row');
  });

  it('fits a phone, light and dark', async () => {
    for (const mode of ['light', 'dark'] as const) {
      const { page } = await cutting(hardCutting(1), { width: 390, height: 844, phone: true, mode });
      await page.waitForSelector('.cutting-search[data-state="running"]');
      await expect.poll(() => sidewaysOverflow(page)).toBe(0);
      expect(await axeFaults(page)).toEqual([]);
      // The other need not wait for its turn.
      await page.getByRole('button', { name: 'Stop' }).click();
    }
  });

  it('says that a search has broken down, and tries again when asked', async () => {
    const state = await importProject(app.url, hardCutting(2));
    const visit = await browser.visit(`${app.url}/#/p/${state.id}/settings`);
    visits.push(visit);
    const { page } = visit;
    // What the server would say of it, later than all that it says by itself.
    await page.route('**/cutting/search', async (route) => {
      if (route.request().method() !== 'GET') return route.continue();
      const told = (await (await route.fetch()).json()) as CuttingSearchAnswer;
      const materials = told.materials.map((one) => ({ ...one, state: 'failed' }));
      return route.fulfill({ json: { ...told, sequence: 1e9, materials } });
    });
    await page.goto(`${app.url}/#/p/${state.id}/cutting`);
    await page.reload();
    const strip = page.locator('.cutting-search[data-state="failed"]');
    await strip.waitFor({ timeout: 20_000 });
    await expect.poll(() => strip.locator('p').textContent()).toContain('has broken down');
    expect(await axeFaults(page)).toEqual([]);
    const asked = page.waitForRequest(
      (request) => request.method() === 'POST' && request.url().endsWith('/cutting/search'),
    );
    await strip.getByRole('button', { name: 'Try again' }).click();
    expect((await asked).postDataJSON()).toEqual({ materialId: 'birch-ply-18' });
  });
});
