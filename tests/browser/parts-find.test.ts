import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bookcaseDocument } from './bookcase-document.ts';
import { axeFaults, sidewaysOverflow } from './open-browser.ts';
import { partsScreen } from './open-parts.ts';

const { open: openParts } = partsScreen();

/** The bookcase with its plinth in no section. */
const bookcase = {
  ...bookcaseDocument,
  parts: bookcaseDocument.parts.map((part) => (part.id === 'plinth' ? { ...part, section: '' } : part)),
};
const open = (options: Parameters<typeof openParts>[0] = {}) => openParts({ document: bookcase, ...options });

/** In list order. The plinth's length cannot be read, the cleat has no material, the stool its own section. */
const ALL = ['Side', 'Top', 'Shelf', 'Back', 'Plinth', 'Stool seat', 'Cleat'];

const search = (page: Page): Locator => page.getByRole('searchbox', { name: 'Find in the part list' });
const header = (page: Page, column: string): Locator => page.locator(`.ag-header-cell[col-id="${column}"]`);
const bar = (page: Page): Locator => page.locator('.view-bar');
const words = async (locator: Locator): Promise<string> =>
  ((await locator.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();

/** Puts the keyboard on a column's header, the way the arrow keys get there. */
async function toHeader(page: Page, column: string): Promise<void> {
  await page.locator(`.ag-row[row-index="0"] [col-id="${column}"]`).click();
  await page.keyboard.press('ArrowUp');
  await page.waitForFunction(
    (id) => document.activeElement?.matches(`.ag-header-cell[col-id="${id}"]`),
    column,
  );
}

async function groupBy(page: Page, choice: string): Promise<void> {
  await page.getByRole('button', { name: 'Groups' }).click();
  await page.getByRole('radio', { name: choice }).check();
  await page.keyboard.press('Escape');
}

const writeClipboard = (page: Page, text: string): Promise<void> =>
  page.evaluate((copied) => navigator.clipboard.writeText(copied), text);

describe('the search', () => {
  it('has the focus with Ctrl+F, narrows the list while one types, counts, and is emptied by Escape', async () => {
    const { page, grid } = await open();
    await grid.cell(2, 'name').click();
    await page.keyboard.press('Control+f');
    await page.keyboard.type('birch 18');
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Shelf', 'Plinth', 'Stool seat']);
    await expect.poll(() => words(page.locator('.search-count'))).toBe('5 of 7 parts shown');
    // The figures at the foot stay those of the whole list, and say so.
    await expect.poll(() => words(page.locator('.ag-row-pinned [col-id="name"]'))).toBe('Total of all 7');
    await expect.poll(() => words(page.locator('.ag-row-pinned [col-id="quantity"]'))).toBe('15');
    await page.keyboard.press('Escape');
    await expect.poll(() => grid.names()).toEqual(ALL);
    await expect.poll(() => words(page.locator('.ag-row-pinned [col-id="name"]'))).toBe('Total');
    // Once more, and the keyboard is back where it was.
    await page.keyboard.press('Escape');
    await expect.poll(() => grid.focused()).toBe('2 name');
  });

  it('goes to the first row found with Enter', async () => {
    const { page, grid } = await open();
    await page.keyboard.press('Control+f');
    await page.keyboard.type('864');
    await page.keyboard.press('Enter');
    await expect.poll(() => grid.focused()).toBe('0 name');
    await expect.poll(() => grid.names()).toEqual(['Shelf']);
  });

  it('keeps an edited row in sight until the search changes, and says so', async () => {
    const { page, grid } = await open();
    await search(page).fill('shelf');
    await grid.cell(0, 'name').click();
    await page.keyboard.type('Board');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Board']);
    await expect.poll(() => words(bar(page))).toContain('0 of 7 parts, and 1 just edited');
    await search(page).fill('shel');
    await expect.poll(() => grid.names()).toEqual([]);
    await page.getByRole('button', { name: 'Stop searching' }).click();
    await expect.poll(async () => (await grid.names())[2]).toBe('Board');
  });

  it('never hides a part that is added', async () => {
    const { page, grid, stored } = await open();
    await search(page).fill('stool');
    await page.getByRole('button', { name: 'Add part' }).click();
    await page.keyboard.type('Leg');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Stool seat', 'Leg']);
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+Enter');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Stool seat', '', 'Leg']);
    await expect.poll(() => grid.focused()).toBe('1 name');
    await expect
      .poll(async () => (await stored()).rows.parts.map(({ name }) => name))
      .toEqual([...ALL.slice(0, 6), '', 'Cleat', 'Leg']);
  });

  it('gives way to a problem that one asks to be taken to', async () => {
    const { page, grid } = await open();
    await search(page).fill('stool');
    await page.locator('#problems-button').click();
    await page.locator('#problems').getByRole('button').filter({ hasText: 'Plinth' }).first().click();
    await page.waitForFunction(
      () =>
        document.activeElement?.closest('.ag-row')?.querySelector('[col-id="name"]')?.textContent ===
        'Plinth',
    );
    await expect.poll(() => grid.focused()).toBe('0 length');
    await expect.poll(() => grid.names()).toEqual(['Plinth', 'Stool seat']);
  });

  it('bounds what is pasted, filled and cleared to the rows shown', async () => {
    const { page, grid, sent, stored } = await open();
    // Side, Top, Shelf, Plinth and the stool stand shown one below the other; the back lies between them unseen.
    await search(page).fill('birch 18');
    await writeClipboard(page, '11\n12\n13\n14\n15');
    await grid.cell(0, 'width').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    const widths = async (): Promise<string[]> => (await stored()).rows.parts.map(({ width }) => width);
    await expect
      .poll(() => widths())
      .toEqual(['11 mm', '12 mm', '13 mm', '880 mm', '14 mm', '15 mm', '40 mm']);
    await page.keyboard.press('Control+d');
    await grid.settled();
    await expect
      .poll(() => widths())
      .toEqual(['11 mm', '11 mm', '11 mm', '880 mm', '11 mm', '11 mm', '40 mm']);
    await page.keyboard.press('Delete');
    await grid.settled();
    await expect.poll(() => widths()).toEqual(['', '', '', '880 mm', '', '', '40 mm']);
    expect(sent).toHaveLength(3);
  });
});

