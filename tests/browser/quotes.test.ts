import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { importProject } from './import-project.ts';
import { axeFaults, sidewaysOverflow } from './open-browser.ts';
import { countOf, focusIn, screens, textOf, type } from './open-screen.ts';
import { postChanges } from './post-changes.ts';

/** Quotes: the form, the figures, and the sheet that a customer gets. */

const { open, url } = screens();

const cabinet = JSON.parse(
  readFileSync(new URL('../../db/demo/bicycle-workshop-wall-cabinet.json', import.meta.url), 'utf8'),
) as object;

const openCabinet = async (options = {}) =>
  open('quotes', { projectId: (await importProject(url(), cabinet)).id, ...options });

const quoteOf = ({ rows }: ProjectState) => {
  const [quote] = rows.quotes;
  if (quote === undefined) throw new Error('the project has no quote');
  return quote;
};

/** The sheet as it goes to the printer: print events are what the print dialog sends. */
async function printed(page: Page): Promise<string> {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.waitForSelector('#paper .customer-sheet', { state: 'attached' });
  const html = await page.locator('#paper').evaluate((paper) => paper.outerHTML);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  return html;
}

describe('a quote', () => {
  it('is reckoned from what is typed, and each figure opens its working', async () => {
    const { page, stored } = await openCabinet();
    const { id } = quoteOf(await stored());
    await type(page, `quotes/${id}/materialsMinor`, '400');
    await type(page, `quotes/${id}/markupPercent`, '15 %');
    await type(page, `quotes/${id}/hours`, '20 h');
    await type(page, `quotes/${id}/rateMinorPerHour`, '45');
    // By hand: 400.00 + 60.00 + 900.00 = 1360.00; 20 % = 272.00; 1632.00.
    const shown = (field: string) =>
      textOf(page.locator(`.quote-figures [data-figure="quotes/${id}/${field}"]`));
    await expect.poll(() => shown('total')).toBe('€1,632.00');
    expect([await shown('markup'), await shown('labour'), await shown('net'), await shown('tax')]).toEqual([
      '€60.00',
      '€900.00',
      '€1,360.00',
      '€272.00',
    ]);
    await page.locator(`.quote-figures [data-figure="quotes/${id}/total"]`).click();
    await page.waitForSelector('#working [data-figure$="/net"]');
    await page.locator('#working [data-figure$="/net"]').click();
    await expect
      .poll(() => textOf(page.locator('#working .working-rule')))
      .toBe('net = materials + markup + labour');
  });

  it('prints what the customer may see and nothing inner, in whole lines of text and in its markup', async () => {
    const { page, stored } = await openCabinet();
    const { id } = quoteOf(await stored());
    await type(page, `quotes/${id}/materialsMinor`, '411.17');
    await type(page, `quotes/${id}/markupPercent`, '13');
    await type(page, `quotes/${id}/hours`, '17');
    await type(page, `quotes/${id}/rateMinorPerHour`, '29.03');
    // 411.17; 13 % = 53.4521 -> 53.45; 17 x 29.03 = 493.51; net 958.13; 20 % = 191.626 -> 191.63; 1149.76.
    await expect.poll(() => textOf(page.locator('.quote-figures .in-all'))).toContain('€1,149.76');
    const plain = await printed(page);
    expect(plain).toContain('€1,149.76');
    expect(plain).toContain('€958.13');
    for (const secret of ['411.17', '53.45', '493.51', '29.03', '464.62', 'arkup', 'figure', ' h at '])
      expect(plain).not.toContain(secret);
    const answered = page.waitForResponse((answer) => answer.url().endsWith(`/quotes/${id}`));
    await page.locator(`[data-at="quotes/${id}/shown"]`).selectOption('work');
    await answered;
    await expect.poll(() => page.locator('.customer-sheet').first().textContent()).toContain('Work');
    const broken = await printed(page);
    // Materials with their markup: 464.62, and 464.62 + 493.51 = 958.13.
    for (const told of ['€464.62', '€493.51', '€958.13', '17 h at €29.03']) expect(broken).toContain(told);
    for (const secret of ['411.17', '53.45', 'arkup']) expect(broken).not.toContain(secret);
  });

  it('is printed alone, whichever of several it is', async () => {
    const { page, stored } = await openCabinet();
    await page.locator('[data-add="quotes"]').click();
    await countOf(page, '[data-row^="quotes/"]', 2);
    const second = (await stored()).rows.quotes[1];
    await type(page, `quotes/${second?.id}/title`, 'The same in oak');
    await type(page, `quotes/${second?.id}/customer`, 'Another reader');
    await page.evaluate(() => {
      window.print = () => {
        dispatchEvent(new Event('beforeprint'));
        document.body.dataset.printed = document.querySelector<HTMLElement>('#paper')?.textContent ?? '';
        dispatchEvent(new Event('afterprint'));
      };
    });
    const sheet = async () => (await page.locator('body').getAttribute('data-printed')) ?? '';
    await page.getByRole('button', { name: 'Print the sheet for the customer, The same in oak' }).click();
    await expect.poll(sheet).toContain('The same in oak');
    expect(await sheet()).toContain('Another reader');
    expect(await sheet()).not.toContain('Wall cabinet');
    // By the keys of the browser it is the quote one is at.
    await page.locator('[data-at$="/title"]').first().focus();
    await page.evaluate(() => window.print());
    await expect.poll(sheet).toContain('Wall cabinet');
    expect(await sheet()).not.toContain('Another reader');
  });

  it('is marked once its last day is over, on the screen and on the sheet', async () => {
    const { page, stored } = await openCabinet();
    const { id } = quoteOf(await stored());
    await page.locator(`[data-at="quotes/${id}/validUntil"]`).fill('2020-02-29');
    await page.locator(`[data-at="quotes/${id}/validUntil"]`).dispatchEvent('change');
    await page.waitForSelector('.quote .chip.warning');
    expect(await textOf(page.locator('.quote .chip'))).toContain('expired on');
    expect(await printed(page)).toContain('This quote expired on');
    // Its own date is later than its last day, which is the worse of the two.
    await page.waitForSelector(`[data-at="quotes/${id}/validUntil"][data-severity="warning"]`);
    await page.locator(`[data-at="quotes/${id}/date"]`).fill('2020-01-31');
    await page.locator(`[data-at="quotes/${id}/date"]`).dispatchEvent('change');
    await page.waitForSelector(`[data-at="quotes/${id}/validUntil"][data-severity="note"]`);
  });

  it('has no price while its hours have none, and says where to enter it', async () => {
    const { page, id: project, stored } = await openCabinet();
    await postChanges(url(), project, [{ op: 'settings', values: { rateMinorPerHour: null } }]);
    const { id } = quoteOf(await stored());
    await page.waitForSelector(`[data-at="quotes/${id}/rateMinorPerHour"][placeholder="not set"]`);
    await type(page, `quotes/${id}/rateMinorPerHour`, '');
    await page.waitForSelector(`[data-at="quotes/${id}/rateMinorPerHour"][aria-invalid="true"]`);
    await expect.poll(() => textOf(page.locator('.quote-figures .in-all'))).toContain('unknown');
    expect(await printed(page)).toContain('not known yet');
  });

  it('is added and removed from the keyboard, and undo brings it back', async () => {
    const { page, stored } = await open('quotes');
    await page.waitForSelector('.empty[data-list="quotes"]');
    await page.locator('[data-add="quotes"]').press('Enter');
    await countOf(page, '[data-row^="quotes/"]', 1);
    const quote = quoteOf(await stored());
    expect(quote.validUntil > quote.date).toBe(true);
    await focusIn(page, `quotes/${quote.id}`);
    await page.locator('[data-act="remove"]').press('Enter');
    await countOf(page, '[data-row^="quotes/"]', 0);
    await page.keyboard.press('Control+z');
    await countOf(page, '[data-row^="quotes/"]', 1);
  });

  it('keeps to the rules of accessibility, and fits a phone', async () => {
    const wide = await openCabinet({ mode: 'dark' });
    await wide.page.waitForSelector('.quote-figures .in-all');
    await wide.page.locator('.quote-preview summary').click();
    expect(await axeFaults(wide.page)).toEqual([]);
    const phone = await openCabinet({ width: 390, height: 844, phone: true });
    await phone.page.waitForSelector('.quote-figures .in-all');
    await phone.page.locator('.quote-preview summary').click();
    expect(await sidewaysOverflow(phone.page)).toBe(0);
  });
});
