import type { Locator, Page } from 'playwright-core';

/** The part list as a test sees it: rows and columns as displayed. */
export interface PartsGrid {
  cell(row: number, column: string): Locator;
  text(row: number, column: string): Promise<string>;
  /** Clicks a cell, types over it and presses Enter. */
  type(row: number, column: string, text: string): Promise<void>;
  /** "row column" of the cell that has the keyboard focus. */
  focused(): Promise<string>;
  /** Names of the parts, top to bottom, without the blank last line. */
  names(): Promise<string[]>;
  /** The number under a total, as printed. */
  total(at: string): Promise<string>;
  /** Waits until every edit has been answered. */
  settled(): Promise<void>;
}

export function partsGrid(page: Page): PartsGrid {
  const cell = (row: number, column: string): Locator =>
    page.locator(`.ag-row[row-index="${row}"] [col-id="${column}"]`);
  const settled = async (): Promise<void> => {
    await page.waitForFunction(() => document.querySelector('.saving')?.textContent === '');
    // One frame for the grid to draw what came.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
  };
  return {
    cell,
    text: async (row, column) => (await cell(row, column).textContent())?.trim() ?? '',
    async type(row, column, text) {
      await cell(row, column).click();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      await settled();
    },
    focused: () =>
      page.evaluate(() => {
        const focused = document.activeElement?.closest('.ag-cell');
        return `${focused?.closest('.ag-row')?.getAttribute('row-index')} ${focused?.getAttribute('col-id')}`;
      }),
    names: () =>
      page.evaluate(() =>
        [...document.querySelectorAll('.ag-row:not(.ag-row-pinned, .blank-row)')]
          .toSorted((a, b) => Number(a.getAttribute('row-index')) - Number(b.getAttribute('row-index')))
          .map((row) => row.querySelector<HTMLElement>('[col-id="name"]')?.textContent.trim() ?? ''),
      ),
    total: async (at) => (await page.locator(`.totals [data-figure="${at}"]`).textContent()) ?? '',
    settled,
  };
}