describe('the filter of a column', () => {
  it('is opened from the header by mouse, ticks values, shows a chip, and clears from there', async () => {
    const { page, grid } = await open();
    await header(page, 'section').hover();
    await page.getByRole('button', { name: 'Filter by section' }).click();
    const panel = page.getByRole('dialog', { name: 'Filter by section' });
    await expect.poll(() => words(panel.locator('.ticks'))).toBe('Carcass5 Stool1 no section1');
    await panel.getByRole('checkbox', { name: 'Carcass' }).uncheck();
    await expect.poll(() => grid.names()).toEqual(['Plinth', 'Stool seat']);
    await expect
      .poll(() =>
        panel.getByRole('checkbox', { name: 'All' }).evaluate((box: HTMLInputElement) => box.indeterminate),
      )
      .toBe(true);
    await page.keyboard.press('Escape');
    await expect
      .poll(() => words(bar(page)))
      .toBe('Filtered: 2 of 7 parts section: Stool, no section Show all parts');
    await expect.poll(() => header(page, 'section').locator('.is-filtered').count()).toBe(1);
    await bar(page).getByRole('button', { name: 'Show every section' }).click();
    await expect.poll(() => grid.names()).toEqual(ALL);
    await expect.poll(() => bar(page).count()).toBe(0);
  });

  it('is worked by keys alone, from the header and from a cell', async () => {
    const { page, grid } = await open();
    await toHeader(page, 'materialId');
    await page.keyboard.press('Alt+ArrowDown');
    const panel = page.getByRole('dialog', { name: 'Filter by material' });
    await panel.waitFor();
    // All off, then only birch 6.
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    await panel.waitFor({ state: 'detached' });
    await expect.poll(() => grid.names()).toEqual(['Back']);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('col-id')))
      .toBe('materialId');
    await grid.cell(0, 'showRecipeId').click();
    await page.keyboard.press('Control+Shift+L');
    await page.getByRole('dialog', { name: 'Filter by finish of the show face' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => grid.focused()).toBe('0 showRecipeId');
    await page.getByRole('button', { name: 'Show all parts' }).click();
    await expect.poll(() => grid.names()).toEqual(ALL);
  });

  it('goes together with others and with the search, and all are cleared at once', async () => {
    const { page, grid } = await open();
    for (const [column, value] of [
      ['section', 'Stool'],
      ['materialId', 'birch 6'],
    ] as const) {
      await header(page, column).hover();
      await header(page, column).locator('.head-filter').click();
      await page.getByRole('checkbox', { name: value }).uncheck();
      await page.keyboard.press('Escape');
    }
    await search(page).fill('carcass');
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Shelf', 'Cleat']);
    await page.getByRole('button', { name: 'Show all parts' }).click();
    await expect.poll(() => grid.names()).toEqual(ALL);
    await expect.poll(() => search(page).inputValue()).toBe('');
  });
});

