import { describe, expect, it } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { countOf, focusIn, screens, textOf, type } from './open-screen.ts';

/** The finish screen, worked as a person works it. */

const { open, url } = screens();

describe('the finish screen', () => {
  it('shows every step of every recipe, and what each coat takes', async () => {
    const { page, stored } = await open('finish');
    const { rows, plan } = await stored();
    await expect.poll(() => page.locator('.step').count()).toBe(rows.steps.length);
    const wet = plan.recipes.flatMap(({ coats }) => coats.filter(({ method }) => method !== null));
    await expect.poll(() => page.locator('.coat').count()).toBe(wet.length);
    await expect
      .poll(() => page.locator('.range circle').count())
      .toBe(wet.filter(({ litres }) => litres !== null).length);
  });

  it('offers usual recipes to begin with, each with its steps in words', async () => {
    const { page, stored } = await open('finish');
    const before = (await stored()).rows.recipes.length;
    await page.getByRole('button', { name: 'Usual recipes' }).click();
    const offer = page.getByRole('dialog').getByRole('button', { name: 'Hard-wax oil' });
    expect(await textOf(offer)).toContain('hard-wax oil ×2 · Cure');
    await offer.press('Enter');
    await countOf(page, '.recipe', before + 1);
    expect((await stored()).rows.recipes.at(-1)?.name).toBe('Hard-wax oil');
  });

  it('keeps the cautions in sight', async () => {
    const { page } = await open('finish');
    const cautions = await textOf(page.locator('.cautions'));
    for (const word of ['safety data sheet', 'spark', 'respirator', 'rags', 'isocyanates', 'Local codes'])
      expect(cautions).toContain(word);
    expect(cautions).not.toMatch(/\bsafe\b/i);
    await expect.poll(() => page.locator('.cautions').isVisible()).toBe(true);
  });

  it('reckons anew when a step gets another coat: litres, buy list and undo follow', async () => {
    const { page, stored } = await open('finish');
    const before = await stored();
    const step = before.rows.steps.find(({ kind, coats }) => kind === 'topcoat' && coats === 3);
    if (step === undefined) throw new Error('the demo has no topcoat of three coats');
    await type(page, `steps/${step.id}/coats`, '4');
    await countOf(page, `[data-row="steps/${step.id}"] .coat`, 4);
    const after = await stored();
    const need = (project: ProjectState) =>
      project.plan.needs.find(({ id }) => id === step.productId)?.need ?? 0;
    expect(after.plan.totals.litres ?? 0).toBeGreaterThan(before.plan.totals.litres ?? 0);
    expect(need(after)).toBeGreaterThan(need(before));
    await page.goto(`${url()}/#/p/${after.id}/buy`);
    const shown = page.locator(`[data-figure="buying/lines/${step.productId}/need"]`);
    await page.waitForSelector('.buy-screen[data-current="yes"]');
    const more = await textOf(shown);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.waitForFunction(
      ([selector, text]) => document.querySelector(selector as string)?.textContent !== text,
      [`[data-figure="buying/lines/${step.productId}/need"]`, more] as const,
    );
    await expect.poll(async () => (await stored()).plan.totals.litres).toBe(before.plan.totals.litres);
  });

  it('refuses what is no number of coats at the field, keeps what was typed, and gives it up on Escape', async () => {
    const { page, stored } = await open('finish');
    const { rows, revision } = await stored();
    const step = rows.steps.find(({ kind }) => kind === 'topcoat');
    const field = page.locator(`[data-at="steps/${step?.id}/coats"]`);
    await field.fill('2.5');
    await field.press('Enter');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    const said = page.locator(`#${await field.getAttribute('aria-describedby')}`);
    await expect.poll(() => textOf(said)).toContain('2.5 must be a whole number');
    await expect.poll(() => field.inputValue()).toBe('2.5');
    await expect.poll(async () => (await stored()).revision).toBe(revision);
    await field.press('Escape');
    await expect.poll(() => field.inputValue()).toBe(String(step?.coats));
    await expect.poll(() => field.getAttribute('aria-invalid')).toBeNull();
  });

  it('adds, reorders and removes steps by keyboard, and the focus stays with the step', async () => {
    const { page, stored } = await open('finish');
    const before = await stored();
    const recipe = before.rows.recipes[0];
    if (recipe === undefined) throw new Error('the demo has no recipe');
    await page
      .locator('.recipe')
      .first()
      .getByRole('button', { name: 'dust off', exact: true })
      .press('Enter');
    await countOf(page, '.step', before.rows.steps.length + 1);
    const added = (await stored()).rows.steps.filter(({ recipeId }) => recipeId === recipe.id).at(-1);
    const row = page.locator(`[data-row="steps/${added?.id}"]`);
    await focusIn(page, `steps/${added?.id}`);
    await row.locator('[data-act="up"]').focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      (id) =>
        document.querySelector('.recipe .step:nth-last-child(2)')?.getAttribute('data-row') === `steps/${id}`,
      added?.id,
    );
    await focusIn(page, `steps/${added?.id}`);
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-act'))).toBe('up');
    await row.locator('[data-act="remove"]').focus();
    await page.keyboard.press('Enter');
    await countOf(page, '.step', before.rows.steps.length);
    await page.waitForFunction(() => document.activeElement?.getAttribute('data-act') === 'remove');
    await expect
      .poll(async () => (await stored()).rows.steps.map(({ id }) => id))
      .toEqual(before.rows.steps.map(({ id }) => id));
  });

  it('leaves a word half typed alone when another window saves', async () => {
    const { page, id, stored } = await open('finish');
    const { rows, revision } = await stored();
    const [recipe, other] = rows.recipes;
    const field = page.locator(`[data-at="recipes/${recipe?.id}/name"]`);
    await field.fill('Half a wor');
    const answer = await fetch(`${url()}/api/projects/${id}/changes`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        revision,
        changes: [{ op: 'update', table: 'recipes', id: other?.id, values: { name: 'Renamed elsewhere' } }],
      }),
    });
    expect(answer.status).toBe(200);
    await page.waitForFunction(
      (at) => document.querySelector<HTMLInputElement>(`[data-at="${at}"]`)?.value === 'Renamed elsewhere',
      `recipes/${other?.id}/name`,
    );
    await expect.poll(() => field.inputValue()).toBe('Half a wor');
  });

  it('chooses a blend for a step and mixes it in the blends table', async () => {
    const { page, stored } = await open('finish');
    const { rows } = await stored();
    const component = rows.components[0];
    const share = (project: ProjectState) =>
      project.plan.needs.find(({ id }) => id === component?.productId)?.need ?? 0;
    const before = share(await stored());
    await type(page, `components/${component?.id}/parts`, String((component?.parts ?? 0) + 2));
    await expect.poll(async () => share(await stored())).toBeGreaterThan(before);
  });

  it('opens the finer points of a step when a problem leads into them', async () => {
    const { page, stored } = await open('finish');
    const step = (await stored()).rows.steps.find(({ kind }) => kind === 'condition');
    const row = page.locator(`[data-row="steps/${step?.id}"]`);
    await row.getByRole('button', { name: /^Thinning and losses/ }).click();
    await type(page, `steps/${step?.id}/thinning`, '10 %');
    await page.waitForSelector(`[data-at="steps/${step?.id}/thinnerId"][data-severity="warning"]`);
    await row.getByRole('button', { name: /^Thinning and losses/ }).click();
    await expect.poll(() => textOf(row)).toContain('no thinner is chosen');
    await page.locator('#problems-button').click();
    await page.locator('#problems button', { hasText: 'no thinner is chosen' }).click();
    await page.waitForFunction(
      (at) => document.activeElement?.getAttribute('data-at') === at,
      `steps/${step?.id}/thinnerId`,
    );
  });
});
