import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { BuyingAnswer, CalendarAnswer } from '../../server/http/contract.ts';
import type { Catalogue } from '../../server/planning/product.ts';
import { axeFaults, sidewaysOverflow } from './open-browser.ts';
import { screens, textOf, type } from './open-screen.ts';
import { postChanges } from './post-changes.ts';

/** From the buy list to orders, deliveries and stock. */

const { open, url, expectComplaint } = screens();

const buying = async (id: string): Promise<BuyingAnswer> =>
  (await (await fetch(`${url()}/api/projects/${id}/buying`)).json()) as BuyingAnswer;
const current = (page: Page) => page.waitForSelector('.buy-screen[data-current="yes"]', { timeout: 20_000 });
const dialog = (page: Page) => page.locator('dialog[open]');

describe('an order', () => {
  it('is made of a supplier’s lines, comes in parts, and goes back in part', async () => {
    const { page, id, stored } = await open('buy');
    await current(page);
    const { baskets, lines } = await buying(id);
    const basket = baskets.find((one) => one.id !== '');
    if (basket === undefined) throw new Error('the demo has nothing to order');
    const panel = page.locator(`[data-basket="${basket.id}"]`);
    await expect.poll(() => panel.locator('tr[data-line]').count()).toBe(basket.lineIds.length);
    await panel.getByRole('button', { name: 'Order these…' }).click();
    const packs = lines.filter((line) => basket.lineIds.includes(line.id)).flatMap((line) => line.packs);
    await expect.poll(() => dialog(page).locator('.order-line').count()).toBe(packs.length);
    await dialog(page).locator('[name="count-0"]').fill('3');
    await dialog(page).locator('[name="price-0"]').fill('12.345');
    await page.keyboard.press('Enter');
    await expect.poll(() => textOf(dialog(page).getByRole('alert'))).toContain('more decimals than USD has');
    await dialog(page).locator('[name="price-0"]').fill('12.34');
    await dialog(page).locator('[name="delivery"]').fill('9');
    await page.keyboard.press('Enter');
    await page.waitForSelector('[data-standing="ordered"]', { timeout: 20_000 });
    await expect.poll(() => panel.count()).toBe(0);
    const { rows } = await stored();
    expect(rows.orders.at(0)).toMatchObject({ supplierId: basket.id, deliveryMinor: 900 });
    expect(rows.orderLines.map(({ count, unitPriceMinor }) => [count, unitPriceMinor])).toEqual(
      packs.map(({ count, priceMinor }, index) => (index === 0 ? [3, 1234] : [count, priceMinor])),
    );

    const first = rows.orderLines[0];
    const row = page.locator(`[data-row="orderLines/${first?.id}"]`);
    await row.getByRole('button', { name: 'Receive' }).click();
    await dialog(page).locator('[name="count-0"]').fill('2');
    await dialog(page).locator('[name="batch-0"]').fill('B7');
    await dialog(page).getByRole('button', { name: 'Received' }).click();
    await page.waitForSelector('[data-standing="part-received"]', { timeout: 20_000 });
    await page.waitForFunction(
      (at) => (document.activeElement as HTMLElement | null)?.dataset.at === at,
      `orderLines/${first?.id}/invoicedPriceMinor`,
    );
    await expect.poll(() => textOf(row.locator('[data-received]'))).toBe('2 of 3');
    await expect.poll(() => textOf(page.locator(`[data-stock="${first?.productId}"]`))).toContain('batch B7');

    await row.getByRole('button', { name: 'Send back' }).click();
    await dialog(page).getByRole('button', { name: 'Sent back' }).click();
    await expect.poll(() => textOf(row)).toContain('1 sent back');
    await type(page, `orderLines/${first?.id}/invoicedPriceMinor`, '13.00');
    await expect.poll(async () => (await stored()).rows.orderLines[0]?.invoicedPriceMinor).toBe(1300);
  });
});

