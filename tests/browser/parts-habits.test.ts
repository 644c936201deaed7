import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { partsScreen } from './open-parts.ts';

/** Habits of a spreadsheet that need real keys, a real mouse and the real clipboard. */

const { open } = partsScreen();
const ALL = ['Side', 'Top', 'Shelf', 'Back', 'Plinth', 'Stool seat', 'Cleat'];

/** What lies in the clipboard in one flavour. */
function flavour(page: Page, type: 'text/plain' | 'text/html'): Promise<string> {
  return page.evaluate(async (wanted) => {
    const [item] = await navigator.clipboard.read();
    return item?.types.includes(wanted) ? (await item.getType(wanted)).text() : '';
  }, type);
}

/** Presses on the number of a row and drags it to just inside the top or the bottom of another row. */
async function dragNumber(page: Page, from: number, to: number, half: 'top' | 'bottom'): Promise<void> {
  const boxOf = async (row: number) => {
    const box = await page.locator(`.ag-row[row-index="${row}"] [col-id="number"]`).boundingBox();
    if (box === null) throw new Error(`row ${row} is not drawn`);
    return box;
  };
  const start = await boxOf(from);
  const end = await boxOf(to);
  await page.mouse.move(start.x + start.width / 2, start.y + start.height / 2);
  await page.mouse.down();
  const y = half === 'top' ? end.y + 3 : end.y + end.height - 3;
  await page.mouse.move(end.x + end.width / 2, y, { steps: 6 });
}

describe('the keys of a spreadsheet', () => {
  it('go to the ends of the row and of the list, and take the range along with Shift', async () => {
    const { page, grid } = await open();
    const last = await page.evaluate(() => {
      const columns = [...document.querySelectorAll('.ag-header-cell')];
      return columns.at(-1)?.getAttribute('col-id') ?? '';
    });
    const press = async (key: string, focused: string): Promise<void> => {
      await page.keyboard.press(key);
      await expect.poll(() => grid.focused()).toBe(focused);
    };
    await grid.cell(2, 'width').click();
    await press('Home', '2 number');
    await press('End', `2 ${last}`);
    await press('Control+Home', '0 number');
    await press('Control+End', `7 ${last}`);
    await grid.cell(2, 'width').click();
    await press('Control+ArrowUp', '0 width');
    await press('Control+ArrowLeft', '0 number');
    await press('Control+ArrowDown', '7 number');
    await grid.cell(4, 'width').click();
    await page.keyboard.press('Control+Shift+ArrowUp');
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(5);
    await expect.poll(() => grid.focused()).toBe('4 width');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(0);
  });

  it('go with Shift and the mouse from where the range began', async () => {
    const { page, grid } = await open();
    await grid.cell(1, 'length').click();
    await grid.cell(3, 'width').click({ modifiers: ['Shift'] });
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(6);
    await expect.poll(() => grid.focused()).toBe('1 length');
    await grid.cell(2, 'length').click({ modifiers: ['Shift'] });
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(2);
    await grid.cell(1, 'number').click();
    await grid.cell(4, 'number').click({ modifiers: ['Shift'] });
    await expect.poll(() => page.locator('.kind-ordinal.range-row').count()).toBe(4);
  });

  it('open a cell with F2, keep what stands there, and Escape gives it back', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(1, 'length').click();
    await page.keyboard.press('F2');
    await page.keyboard.type('5');
    await expect.poll(() => page.locator('.ag-cell input').inputValue()).toBe('9005');
    await page.keyboard.press('Escape');
    await expect.poll(() => grid.text(1, 'length')).toBe('900');
    expect(sent).toEqual([]);
  });

  it('enter one value into a whole column of selected cells at once', async () => {
    const { page, grid, sent, stored } = await open();
    await grid.cell(0, 'quantity').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.type('9');
    await page.keyboard.press('Control+Enter');
    await grid.settled();
    await expect
      .poll(async () => (await stored()).rows.parts.slice(0, 4).map(({ quantity }) => quantity))
      .toEqual(['9', '9', '9', '1']);
    expect(sent).toHaveLength(1);
  });
});