describe('sorting', () => {
  it('goes up, down and back to list order by the header, by millimetres, with unreadable lengths last', async () => {
    const { page, grid, stored } = await open();
    const sort = async (): Promise<void> => {
      await header(page, 'length').hover();
      await page.getByRole('button', { name: 'Sort by finished length' }).click();
    };
    // 280, 380, 864 (a sum), 900, 1780, 1800 mm, then the plinth's "21 13/1".
    const up = ['Cleat', 'Stool seat', 'Shelf', 'Top', 'Back', 'Side', 'Plinth'];
    await sort();
    await expect.poll(() => grid.names()).toEqual(up);
    await expect.poll(() => words(bar(page))).toBe('sorted by finished length Keep this order');
    await expect.poll(() => header(page, 'length').getAttribute('aria-sort')).toBe('ascending');
    await sort();
    await expect.poll(() => grid.names()).toEqual([...up.slice(0, -1).toReversed(), 'Plinth']);
    await expect.poll(() => header(page, 'length').getAttribute('aria-sort')).toBe('descending');
    await sort();
    await expect.poll(() => grid.names()).toEqual(ALL);
    await expect.poll(() => header(page, 'length').getAttribute('aria-sort')).toBeNull();
    await expect.poll(async () => (await stored()).rows.parts.map(({ name }) => name)).toEqual(ALL);
  });

  it('works by Enter on a header, moves an edited row with the focus, and goes back by the chip', async () => {
    const { page, grid } = await open();
    await toHeader(page, 'width');
    await page.keyboard.press('Enter');
    // 40, 80, 285, 300, 300, 380, 880: the two of 300 mm as the list has them.
    await expect
      .poll(() => grid.names())
      .toEqual(['Cleat', 'Plinth', 'Shelf', 'Side', 'Top', 'Stool seat', 'Back']);
    await grid.cell(0, 'width').click();
    await page.keyboard.type('500');
    await page.keyboard.press('Tab');
    await grid.settled();
    await expect
      .poll(() => grid.names())
      .toEqual(['Plinth', 'Shelf', 'Side', 'Top', 'Stool seat', 'Cleat', 'Back']);
    await expect.poll(() => grid.focused()).toBe('5 materialId');
    await page.getByRole('button', { name: 'Back to list order' }).click();
    await expect.poll(() => grid.names()).toEqual(ALL);
    await expect.poll(() => grid.focused()).toBe('6 materialId');
  });

  it('does not move rows under an open editor', async () => {
    const { page, grid } = await open();
    await toHeader(page, 'width');
    await page.keyboard.press('Enter');
    await grid.cell(0, 'width').click();
    await page.keyboard.type('500');
    await page.keyboard.press('Enter');
    // The next entry begins before the first is answered.
    await page.keyboard.type('7');
    await expect.poll(() => page.locator('.cell-input').count()).toBe(1);
    await page.keyboard.type('7');
    await page.keyboard.press('Enter');
    await grid.settled();
    // Cleat 500, plinth 77: the plinth stays first, and the cleat goes behind the stool seat of 380.
    await expect
      .poll(() => grid.names())
      .toEqual(['Plinth', 'Shelf', 'Side', 'Top', 'Stool seat', 'Cleat', 'Back']);
    await expect.poll(() => grid.text(0, 'width')).toBe('77');
  });

  it('is made the order of the list by one edit that one undo takes back', async () => {
    const { page, grid, sent, stored } = await open();
    await toHeader(page, 'length');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Keep this order' }).click();
    await grid.settled();
    const up = ['Cleat', 'Stool seat', 'Shelf', 'Top', 'Back', 'Side', 'Plinth'];
    const names = async (): Promise<string[]> => (await stored()).rows.parts.map(({ name }) => name);
    await expect.poll(() => names()).toEqual(up);
    await expect.poll(() => grid.names()).toEqual(up);
    await expect.poll(() => bar(page).count()).toBe(0);
    expect(sent).toHaveLength(1);
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => names()).toEqual(ALL);
  });

  it('keeps parts from being moved by hand, and says why', async () => {
    const { page, grid, sent } = await open();
    await toHeader(page, 'name');
    await page.keyboard.press('Enter');
    await grid.cell(1, 'name').click();
    await page.keyboard.press('Alt+ArrowDown');
    await page.locator('.notice', { hasText: 'shown sorted' }).waitFor();
    expect(sent).toHaveLength(0);
  });

  it('leaves a new part at the end until it is sorted again', async () => {
    const { page, grid } = await open();
    await toHeader(page, 'name');
    await page.keyboard.press('Enter');
    await grid.cell(7, 'name').click();
    await page.keyboard.type('Apron');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(async () => (await grid.names()).at(-1)).toBe('Apron');
    await expect.poll(() => grid.focused()).toBe('8 name');
  });
});

