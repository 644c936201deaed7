import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { importProject } from './import-project.ts';
import { axeFaults } from './open-browser.ts';
import { screens, textOf, textsOf, type } from './open-screen.ts';

/** The air screen on small jobs whose calendars are planned in a moment. */

const { open, url } = screens();
const PATIENCE = { timeout: 20_000 };

const bench = JSON.parse(
  readFileSync(new URL('../../db/demo/varnished-hall-bench.json', import.meta.url), 'utf8'),
) as { readonly settings: object };

/** One coat of one recipe on one part: planned at once. */
async function job(productId: string, settings: object = {}): Promise<string> {
  const project = {
    ...bench,
    // Warm enough for water-based coats, so that the calendar fits.
    settings: { ...bench.settings, dayC: 21, nightC: 20, ...settings },
    parts: [
      {
        id: '1',
        name: 'Shelf',
        quantity: '2',
        length: '900 mm',
        width: '300 mm',
        materialId: 'birch-ply-18',
        showRecipeId: 'coat',
      },
    ],
    sizes: [],
    recipes: [{ id: 'coat', name: 'Coat', steps: [{ id: '1', kind: 'topcoat', productId }] }],
  };
  return (await importProject(url(), project)).id;
}

it('answers in words, with the curves of the day and figures that open', async () => {
  const projectId = await job('water-poly-satin');
  const { page } = await open('air', { projectId });
  await page.waitForSelector('.air-screen[data-current="yes"]', PATIENCE);
  await expect
    .poll(() => textOf(page.locator('#air-verdict')), PATIENCE)
    .toMatch(/^Within the limits entered, with 300 m³\/h of fresh air\.$/);
  // The cautions stand beside every answer, and no answer is a clean bill.
  expect(await textOf(page.locator('.air-cautions'))).toContain('safety data sheet');
  expect(await textOf(page.locator('.verdict'))).not.toMatch(/\bsafe\b/i);
  await page.waitForSelector('.air-drawing .health-line');
  await page.waitForSelector('.air-drawing .health-limit', { state: 'attached' });

  expect(await axeFaults(page)).toEqual([]);

  // The slider walks through the day by keyboard.
  const slider = page.locator('.look-at input');
  await slider.focus();
  await page.keyboard.press('Home');
  await expect
    .poll(() => textOf(page.locator('.air-plot output')), PATIENCE)
    .toMatch(/^00:00: 0 × the health/);
  await page.keyboard.press('End');
  await expect
    .poll(() => textOf(page.locator('.air-plot output')), PATIENCE)
    .not.toMatch(/^00:00: 0 × the health limit, 0 % of the explosive limit, /);

  await page.locator('[data-figure="air/health/needed"]').click();
  await page.waitForSelector('#working-title', PATIENCE);
  await expect.poll(() => textOf(page.locator('#working-title')), PATIENCE).toContain('Fresh air for health');
  await expect
    .poll(() => textsOf(page.locator('.working-notes li, .working-rule')), PATIENCE)
    .not.toEqual([]);
});

it('names the air that is needed, and suggests only what holds', async () => {
  const projectId = await job('oil-poly-satin', { fanM3PerHour: 60 });
  const { page, stored } = await open('air', { projectId, mode: 'dark' });
  await expect
    .poll(() => textOf(page.locator('#air-verdict')), PATIENCE)
    .toMatch(/health limit: the room needs \d+ m³\/h of fresh air and gets 30 m³\/h\.$/);
  await expect.poll(() => textOf(page.locator('.suggestions')), PATIENCE).toContain('Bring in');
  await page.waitForSelector('.air-drawing .health-line');
  expect(await axeFaults(page)).toEqual([]);
  // Mineral spirits: no explosive limit is published, and the answer says so and leads to where it is entered.
  const missing = page.locator('.missing');
  expect(await textOf(missing)).toContain('The lower explosive limit of mineral spirits is not known.');
  // A fan as strong as suggested brings the air under the limit that is known.
  const rated = /rated at (\d+)/.exec(await textOf(page.locator('.suggestions')))?.[1] ?? '';
  await type(page, 'settings//fanM3PerHour', rated);
  expect((await stored()).settings.fanM3PerHour).toBe(Number(rated));
  await expect
    .poll(() => textOf(page.locator('#air-verdict')), PATIENCE)
    .toBe('Cannot tell: one thing is not known.');

  // The calendar refuses to keep under a limit while something is not known, and says what.
  await page.locator('[data-at="settings//keepUnderHealthLimit"]').click();
  await expect.poll(async () => (await stored()).settings.keepUnderHealthLimit, PATIENCE).toBe(true);
  await page.locator('.navigation a', { hasText: 'Calendar' }).click();
  await expect
    .poll(() => textOf(page.locator('.standing .said-list')), PATIENCE)
    .toContain('Batches cannot be kept under the health limit: the lower explosive limit of mineral spirits');
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect.poll(async () => (await stored()).settings.keepUnderHealthLimit, PATIENCE).toBe(false);
  await page.locator('.navigation a', { hasText: 'Air' }).click();
  await missing.getByRole('button', { name: 'Enter it' }).click();
  await page.waitForSelector('.screen[data-screen="catalogue"] #solvents-title', PATIENCE);
  await expect.poll(() => page.evaluate(() => document.activeElement?.id), PATIENCE).toBe('solvents-title');
});

it('cannot tell without the room, and says where to enter it', async () => {
  const projectId = await job('water-poly-satin', { roomLengthM: null, units: 'us' });
  const { page, stored } = await open('air', { projectId });
  await expect
    .poll(() => textOf(page.locator('#air-verdict')), PATIENCE)
    .toBe('Cannot tell: one thing is not known.');
  await page.locator('.missing').getByRole('button', { name: 'Enter it' }).click();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-at')), PATIENCE)
    .toBe('settings//roomLengthM');
  await type(page, 'settings//roomLengthM', '18');
  // Feet in a US project: 18 x 0.3048.
  expect((await stored()).settings.roomLengthM).toBeCloseTo(5.4864, 9);
  await expect
    .poll(() => textOf(page.locator('#air-verdict')), PATIENCE)
    .toMatch(/^Within the limits entered, with 177 cfm of fresh air\.$/);
});

it('fits a phone, however many days there are to choose from', async () => {
  // The window seat of the demos: coats on more than twenty days.
  const { page } = await open('air', { projectId: '2', width: 390, height: 844, phone: true });
  await page.waitForSelector('.air-drawing .health-line', { timeout: 60_000 });
  await expect.poll(() => page.locator('.air-days label').count(), PATIENCE).toBeGreaterThan(10);
  const drawing = await page.locator('.air-drawing').boundingBox();
  expect(drawing?.width).toBeLessThan(390);
  const spare = () =>
    page.evaluate(() => {
      const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
      return [scrollWidth - clientWidth, scrollHeight - clientHeight];
    });
  await expect.poll(spare, PATIENCE).toEqual([0, 0]);
});