describe('the clipboard', () => {
  it('holds a range as lines with tabs and as a table, with what might be markup as text', async () => {
    const { page, grid } = await open();
    await grid.type(0, 'name', 'Side <b>left</b>');
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+c');
    await expect
      .poll(async () => (await flavour(page, 'text/plain')).replaceAll('\r', ''))
      .toBe('Side <b>left</b>\tCarcass\nTop\tCarcass');
    const table = await page.evaluate(
      async (html) => {
        const read = new DOMParser().parseFromString(html, 'text/html');
        return [...read.querySelectorAll('tr')].map((row) =>
          [...row.querySelectorAll('td')].map((cell) => cell.textContent),
        );
      },
      await flavour(page, 'text/html'),
    );
    expect(table).toEqual([
      ['Side <b>left</b>', 'Carcass'],
      ['Top', 'Carcass'],
    ]);
  });

  it('puts 1,000 rows of 8 columns down in one step, and one undo takes them back', async () => {
    const { page, grid, sent, stored } = await open();
    const lines = Array.from({ length: 1000 }, (_, row) =>
      [`Rail ${row + 1}`, 'Frame', '2', String(300 + (row % 90)), '60', 'birch 18', 'along', 'bare'].join(
        '\t',
      ),
    );
    await page.evaluate((text) => navigator.clipboard.writeText(text), lines.join('\n'));
    await grid.cell(7, 'name').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await expect.poll(async () => (await stored()).rows.parts.length).toBe(1007);
    expect(sent).toHaveLength(1);
    expect((await stored()).rows.parts.at(-1)).toMatchObject({
      name: 'Rail 1000',
      section: 'Frame',
      length: '309 mm',
      materialId: 'birch-ply-18',
      edgeFront: 'bare',
    });
    // A long list's layouts are fetched when they are looked at.
    await page.locator('.navigation a', { hasText: 'Cutting' }).click();
    await expect.poll(() => page.locator('.layout svg').count()).toBeGreaterThan(5);
    await page.locator('.navigation a', { hasText: 'Parts' }).click();
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(async () => (await stored()).rows.parts.map(({ name }) => name)).toEqual(ALL);
  });
});

describe('rows taken by their numbers', () => {
  it('go where the mouse lets them go, in one step, with the range along', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(1, 'number').click();
    await grid.cell(2, 'number').click({ modifiers: ['Shift'] });
    await dragNumber(page, 1, 4, 'bottom');
    await expect.poll(() => page.locator('.ag-row[row-index="5"] .drop-line').count()).toBeGreaterThan(0);
    await page.mouse.up();
    await grid.settled();
    const moved = ['Side', 'Back', 'Plinth', 'Top', 'Shelf', 'Stool seat', 'Cleat'];
    await expect.poll(() => grid.names()).toEqual(moved);
    expect(sent).toHaveLength(1);
    expect(await page.locator('.drop-line').count()).toBe(0);
    // The same rows are selected still, and go back up.
    await dragNumber(page, 3, 0, 'top');
    await page.mouse.up();
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Top', 'Shelf', 'Side', 'Back', ...ALL.slice(4)]);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(ALL);
  });

  it('stay where they are with Escape, and a press alone selects one row', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(1, 'number').click();
    await grid.cell(3, 'number').click({ modifiers: ['Shift'] });
    await dragNumber(page, 2, 6, 'bottom');
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await grid.cell(2, 'number').click();
    await expect.poll(() => grid.focused()).toBe('2 number');
    await expect.poll(() => page.locator('.kind-ordinal.range-row').count()).toBe(1);
    expect(sent).toEqual([]);
    await expect.poll(() => grid.names()).toEqual(ALL);
  });

  it('can be put at the very end, and not while the list is sorted, which is said', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(0, 'number').click();
    await dragNumber(page, 0, 7, 'bottom');
    await page.mouse.up();
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual([...ALL.slice(1), 'Side']);
    await page.locator('.ag-header-cell[col-id="length"]').hover();
    await page.locator('.ag-header-cell[col-id="length"] .head-sort').click();
    await grid.cell(0, 'number').click();
    await dragNumber(page, 0, 3, 'bottom');
    await page.mouse.up();
    await page.getByText('The list is shown sorted').waitFor();
    expect(sent).toHaveLength(1);
  });
});
