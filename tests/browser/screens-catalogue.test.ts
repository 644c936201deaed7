import { describe, expect, it } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { screens, textOf, type } from './open-screen.ts';

/** The catalogue: evidence, own figures, own products. */

const { open, url, expectComplaint } = screens();

/** A refused request is an error on the console too; some tests ask for one. */
const REFUSED = /status of 4\d\d/;

describe('the catalogue', () => {
  it('finds products, and shows each figure with where it comes from', async () => {
    const { page } = await open('catalogue');
    await page.getByRole('searchbox').fill('oil poly satin');
    await page.waitForFunction(() => document.querySelectorAll('.catalogue-item').length === 1);
    await page.locator('.catalogue-item').click();
    const coverage = page.locator('[data-row="figures/coverage"]');
    await expect
      .poll(() => textOf(coverage.locator('.figure-value')))
      .toMatch(/m²\/L, from [\d.]+ to [\d.]+/);
    await expect.poll(() => textOf(coverage.locator('.evidence'))).toMatch(/label|published|memory|practice/);
    await expect.poll(() => textOf(page.locator('[data-row="figures/potLife"]'))).toContain('not known');
  });

  it('takes a figure of one’s own with its evidence, and the plan follows', async () => {
    expectComplaint(REFUSED);
    const { page, stored } = await open('catalogue');
    const before = await stored();
    const step = before.rows.steps.find(({ kind }) => kind === 'seal');
    const litres = (project: ProjectState) =>
      project.plan.recipes.flatMap(({ coats }) => coats).find(({ stepId }) => stepId === step?.id)?.litres ??
      0;
    const productId = step?.productId ?? '';
    await page.getByRole('searchbox').fill('shellac');
    await page.locator(`[data-product="${productId}"]`).click();
    await page.getByRole('button', { name: 'Change coverage per coat' }).click();
    const form = page.locator('.figure-form');
    await form.locator('[name="low"]').fill('20');
    await form.locator('[name="typical"]').fill('15');
    await form.locator('[name="high"]').fill('30');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.waitForFunction(
      () => (document.querySelector('.figure-form .said')?.textContent ?? '') !== '',
    );
    await expect.poll(() => textOf(form.locator('.said'))).toMatch(/low <= typical <= high/);
    await form.locator('[name="typical"]').fill('25');
    await form.locator('[name="note"]').fill('own trial');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.waitFor({ state: 'detached' });
    const row = page.locator('[data-row="figures/coverage"]');
    await expect.poll(() => textOf(row)).toMatch(/25 m²\/L, from 20 to 30/);
    await expect.poll(() => textOf(row)).toMatch(/your own/);
    await expect.poll(async () => litres(await stored())).toBeLessThan(litres(before));
    await page.waitForFunction(
      () => document.activeElement?.closest('[data-row="figures/coverage"]') !== null,
    );
  });

  it('duplicates, edits a price, retires and restores', async () => {
    const { page } = await open('catalogue');
    await page.locator('[data-product="birch-ply-12"]').click();
    await page.getByRole('button', { name: 'Duplicate' }).click();
    await page.waitForFunction(() =>
      document.querySelector('#product-name')?.textContent?.endsWith('(copy)'),
    );
    const price = page.locator('[data-at*=".priceMinor"]').first();
    await price.fill('99.5');
    await price.press('Enter');
    const said = page.locator('.notice');
    await said.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => price.inputValue()).not.toMatch(/^99\.50?$/);
    await expect.poll(() => textOf(said)).toContain('The values before are back.');
    await price.fill('99.5');
    await price.press('Enter');
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[data-at*=".priceMinor"]')?.value === '99.50',
    );
    await page.getByRole('button', { name: 'Retire' }).click();
    await page.getByRole('button', { name: 'Restore' }).waitFor();
    const listed = page.locator('.catalogue-item', { hasText: '(copy)' });
    await expect.poll(() => listed.count()).toBe(0);
    await page.getByLabel('retired too').check();
    await expect.poll(() => textOf(listed)).toContain('retired');
    await page.getByRole('button', { name: 'Restore' }).click();
    await page.getByRole('button', { name: 'Retire' }).waitFor();
    const { products } = (await (await fetch(`${url()}/api/catalogue`)).json()) as {
      products: { name: string; origin: string; packs: { priceMinor: number | null; basis: string }[] }[];
    };
    const copy = products.find(({ name }) => name.endsWith('(copy)'));
    expect(copy?.origin).toBe('user');
    expect(copy?.packs.some(({ priceMinor, basis }) => priceMinor === 9950 && basis === 'user')).toBe(true);
  });

  it('adds a product of one’s own', async () => {
    const { page } = await open('catalogue');
    await page.getByRole('button', { name: 'Add product' }).click();
    await page.locator('dialog [name="name"]').fill('Test plywood 21 mm');
    await page.locator('dialog [name="kind"]').selectOption('sheet');
    await page.locator('dialog .primary').click();
    await page.waitForFunction(
      () => document.querySelector('#product-name')?.textContent === 'Test plywood 21 mm',
    );
    await expect.poll(() => textOf(page.locator('.product-title'))).toContain('yours');
  });

  it('refuses a short name that is taken, at the field', async () => {
    expectComplaint(REFUSED);
    const { page } = await open('catalogue');
    await page.locator('[data-product="birch-ply-9"]').click();
    const field = page.locator('[data-at="products/birch-ply-9/shortName"]');
    await field.fill('birch 18');
    await field.press('Enter');
    await page.waitForSelector('[data-at="products/birch-ply-9/shortName"][aria-invalid="true"]');
    await expect.poll(() => textOf(page.locator('.said.error:visible'))).toContain('already');
  });

  it('is where the problem of a product leads, and says it', async () => {
    const { page } = await open('settings');
    // No shipped pack is priced in pounds.
    await type(page, 'settings//currency', 'GBP');
    await page.goto(page.url().replace(/settings$/, 'banding'));
    await page.getByRole('button', { name: 'Open in the catalogue' }).first().click();
    await page.waitForSelector('.product .said.warning');
    await expect.poll(() => textOf(page.locator('.product .said.warning').first())).toContain('GBP');
    await page.waitForFunction(() => document.activeElement?.id === 'packs-title');
  });
});
