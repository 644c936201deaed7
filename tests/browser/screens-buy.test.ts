import { describe, expect, it } from 'vitest';
import { screens, textOf, type } from './open-screen.ts';

/** The buy list and its editors. */

const { open } = screens();

describe('the buy list', () => {
  it('shows every line by supplier, and the total with what is not known', async () => {
    const { page, stored } = await open('buy');
    const { plan, rows } = await stored();
    await expect.poll(() => page.locator('tr[data-line]').count()).toBe(plan.buy.lines.length);
    expect(plan.buy.unpricedLines).toBe(0);
    await expect.poll(() => textOf(page.locator('.cost-sum'))).not.toContain('at least');
    const free = rows.extras.find(({ productId }) => productId === '');
    await type(page, `extras/${free?.id}/unitPriceMinor`, '');
    await page.waitForSelector('.cost-total .chip.warning');
    await expect.poll(() => textOf(page.locator('.cost-sum'))).toContain('at least');
    await expect.poll(() => textOf(page.locator('.cost-total .chip'))).toBe('1 line without a price');
    await expect.poll(() => page.locator('.link.no-price').count()).toBe(1);
  });

  it('adds a line of one’s own and what is on hand', async () => {
    const { page, stored } = await open('buy');
    const before = await stored();
    await page.getByRole('button', { name: 'Add line' }).click();
    await page.waitForFunction(
      (count) => document.querySelectorAll('[data-row^="extras/"]').length === count,
      before.rows.extras.length + 1,
    );
    const extra = (await stored()).rows.extras.at(-1);
    await type(page, `extras/${extra?.id}/name`, 'Brass handles');
    await type(page, `extras/${extra?.id}/unitPriceMinor`, '12.50');
    await page.waitForSelector(`tr[data-line="extra-${extra?.id}"]`);
    await expect
      .poll(() => textOf(page.locator(`[data-figure="buying/lines/extra-${extra?.id}/cost"]`)))
      .toBe('$12.50');
    const stain = before.plan.buy.lines.find(
      ({ category, onHand, productId }) => category === 'finish' && onHand === 0 && productId !== null,
    );
    await page.locator('[data-add="onHand"]').click();
    await page.waitForFunction(
      (count) => document.querySelectorAll('[data-row^="onHand/"]').length === count,
      before.rows.onHand.length + 1,
    );
    const row = (await stored()).rows.onHand.at(-1);
    const answered = page.waitForResponse((answer) => answer.request().method() === 'POST');
    await page.locator(`[data-at="onHand/${row?.id}/productId"]`).selectOption(stain?.productId ?? '');
    await answered;
    await type(page, `onHand/${row?.id}/amount`, '1 qt');
    // One US quart is 0.946352946 L.
    await expect
      .poll(async () => (await stored()).plan.buy.lines.find(({ id }) => id === stain?.id)?.onHand)
      .toBeCloseTo(0.946352946, 6);
  });

  it('prints without bars, buttons and editors', async () => {
    const { page } = await open('buy');
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.no-print').first().isVisible()).toBe(false);
    await expect.poll(() => page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
    await expect.poll(() => page.locator('.navigation').isVisible()).toBe(false);
    await expect.poll(() => page.locator('tr[data-line]').first().isVisible()).toBe(true);
  });

  it('writes a message to a supplier, with prices only when they are asked for, ready to paste', async () => {
    const { page } = await open('buy');
    await page.waitForSelector('[data-basket="finish-counter"]', { timeout: 20_000 });
    const panel = page.locator('[data-basket="finish-counter"]');
    const names = await panel.locator('tr[data-line] .item').allTextContents();
    await panel.getByRole('button', { name: 'Message…' }).press('Enter');
    const dialog = page.locator('dialog[open]');
    const text = () => dialog.locator('textarea').inputValue();
    await expect.poll(text).toContain('Order for Reading-room window seat');
    const plain = await text();
    for (const name of names) expect(plain).toContain(name.replaceAll(/\s+/g, ' ').trim());
    expect(plain).not.toContain('$');
    expect(plain).toContain('Please give the price of each line');
    await dialog.getByRole('checkbox').press('Space');
    await expect.poll(text).toContain('before tax');
    await dialog.getByRole('checkbox').press('Space');
    await expect.poll(text).toBe(plain);
    // What is written by hand is what is copied.
    await dialog.locator('textarea').fill(`${plain}\nThank you.`);
    await dialog.getByRole('button', { name: 'Copy' }).click();
    await expect.poll(() => textOf(dialog.getByRole('status'))).toBe('Copied.');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(`${plain}\nThank you.`);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  });
});