describe('groups', () => {
  const headings = (page: Page): Promise<string[]> =>
    page
      .locator('.heading-row [col-id="name"]')
      .allTextContents()
      .then((texts) => texts.map((text) => text.trim()));

  it('stand under headings with their rows, pieces, banding and area, each of which opens its working', async () => {
    const { page, grid, stored } = await open();
    await groupBy(page, 'By section');
    await expect.poll(() => headings(page)).toEqual(['Carcass5', 'Stool1', 'No section1']);
    await expect
      .poll(() => grid.names())
      .toEqual([
        'Carcass5',
        'Side',
        'Top',
        'Shelf',
        'Back',
        'Cleat',
        'Stool1',
        'Stool seat',
        'No section1',
        'Plinth',
      ]);
    const { plan } = await stored();
    const carcass = plan.groups.sections.find(({ id }) => id === 'Carcass');
    await expect.poll(() => grid.text(0, 'quantity')).toBe(String(carcass?.pieces));
    await expect.poll(() => grid.text(0, 'totalBandedM')).toBe(`${carcass?.bandedM?.toFixed(2)} m`);
    await grid.cell(0, 'totalBandedM').locator('.figure').click();
    await page.locator('#working h2', { hasText: 'Section Carcass' }).waitFor();
  });

  it('close and open by keys and by mouse, and are remembered', async () => {
    const { page, grid } = await open();
    await groupBy(page, 'By material');
    await expect.poll(() => headings(page)).toEqual(['birch 61', 'birch 185', 'No material1']);
    await grid.cell(1, 'name').click();
    await page.keyboard.press('Alt+ArrowLeft');
    await expect.poll(async () => (await grid.names()).slice(0, 2)).toEqual(['birch 61', 'birch 185']);
    const heading = grid.cell(0, 'name');
    await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('false');
    // The focus went to the heading of the group it was in.
    await expect.poll(() => grid.focused()).toBe('0 name');
    await page.keyboard.press('Enter');
    await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('true');
    await page.keyboard.press('Space');
    await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('false');
    await page.reload();
    await page.waitForSelector('.heading-row');
    await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('false');
    await heading.click();
    await expect.poll(() => heading.getAttribute('aria-expanded')).toBe('true');
    await page.getByRole('button', { name: 'Groups' }).click();
    await page.getByRole('button', { name: 'Close all' }).click();
    await expect.poll(() => page.locator('.heading-row').count()).toBe(3);
    await expect
      .poll(() => page.locator('.ag-row:not(.heading-row, .blank-row, .ag-row-pinned)').count())
      .toBe(0);
  });

  it('take a row whose section is changed, with the focus, and open for it', async () => {
    const { page, grid } = await open();
    await groupBy(page, 'By section');
    await page.locator('.heading-row [col-id="name"]', { hasText: 'Stool' }).click();
    // Shelf stands third in the carcass.
    await grid.cell(3, 'section').click();
    await page.keyboard.type('Stool');
    await page.keyboard.press('Tab');
    await grid.settled();
    await expect
      .poll(() => grid.names())
      .toEqual([
        'Carcass4',
        'Side',
        'Top',
        'Back',
        'Cleat',
        'Stool2',
        'Shelf',
        'Stool seat',
        'No section1',
        'Plinth',
      ]);
    await expect.poll(() => grid.focused()).toBe('6 quantity');
    // 5 shelves and a seat.
    await expect.poll(() => grid.text(5, 'quantity')).toBe('6');
  });

  it('are passed over by Tab, pastes and fills', async () => {
    const { page, grid, stored } = await open();
    await groupBy(page, 'By section');
    await writeClipboard(page, '1\n2\n3');
    // Back, cleat, then over the heading to the stool seat.
    await grid.cell(4, 'note').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    const note = async (name: string): Promise<string | undefined> =>
      (await stored()).rows.parts.find((part) => part.name === name)?.note;
    await expect
      .poll(async () => [await note('Back'), await note('Cleat'), await note('Stool seat')])
      .toEqual(['1', '2', '3']);
    await page.keyboard.press('Control+c');
    await expect
      .poll(async () => (await page.evaluate(() => navigator.clipboard.readText())).split(/\s+/))
      .toEqual(['1', '2', '3']);
    await grid.cell(5, 'note').click();
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('7 name');
  });

  it('keep moves of parts inside them', async () => {
    const { page, grid, stored } = await open();
    await groupBy(page, 'By section');
    // The cleat stands behind the back in its group, and three places behind it in the list.
    await grid.cell(5, 'name').click();
    await page.keyboard.press('Alt+ArrowUp');
    await grid.settled();
    await expect.poll(async () => (await grid.names()).slice(3, 6)).toEqual(['Shelf', 'Cleat', 'Back']);
    await expect
      .poll(async () => (await stored()).rows.parts.map(({ name }) => name))
      .toEqual(['Side', 'Top', 'Shelf', 'Plinth', 'Stool seat', 'Cleat', 'Back']);
    await grid.cell(1, 'name').click();
    await page.keyboard.press('Alt+ArrowUp');
    await grid.settled();
    await expect.poll(async () => (await grid.names())[1]).toBe('Side');
  });

  it('say how many of their rows are shown by a search, without sums of others', async () => {
    const { page, grid } = await open();
    await groupBy(page, 'By section');
    await search(page).fill('18');
    await expect.poll(() => headings(page)).toEqual(['Carcass3 of 5', 'Stool1', 'No section1']);
    await expect.poll(() => grid.text(0, 'quantity')).toBe('');
  });
});

