import { describe, expect, it } from 'vitest';
import { focusIn, screens, type } from './open-screen.ts';

/** The settings of a project. */

const { open } = screens();

describe('the settings', () => {
  it('print in other units and keep the millimetres', async () => {
    const { page, stored } = await open('settings');
    const before = await stored();
    const overhang = page.locator('[data-at="settings//overhangMm"]');
    await expect.poll(() => overhang.inputValue()).toMatch(/"$/);
    const answered = page.waitForResponse((answer) => answer.request().method() === 'POST');
    await page.locator('[data-at="settings//units"]').selectOption('metric');
    await answered;
    await page.waitForFunction(() =>
      /mm$/.test(document.querySelector<HTMLInputElement>('[data-at="settings//overhangMm"]')?.value ?? ''),
    );
    const after = await stored();
    expect(after.settings).toEqual({ ...before.settings, units: 'metric' });
    expect(after.plan.parts.map(({ cutLengthMm }) => cutLengthMm)).toEqual(
      before.plan.parts.map(({ cutLengthMm }) => cutLengthMm),
    );
    expect(after.plan.totals).toEqual(before.plan.totals);
  });

  it('take a length in any unit', async () => {
    const { page, stored } = await open('settings');
    await type(page, 'settings//kerfMm', '3.2 mm');
    await expect.poll(async () => (await stored()).settings.kerfMm).toBe(3.2);
    await type(page, 'settings//kerfMm', '1/8');
    // 25.4 / 8.
    await expect.poll(async () => (await stored()).settings.kerfMm).toBe(3.175);
  });

  it('reorder the banding by keyboard, the focus moving along', async () => {
    const { page, stored } = await open('settings');
    const [first, second, ...rest] = (await stored()).settings.bandingOrder;
    await page.locator(`[data-row="order/${first}"] [data-act="down"]`).focus();
    await page.keyboard.press('Alt+ArrowDown');
    await page.waitForFunction(
      (edge) =>
        document.querySelector('.order li:nth-child(2)')?.getAttribute('data-row') === `order/${edge}`,
      first,
    );
    await expect.poll(async () => (await stored()).settings.bandingOrder).toEqual([second, first, ...rest]);
    await focusIn(page, `order/${first}`);
  });

  it('change a named size, and the sum that uses it follows', async () => {
    const { page, stored } = await open('settings');
    await page.locator('[data-add="sizes"]').click();
    await page.waitForFunction(() => document.activeElement?.closest('[data-row^="sizes/"]') !== null);
    const size = (await stored()).rows.sizes.at(-1);
    await type(page, `sizes/${size?.id}/value`, '=2 in + 1/2 in');
    // 2.5 x 25.4 = 63.5.
    await page.waitForFunction(
      (id) => document.querySelector(`[data-figure="sizes/${id}/valueMm"]`)?.textContent === '2 1/2"',
      size?.id,
    );
    await expect
      .poll(async () => (await stored()).plan.sizes.find(({ id }) => id === size?.id)?.valueMm)
      .toBeCloseTo(63.5, 6);
  });

  it('are where the buy list leads to say the tax', async () => {
    const { page: settings } = await open('settings');
    await type(settings, 'settings//taxPercent', '');
    await settings.goto(settings.url().replace(/settings$/, 'buy'));
    await settings.getByRole('button', { name: 'say the tax' }).click();
    await settings.waitForFunction(
      () => document.activeElement?.getAttribute('data-at') === 'settings//taxPercent',
    );
  });
});
