import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { importProject } from './import-project.ts';
import { screens } from './open-screen.ts';

/**
 * Every room on paper, as the browser prints it: pages counted in the PDF, words and widths read from the paper that is
 * in the page while it prints. Sheets and labels of the cutting room have tests of their own.
 */

const { open, url } = screens();

const cabinet = JSON.parse(
  readFileSync(new URL('../../db/demo/bicycle-workshop-wall-cabinet.json', import.meta.url), 'utf8'),
) as object;

/** Printable width at 96 px to the inch: A4 210 mm and Letter 215.9 mm less 13 mm at each side. */
const FORMATS = [
  ['A4', 695],
  ['Letter', 717],
] as const;

interface Paper {
  readonly screen: string;
  readonly sheet: string;
  /** What must stand on it. */
  readonly words: readonly string[];
  readonly pages: readonly [least: number, most: number];
}

// The cabinet has 3 sections and 2 sheet materials, a day sheet for each day of work, 8 headings in its budget.
const PAPERS: readonly Paper[] = [
  {
    screen: 'parts',
    sheet: '#paper',
    words: ['Part list', 'case', 'doors', 'tools', 'Shelf'],
    pages: [1, 1],
  },
  { screen: 'banding', sheet: '#paper', words: ['Edge banding', 'left over', 'Shelf, front'], pages: [1, 2] },
  {
    screen: 'finish',
    sheet: '#paper',
    words: ['Finish', 'Water-based satin', 'Topcoat 2', 'Oily rags'],
    pages: [1, 1],
  },
  {
    screen: 'calendar',
    sheet: '#calendar-paper',
    words: ['Day 1 of', 'Seal', 'Begun at', 'Oily rags'],
    pages: [2, 30],
  },
  { screen: 'air', sheet: '#paper', words: ['Air check', 'Fresh air', 'Day by day'], pages: [1, 2] },
  { screen: 'buy', sheet: '#paper', words: ['Buy list', 'Bicycle-workshop wall cabinet'], pages: [1, 3] },
  { screen: 'ledger', sheet: '#paper', words: ['Ledger', 'Sheets', 'Total', 'Orders'], pages: [1, 2] },
  { screen: 'quotes', sheet: '#paper', words: ['Quote:', 'What is built', 'Total'], pages: [1, 1] },
];

/** The paper as it lies in the page while it is printed at a width. */
function paperAt(page: Page, sheet: string) {
  return page.evaluate((selector) => {
    const paper = document.querySelector<HTMLElement>(selector);
    if (paper === null) return null;
    const shown = (element: Element): boolean => element.checkVisibility();
    const colours = new Set(
      [...paper.querySelectorAll('td, th, p, li, h1, h2')].map((one) => getComputedStyle(one).color),
    );
    return {
      text: paper.textContent.replaceAll(/\s+/g, ' '),
      buttons: [...document.querySelectorAll('button, input, select, textarea, nav, .sheet')].filter(shown)
        .length,
      aside: [...document.body.children].filter((child) => child !== paper && shown(child)).length,
      tooWide: [...paper.querySelectorAll('table, td, th, section')]
        .filter((one) => one.getBoundingClientRect().right > paper.getBoundingClientRect().right + 1)
        .map((one) => one.textContent?.trim().slice(0, 40)),
      colours: [...colours],
      ground: getComputedStyle(document.body).backgroundColor,
      sections: paper.querySelectorAll('.paper-day').length,
    };
  }, sheet);
}

/** Lightness of "rgb(51, 51, 51)", 0 to 255. */
const lightest = (colour: string): number =>
  Math.max(...(colour.match(/\d+/g) ?? ['255']).slice(0, 3).map(Number));

const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

describe('on paper', () => {
  it('every room is black on white, whole, and without what only a screen has a use for', async () => {
    const { id } = await importProject(url(), cabinet);
    const { page } = await open('parts', { projectId: id, mode: 'dark' });
    for (const { screen, sheet, words, pages } of PAPERS) {
      await page.evaluate(
        ([project, name]) => {
          location.hash = `#/p/${project}/${name}`;
        },
        [id, screen] as const,
      );
      await page.waitForSelector(`.screen[data-screen="${screen}"] h1`, {
        state: 'attached',
        timeout: 20_000,
      });
      if (screen === 'calendar')
        await page.waitForSelector('.agenda li, .task-table tbody tr', { timeout: 20_000 });
      if (screen === 'quotes') await page.waitForSelector('.quote-figures', { timeout: 20_000 });
      const size = page.viewportSize();
      for (const [format, width] of FORMATS) {
        await page.setViewportSize({ width, height: 1000 });
        await page.emulateMedia({ media: 'print' });
        // A room may still wait for an answer: print again until its words are there.
        await expect
          .poll(
            async () => {
              await page.evaluate(() => dispatchEvent(new Event('afterprint')));
              await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
              const text = (await paperAt(page, sheet))?.text ?? '';
              return words.filter((word) => !text.includes(word));
            },
            { timeout: 20_000, message: `${screen} on ${format}` },
          )
          .toEqual([]);
        const paper = await paperAt(page, sheet);
        expect({ screen, format, ...paper }).toMatchObject({
          buttons: 0,
          aside: 0,
          tooWide: [],
          ground: 'rgb(255, 255, 255)',
        });
        for (const colour of paper?.colours ?? [])
          expect(lightest(colour), `${screen}: ${colour}`).toBeLessThan(90);
        await page.evaluate(() => dispatchEvent(new Event('afterprint')));
        await page.emulateMedia({ media: null });
        const count = pagesOf(await page.pdf({ format }));
        if (screen === 'calendar') expect(count).toBe(paper?.sections);
        expect(count, `${screen} on ${format}`).toBeGreaterThanOrEqual(pages[0]);
        expect(count, `${screen} on ${format}`).toBeLessThanOrEqual(pages[1]);
      }
      if (size !== null) await page.setViewportSize(size);
    }
  }, 60_000);

  it('the cautions are a sheet of their own, with every liquid of the job', async () => {
    const { page } = await open('finish');
    await page.evaluate(() => {
      window.print = () => {
        dispatchEvent(new Event('beforeprint'));
        document.body.dataset.printed = document.querySelector<HTMLElement>('#paper')?.textContent ?? '';
        dispatchEvent(new Event('afterprint'));
      };
    });
    await page.getByRole('button', { name: 'Print cautions' }).click();
    const printed = (await page.locator('body').getAttribute('data-printed')) ?? '';
    for (const word of ['Before you open a can', 'Oily rags', 'Dewaxed shellac', 'Data sheet at hand'])
      expect(printed).toContain(word);
    expect(await page.locator('#paper').count()).toBe(0);
  });
});