describe('columns', () => {
  const shown = (page: Page): Promise<string[]> =>
    page.evaluate(() =>
      [...document.querySelectorAll('.ag-header-cell')]
        .toSorted((a, b) => a.getBoundingClientRect().left - b.getBoundingClientRect().left)
        .map((cell) => cell.getAttribute('col-id') ?? ''),
    );
  const usual = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'Columns' }).click();
    await page.getByRole('button', { name: 'Back to the usual columns' }).click();
    await page.keyboard.press('Escape');
  };

  it('are hidden and shown in a panel, remembered, and come back to the usual ones', async () => {
    const { page, grid } = await open();
    const before = await shown(page);
    await page.getByRole('button', { name: 'Columns' }).click();
    const panel = page.getByRole('dialog', { name: 'Columns' });
    await panel.getByRole('checkbox', { name: 'Grain' }).uncheck();
    await panel.getByRole('checkbox', { name: 'Edges' }).uncheck();
    await page.keyboard.press('Escape');
    const gone = ['grain', 'edgeFront', 'edgeBack', 'edgeLeft', 'edgeRight'];
    await expect.poll(() => shown(page)).toEqual(before.filter((id) => !gone.includes(id)));
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(() => shown(page)).toEqual(before.filter((id) => !gone.includes(id)));
    // Tab goes on to what is shown.
    await grid.cell(0, 'materialId').click();
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('0 radiusFrontLeft');
    await usual(page);
    await expect.poll(() => shown(page)).toEqual(before);
  });

  it('are put in another order by keys, in the panel and on the header', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Columns' }).click();
    const panel = page.getByRole('dialog', { name: 'Columns' });
    await panel.getByRole('checkbox', { name: 'Width, mm', exact: true }).focus();
    await page.keyboard.press('Alt+ArrowUp');
    await page.keyboard.press('Alt+ArrowUp');
    await expect
      .poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).dataset.name))
      .toBe('width');
    await page.keyboard.press('Escape');
    await expect
      .poll(async () => (await shown(page)).slice(2, 6))
      .toEqual(['section', 'width', 'quantity', 'length']);
    await toHeader(page, 'width');
    await page.keyboard.press('Shift+ArrowRight');
    await page.waitForFunction(
      () =>
        [...document.querySelectorAll('.ag-header-cell')]
          .toSorted((a, b) => a.getBoundingClientRect().left - b.getBoundingClientRect().left)
          .findIndex((cell) => cell.getAttribute('col-id') === 'width') === 4,
    );
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect
      .poll(async () => (await shown(page)).slice(2, 6))
      .toEqual(['section', 'quantity', 'width', 'length']);
  });

  it('are dragged by their header, groups as a whole', async () => {
    const { page } = await open();
    const dragTo = async (from: Locator, to: Locator): Promise<void> => {
      const [a, b] = [await from.boundingBox(), await to.boundingBox()];
      if (a === null || b === null) throw new Error('the header is not drawn');
      await page.mouse.move(a.x + 20, a.y + a.height / 2);
      await page.mouse.down();
      await page.mouse.move(b.x + b.width / 2, a.y + a.height / 2, { steps: 12 });
      await page.mouse.move(b.x + b.width / 2 + 8, a.y + a.height / 2, { steps: 4 });
      await page.mouse.up();
    };
    const places = async (): Promise<string[]> => (await shown(page)).slice(2, 5);
    await dragTo(header(page, 'quantity'), header(page, 'length'));
    await expect.poll(places).toEqual(['section', 'length', 'quantity']);
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(places).toEqual(['section', 'length', 'quantity']);
  });

  it('stay where they were dragged also when the page is left in the same moment, or the drag ends elsewhere', async () => {
    const { page } = await open();
    const places = async (): Promise<string[]> => (await shown(page)).slice(2, 5);
    const startDrag = async (from: Locator, to: Locator): Promise<void> => {
      const [a, b] = [await from.boundingBox(), await to.boundingBox()];
      if (a === null || b === null) throw new Error('the header is not drawn');
      await page.mouse.move(a.x + 20, a.y + a.height / 2);
      await page.mouse.down();
      await page.mouse.move(b.x + b.width / 2, a.y + a.height / 2, { steps: 12 });
      await page.mouse.move(b.x + b.width / 2 + 8, a.y + a.height / 2, { steps: 4 });
    };
    await startDrag(header(page, 'quantity'), header(page, 'length'));
    await expect.poll(places).toEqual(['section', 'length', 'quantity']);
    // Down into the top bar, where nothing takes a column.
    await page.mouse.move(700, 10, { steps: 3 });
    await page.mouse.up();
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(places).toEqual(['section', 'length', 'quantity']);
    await startDrag(header(page, 'section'), header(page, 'length'));
    // The release and the reload in one turn of the page: nothing that waits for a later turn is done.
    await page.evaluate(() => {
      document.dispatchEvent(new MouseEvent('mouseup', { bubbles: true, button: 0 }));
      location.reload();
    });
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(places).toEqual(['length', 'section', 'quantity']);
  });

  it('keep the width they are given by mouse or keys', async () => {
    const { page } = await open();
    const width = async (): Promise<number> =>
      Math.round((await header(page, 'note').boundingBox())?.width ?? 0);
    const before = await width();
    await header(page, 'note').scrollIntoViewIfNeeded();
    const box = await header(page, 'note').locator('.ag-header-cell-resize').boundingBox();
    if (box === null) throw new Error('there is no handle');
    await page.mouse.move(box.x + box.width / 2, box.y + 10);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 - 60, box.y + 10, { steps: 5 });
    await page.mouse.up();
    await expect.poll(async () => Math.abs((await width()) - (before - 60))).toBeLessThan(3);
    const dragged = await width();
    await toHeader(page, 'note');
    await page.keyboard.press('Alt+ArrowLeft');
    await page.waitForFunction(
      (was) => (document.querySelector('.ag-header-cell[col-id="note"]')?.clientWidth ?? was) < was,
      dragged - 1,
    );
    const narrower = await width();
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(() => width()).toBe(narrower);
    await usual(page);
    await expect.poll(() => width()).toBe(before);
  });

  it('are the usual ones when what was remembered is junk', async () => {
    const { page } = await open();
    const before = await shown(page);
    await page.evaluate(() => {
      localStorage.setItem(
        'plywright.part-columns',
        '{"version":1,"order":["nope",3],"visible":{"name":false}',
      );
      localStorage.setItem('plywright.part-groups', '[1,2');
    });
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(() => shown(page)).toEqual(before);
  });
});

