import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { LedgerAnswer } from '../../server/http/contract.ts';
import { axeFaults, sidewaysOverflow } from './open-browser.ts';
import { screens, textOf, type } from './open-screen.ts';
import { postChanges } from './post-changes.ts';

/** The account: budgets, payments with their papers, the comparison, and the account on paper. */

const { open, url, expectComplaint } = screens();

const ledgerOf = async (id: string): Promise<LedgerAnswer> =>
  (await (await fetch(`${url()}/api/projects/${id}/ledger`)).json()) as LedgerAnswer;
const current = (page: Page) =>
  page.waitForSelector('.ledger-screen[data-current="yes"]', { timeout: 20_000 });
const dialog = (page: Page) => page.locator('dialog[open]');
const money = (minor: number | null | undefined): string =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format((minor ?? 0) / 100);

/** One transparent pixel, as the PNG specification has it. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
);

describe('a budget', () => {
  it('is typed by heading, compared with the forecast, and goes when it is emptied', async () => {
    const { page, id, stored } = await open('ledger');
    await current(page);
    await type(page, 'budgets/for-sheets/amountMinor', '100');
    const row = page.locator('[data-heading="sheets"]');
    await row.locator('.chip.warning').waitFor();
    const { headings } = await ledgerOf(id);
    const sheets = headings.find((heading) => heading.id === 'sheets');
    await expect
      .poll(() => textOf(row.locator('[data-figure="ledger/headings/sheets/left"]')))
      .toBe(`-${money(-(sheets?.left.value ?? 0))}`.replace('--', '-'));
    await row.locator('[data-figure="ledger/headings/sheets/left"]').click();
    await expect.poll(() => textOf(page.locator('.working-rule'))).toContain('left = budget - forecast');
    await page.keyboard.press('Escape');
    const budget = (await stored()).rows.budgets[0];
    await type(page, `budgets/${budget?.id}/amountMinor`, '');
    await expect.poll(async () => (await stored()).rows.budgets.length).toBe(0);
    await expect.poll(() => row.locator('.chip.warning').count()).toBe(0);
  });
});

describe('a payment', () => {
  it('takes a picture of the receipt and refuses a disguised or a large file with nothing lost', async () => {
    const { page, stored } = await open('ledger');
    expectComplaint(/415|413|400/);
    await current(page);
    await page.locator('[data-add="payments"]').click();
    await dialog(page).locator('[name="amount"]').fill('-5');
    await page.keyboard.press('Enter');
    await expect.poll(() => textOf(dialog(page).getByRole('alert'))).not.toBe('');
    await dialog(page).locator('[name="amount"]').fill('21.20');
    await dialog(page).locator('[name="tax"]').fill('1.20');
    await dialog(page).locator('[name="for"]').selectOption('hardware');
    await dialog(page).locator('[name="receiptNumber"]').fill('R-77');
    const paper = dialog(page).locator('[name="paper"]');
    await paper.setInputFiles({
      name: 'receipt.png',
      mimeType: 'image/png',
      buffer: Buffer.from('#!/bin/sh\n'),
    });
    await dialog(page).getByRole('button', { name: 'Add payment' }).click();
    await expect.poll(() => textOf(dialog(page).getByRole('alert'))).toContain('JPEG, PNG and WebP');
    await paper.setInputFiles({
      name: 'scan.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.alloc(9 * 1024 * 1024),
    });
    await dialog(page).getByRole('button', { name: 'Add payment' }).click();
    await expect.poll(() => textOf(dialog(page).getByRole('alert'))).toContain('up to 8 MB');
    expect((await stored()).rows.payments).toEqual([]);
    await paper.setInputFiles({ name: 'receipt.png', mimeType: 'image/png', buffer: PIXEL });
    await dialog(page).getByRole('button', { name: 'Add payment' }).click();
    await page.waitForSelector('[data-row^="payments/"] .paper-kept a', { timeout: 20_000 });
    await expect.poll(() => textOf(page.locator('.paper-kept a'))).toBe('receipt.png');
    expect((await stored()).rows.payments[0]).toMatchObject({
      amountMinor: 2120,
      taxMinor: 120,
      category: 'hardware',
      receiptNumber: 'R-77',
    });
    const kept = await page.locator('.paper-kept a').getAttribute('href');
    const answer = await fetch(`${url()}${kept}`);
    expect(Buffer.from(await answer.arrayBuffer())).toEqual(PIXEL);
    await expect
      .poll(() => textOf(page.locator('[data-figure="ledger/headings/hardware/paid"]')))
      .toBe('$21.20');
  });

  it('of an order starts from what is open; a refund and a share count as they should', async () => {
    const { page, id, stored } = await open('ledger');
    await postChanges(url(), id, [
      {
        op: 'insert',
        table: 'orders',
        tempId: 'o',
        values: { supplierId: 'timber-yard', date: '2026-01-05' },
      },
      {
        op: 'insert',
        table: 'orderLines',
        values: {
          orderId: 'o',
          productId: '',
          name: 'Oak strip',
          category: 'boards',
          count: 2,
          packAmount: 1,
          unitPriceMinor: 1000,
        },
      },
    ]);
    await page.getByRole('button', { name: 'Pay…' }).click();
    // 2 x 10.00 and 6 % tax.
    await expect.poll(() => dialog(page).locator('[name="amount"]').inputValue()).toBe('21.20');
    await page.keyboard.press('Enter');
    await page.locator('[data-row^="orders/"] .chip.good').waitFor();
    await page.locator('[data-add="payments"]').click();
    await dialog(page).locator('[name="amount"]').fill('10');
    await dialog(page).locator('[name="kind"]').selectOption('refund');
    await dialog(page).locator('[name="share"]').fill('50 %');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await stored()).rows.payments.length).toBe(2);
    const refund = (await stored()).rows.payments[1];
    await expect
      .poll(() => textOf(page.locator(`[data-figure="ledger/payments/${refund?.id}/own"]`)))
      .toBe('-$5.00');
    await page.waitForSelector('.spend');
    await page.locator('.spend input[type="range"]').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => textOf(page.locator('.spend output'))).toContain('$0.00 paid');
  });
});

describe('building beside buying', () => {
  it('reckons own hours at the rate against the ready-made price', async () => {
    const { page, id } = await open('ledger');
    await postChanges(url(), id, [
      { op: 'insert', table: 'workHours', values: { date: '2026-01-05', hours: 3, note: 'sawn' } },
      { op: 'settings', values: { rateMinorPerHour: 4000 } },
    ]);
    await current(page);
    await type(page, 'settings//readyMadeMinor', '5000');
    await current(page);
    const { savedWithLabour } = await ledgerOf(id);
    await expect
      .poll(() => textOf(page.locator('[data-figure="ledger/savedWithLabour"]')))
      .toBe(money(savedWithLabour.value));
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await expect.poll(() => textOf(page.locator('#paper h1'))).toBe('Ledger');
    await expect.poll(() => page.locator('#paper tbody tr').count()).toBeGreaterThan(5);
  });
});

describe('on a phone in the dark', () => {
  it('stays within the page and is clean by axe', async () => {
    const { page, id } = await open('ledger', { width: 390, height: 844, phone: true, mode: 'dark' });
    await postChanges(url(), id, [
      {
        op: 'insert',
        table: 'payments',
        values: { kind: 'payment', date: '2026-01-05', amountMinor: 4000, category: 'other' },
      },
      { op: 'insert', table: 'budgets', values: { category: 'finish', amountMinor: 20_000 } },
    ]);
    await page.waitForSelector('[data-row^="payments/"]', { timeout: 20_000 });
    await page.waitForSelector('.spend');
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
  });
});