describe('a line', () => {
  it('says in words that it is late, and why so many at one key press, with the numbers the list came with', async () => {
    const { page, id } = await open('buy');
    await current(page);
    const { lines } = await buying(id);
    const late = lines.find(({ urgency }) => urgency === 'late');
    await expect
      .poll(() => textOf(page.locator(`tr[data-line="${late?.id}"] [data-due]`)))
      .toMatch(/^late: /);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    const line = lines.find(({ packs }) => packs.length > 0);
    await page.getByRole('button', { name: `Why this many: ${line?.name}`, exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('.working-value');
    await expect.poll(() => textOf(page.locator('#working-title'))).toBe(`Still to order${line?.name}`);
    await expect.poll(() => textOf(page.locator('.working-rule'))).toContain('to order');
    expect(asked.filter((path) => path.includes('/working'))).toEqual([]);
    await page.keyboard.press('Escape');
    await page.waitForSelector('#working', { state: 'detached' });
    await page.waitForFunction(() => document.activeElement?.textContent?.trim() === 'why this many');
  });
});

describe('the stock', () => {
  it('tells expired leftovers, and takes by hand only what can be read', async () => {
    const { page, id, stored } = await open('buy');
    const { rows } = await stored();
    const can = rows.onHand.find(({ productId }) => productId.includes('shellac'));
    if (can === undefined) throw new Error('the demo has some shellac left');
    await postChanges(url(), id, [
      { op: 'update', table: 'onHand', id: can.id, values: { place: 'shelf 2', bestBefore: '2020-01-31' } },
    ]);
    const row = page.locator(`[data-stock="${can.productId}"]`);
    await expect.poll(() => textOf(row), { timeout: 20_000 }).toContain('expired');
    await expect.poll(() => textOf(row)).toContain('shelf 2');
    await row.getByRole('button', { name: /^Take from/ }).click();
    await dialog(page).locator('[name="amount"]').fill('2');
    await page.keyboard.press('Enter');
    await expect.poll(() => textOf(dialog(page).getByRole('alert'))).not.toBe('');
    await dialog(page).locator('[name="amount"]').fill('8 fl oz');
    await dialog(page).locator('[name="note"]').fill('trial piece');
    await page.keyboard.press('Enter');
    await page.waitForSelector('[data-row^="stockUses/"]', { timeout: 20_000 });
    // One US fluid ounce is 0.0295735295625 L.
    expect((await stored()).rows.stockUses[0]?.amount).toBeCloseTo(0.2365882365, 9);
  });
});

describe('a supplier', () => {
  it('gets its charges in the catalogue, and is not deleted while things name it', async () => {
    const { page } = await open('buy');
    expectComplaint(/409/);
    await current(page);
    const panel = page.locator('[data-basket="hardware-counter"]');
    await panel.getByRole('button', { name: 'Hardware counter', exact: true }).click();
    const charge = page.locator('[data-at="suppliers/hardware-counter/deliveryMinor"]');
    await page.waitForFunction(
      () =>
        (document.activeElement as HTMLElement | null)?.dataset.at ===
        'suppliers/hardware-counter/deliveryMinor',
    );
    await charge.fill('9.50');
    await charge.press('Enter');
    await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Delete Hardware counter' }).click();
    await page.locator('.notice.error', { hasText: 'cannot be deleted' }).waitFor();
    await page.locator('.navigation a', { hasText: 'Buy' }).click();
    await expect
      .poll(() => textOf(panel.locator('[data-figure$="/delivery"]')), { timeout: 20_000 })
      .toBe('$9.50');
  });
});

describe('coverage one got', () => {
  it('is offered beside the catalogue’s, and taken over only when told to', async () => {
    const { page, id } = await open('buy');
    const coat = async () => {
      const { plan } = (await (await fetch(`${url()}/api/projects/${id}/calendar`)).json()) as CalendarAnswer;
      return plan?.tasks.find(({ kind, areaM2 }) => kind === 'seal' && areaM2 > 0);
    };
    await expect.poll(async () => (await coat())?.id, { timeout: 20_000 }).toBeDefined();
    const task = await coat();
    await postChanges(url(), id, [
      {
        op: 'insert',
        table: 'doneTasks',
        values: { taskId: task?.id ?? '', start: '2026-03-21T09:00', end: '2026-03-21T09:40', litres: 0.4 },
      },
    ]);
    await page.waitForSelector('[data-coverage]', { timeout: 20_000 });
    const [offered] = (await buying(id)).coverages;
    const typical = async () => {
      const catalogue = (await (await fetch(`${url()}/api/catalogue`)).json()) as Catalogue;
      return catalogue.products.find((product) => product.id === offered?.id)?.figures.coverage?.typical;
    };
    expect(await typical()).toBe(offered?.catalogueTypical);
    await page.getByRole('button', { name: /^Use my coverage/ }).click();
    await dialog(page).getByRole('button', { name: 'Use these' }).click();
    await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
    expect(await typical()).toBeCloseTo(offered?.got.value ?? 0, 2);
  });
});

describe('on a phone in the dark', () => {
  it('keeps orders within the page and clean by axe', async () => {
    const { page, id } = await open('buy', { width: 390, height: 844, phone: true, mode: 'dark' });
    await postChanges(url(), id, [
      {
        op: 'insert',
        table: 'orders',
        tempId: 'o',
        values: { supplierId: 'finish-counter', date: '2026-01-05' },
      },
      {
        op: 'insert',
        table: 'orderLines',
        values: {
          orderId: 'o',
          productId: '',
          name: 'Brass knob',
          category: 'hardware',
          count: 4,
          packAmount: 1,
        },
      },
    ]);
    await page.waitForSelector('[data-overdue]', { timeout: 20_000 });
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.locator('.order').getByRole('button', { name: 'Receive…' }).tap();
    await dialog(page).waitFor();
    expect(await axeFaults(page)).toEqual([]);
  });
});