describe('filling', () => {
  const corner = async (cell: Locator): Promise<[number, number]> => {
    const box = await cell.boundingBox();
    if (box === null) throw new Error('the cell is not drawn');
    return [box.x + box.width - 4, box.y + box.height - 4];
  };

  it('types once into every cell of a range with Ctrl+Enter, in text and in lists', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(0, 'note').click();
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.type('sand twice');
    await page.keyboard.press('Control+Enter');
    await grid.settled();
    await expect
      .poll(() => Promise.all([0, 1, 2, 3, 4].map((row) => grid.text(row, 'note'))))
      .toEqual(['sand twice', 'sand twice', 'sand twice', 'sand twice', '']);
    expect(sent).toHaveLength(1);
    // The range is still there, and one undo takes all of it back.
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(4);
    await expect.poll(() => grid.focused()).toBe('0 note');
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => grid.text(2, 'note')).toBe('');
    await grid.cell(3, 'materialId').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.type('birch 6');
    await page.keyboard.press('Control+Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(3, 'materialId'), await grid.text(4, 'materialId')])
      .toEqual(['birch 6', 'birch 6']);
    // A name nobody knows is not taken, and the editor stays open.
    await page.keyboard.type('ebony');
    await page.keyboard.press('Control+Enter');
    await expect.poll(() => page.locator('.choice-nothing').textContent()).toContain('ebony');
    await page.keyboard.press('Escape');
  });

  it('goes on with a step that two cells show, by the handle', async () => {
    const { page, grid, sent, stored } = await open();
    await writeClipboard(page, 'Shelf 1\t300\nShelf 2\t350');
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.mouse.move(...(await corner(grid.cell(1, 'name'))));
    await page.mouse.down();
    await page.mouse.move(...(await corner(grid.cell(2, 'name'))), { steps: 3 });
    await page.mouse.move(...(await corner(grid.cell(4, 'name'))), { steps: 3 });
    await page.mouse.up();
    await grid.settled();
    await expect
      .poll(async () => (await grid.names()).slice(0, 5))
      .toEqual(['Shelf 1', 'Shelf 2', 'Shelf 3', 'Shelf 4', 'Shelf 5']);
    await grid.type(0, 'width', '300');
    await grid.type(1, 'width', '350');
    await grid.cell(0, 'width').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.mouse.move(...(await corner(grid.cell(1, 'width'))));
    await page.mouse.down();
    await page.mouse.move(...(await corner(grid.cell(3, 'width'))), { steps: 4 });
    await page.mouse.up();
    await grid.settled();
    await expect
      .poll(async () => (await stored()).rows.parts.slice(0, 4).map(({ width }) => width))
      .toEqual(['300 mm', '350 mm', '400 mm', '450 mm']);
    expect(sent).toHaveLength(5);
  });

  it('counts up from one cell while Alt is held, and repeats it otherwise', async () => {
    const { page, grid } = await open();
    await grid.type(0, 'name', 'Slat 9');
    await grid.cell(0, 'name').click();
    await page.mouse.move(...(await corner(grid.cell(0, 'name'))));
    await page.mouse.down();
    await page.mouse.move(...(await corner(grid.cell(2, 'name'))), { steps: 4 });
    await page.keyboard.down('Alt');
    await page.mouse.up();
    await page.keyboard.up('Alt');
    await grid.settled();
    await expect.poll(async () => (await grid.names()).slice(0, 3)).toEqual(['Slat 9', 'Slat 10', 'Slat 11']);
    await grid.cell(2, 'name').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+d');
    await grid.settled();
    await expect
      .poll(async () => (await grid.names()).slice(2, 5))
      .toEqual(['Slat 11', 'Slat 11', 'Slat 11']);
    await page.keyboard.press('Control+Alt+d');
    await grid.settled();
    await expect
      .poll(async () => (await grid.names()).slice(2, 5))
      .toEqual(['Slat 11', 'Slat 12', 'Slat 13']);
  });

  it('goes on with what is begun in an otherwise empty range by Ctrl+D', async () => {
    const { page, grid } = await open();
    await writeClipboard(page, 'A1\nA3');
    await grid.cell(0, 'note').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await grid.cell(0, 'note').click();
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+d');
    await grid.settled();
    await expect
      .poll(() => Promise.all([0, 1, 2, 3, 4].map((row) => grid.text(row, 'note'))))
      .toEqual(['A1', 'A3', 'A5', 'A7', 'A9']);
  });

  it('is explained where the keys are', async () => {
    const { page } = await open();
    await page.locator('.help').click();
    const help = await words(page.getByRole('dialog', { name: 'Keyboard and help' }));
    for (const told of ['Ctrl+F', 'Ctrl+Shift+L', 'Alt+Left', 'Ctrl+Enter while typing', 'goes on in steps'])
      expect(help).toContain(told);
  });
});

describe('all of it', () => {
  for (const mode of ['light', 'dark'] as const)
    it(`is clean for axe, ${mode}`, async () => {
      const { page } = await open({ mode, width: 1440 });
      await search(page).fill('birch');
      await header(page, 'section').hover();
      await header(page, 'section').locator('.head-filter').click();
      await page.getByRole('checkbox', { name: 'Stool' }).uncheck();
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await toHeader(page, 'length');
      await page.keyboard.press('Enter');
      await groupBy(page, 'By material');
      expect(await axeFaults(page)).toEqual([]);
      await page.getByRole('button', { name: 'Columns' }).click();
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Groups' }).click();
      expect(await axeFaults(page)).toEqual([]);
    });

  it('works on a phone, with nothing sticking out', async () => {
    const { page, grid } = await open({ width: 390, height: 844, phone: true });
    await search(page).tap();
    await search(page).fill('birch 18');
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Shelf', 'Plinth', 'Stool seat']);
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    await header(page, 'section').tap();
    await header(page, 'section').locator('.head-filter').tap();
    const panel = page.getByRole('dialog', { name: 'Filter by section' });
    await panel.getByText('Stool').tap();
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Shelf', 'Plinth']);
    await expect.poll(() => panel.boundingBox()).toMatchObject({ x: 0, width: 390 });
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    await page.mouse.click(200, 300);
    await panel.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Groups' }).tap();
    await page.getByText('By section').tap();
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.mouse.click(200, 300);
    await page.getByRole('button', { name: 'Columns' }).tap();
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
  });
});
