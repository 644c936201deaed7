import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { ChangeRequest } from '../../server/http/contract.ts';
import { type StartedApp, startApp } from '../http/open-app.ts';
import { importProject, readProject } from './import-project.ts';
import { type OpenBrowser, openBrowser, type Visit } from './open-browser.ts';
import { type PartsGrid, partsGrid } from './parts-grid-cells.ts';

let app: StartedApp;
let browser: OpenBrowser;
let visit: Visit | null = null;

beforeAll(async () => {
  app = await startApp();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await app?.close();
});
afterEach(async () => {
  const complaints = visit?.complaints ?? [];
  await visit?.close();
  visit = null;
  expect(complaints).toEqual([]);
});

interface Opened {
  readonly page: Page;
  readonly grid: PartsGrid;
  readonly projectId: string;
  /** The edits sent so far. */
  readonly sent: ChangeRequest[];
}

/** A fresh bookcase on the part list. */
async function open(document?: object): Promise<Opened> {
  const { id } = await importProject(app.url, document);
  visit = await browser.visit(`${app.url}/#/p/${id}/parts`, { width: 1900 });
  const { page } = visit;
  const sent: ChangeRequest[] = [];
  page.on('request', (request) => {
    if (request.method() === 'POST' && request.url().endsWith('/changes'))
      sent.push(request.postDataJSON() as ChangeRequest);
  });
  await page.waitForSelector('.ag-row[row-index="0"]');
  return { page, grid: partsGrid(page), projectId: id, sent };
}

const metres = (text: string): number => Number(/^[\d.]+/.exec(text)?.[0]);

describe('the part list', () => {
  it('carries an edited width through to banding, liquid and cost, and keeps it over a reload', async () => {
    const { page, grid, projectId } = await open();
    const before = await readProject(app.url, projectId);
    const banded = metres(await grid.total('totals/bandedM'));
    const litres = metres(await grid.total('totals/litres'));
    await grid.type(1, 'width', '400');
    // The top is banded left and right: 100 mm more on two edges are 0.2 m.
    await expect.poll(async () => metres(await grid.total('totals/bandedM'))).toBeCloseTo(banded + 0.2, 2);
    await expect.poll(async () => metres(await grid.total('totals/litres'))).toBeGreaterThan(litres);
    await expect.poll(() => grid.text(1, 'cutWidthMm')).toBe('400');
    const after = await readProject(app.url, projectId);
    const tape = (project: typeof before): number =>
      project.plan.banding.find(({ id }) => id === 'birch-veneer-22')?.neededM ?? 0;
    // The left strip joins the front one and the right one stands alone: each grows by 100 mm.
    expect(tape(after)).toBeCloseTo(tape(before) + 0.2, 6);

    // The buy list says the same: what is needed of the tape, as printed there.
    const line = (project: typeof before): number =>
      project.plan.buy.lines.find(({ id }) => id === 'birch-veneer-22')?.need ?? 0;
    expect(line(after)).toBeCloseTo(line(before) + 0.2, 6);
    await page.locator('.navigation a', { hasText: 'Buy' }).click();
    const needed = page.locator('[data-figure="buying/lines/birch-veneer-22/need"]').first();
    await expect.poll(() => needed.textContent()).toBe(`${line(after).toFixed(2)} m`);
    await page.locator('.navigation a', { hasText: 'Parts' }).click();
    await page.waitForSelector('.ag-row[row-index="0"]');

    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(() => grid.text(1, 'width')).toBe('400');
    await expect.poll(async () => metres(await grid.total('totals/bandedM'))).toBeCloseTo(banded + 0.2, 2);
  });

  it('moves like a spreadsheet: Enter down, Tab right, Escape back, Delete clears, arrows leave a typed cell', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(0, 'length').click();
    await page.keyboard.type('1810');
    await page.keyboard.press('Enter');
    await expect.poll(() => grid.focused()).toBe('1 length');
    await page.keyboard.type('910');
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('1 width');
    await page.keyboard.type('305');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => grid.focused()).toBe('1 length');
    await page.keyboard.press('F2');
    await page.keyboard.type('99');
    await page.keyboard.press('Escape');
    await grid.settled();
    await expect
      .poll(async () => [
        await grid.text(0, 'length'),
        await grid.text(1, 'length'),
        await grid.text(1, 'width'),
      ])
      .toEqual(['1810', '910', '305']);
    await grid.cell(0, 'section').click();
    await page.keyboard.press('Delete');
    await grid.settled();
    await expect.poll(() => grid.text(0, 'section')).toBe('');
    expect(sent).toHaveLength(4);
  });

  it('passes over computed columns with Tab and goes on to the next row at the end', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'backRecipeId').click();
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('0 grainMatch');
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('0 note');
    await page.keyboard.press('Tab');
    await expect.poll(() => grid.focused()).toBe('1 name');
    await page.keyboard.press('Shift+Tab');
    await expect.poll(() => grid.focused()).toBe('0 note');
  });

  it('reads inches in a metric project, and opening a cell without a change sends nothing', async () => {
    const { page, grid, sent, projectId } = await open();
    await grid.type(0, 'length', '23 5/8"');
    // 23.625 in x 25.4 mm = 600.075 mm, printed with one decimal.
    await expect.poll(() => grid.text(0, 'length')).toBe('600.1');
    await grid.cell(0, 'length').click();
    await page.keyboard.press('F2');
    await page.keyboard.press('Enter');
    await grid.settled();
    expect(sent).toHaveLength(1);
    const { plan, rows } = await readProject(app.url, projectId);
    expect(plan.parts.find(({ id }) => id === rows.parts[0]?.id)?.lengthMm).toBeCloseTo(600.075, 6);
  });

  it('edits a sum as the sum it is, and shows its value', async () => {
    const { page, grid } = await open();
    await expect.poll(() => grid.text(2, 'length')).toBe('864');
    await grid.cell(2, 'length').click();
    await page.keyboard.press('F2');
    await expect.poll(() => page.locator('.cell-input').inputValue()).toBe('=inside');
    await page.keyboard.type(' - 2*12');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(2, 'length')).toBe('840');
  });

  it('shows an unreadable cell as typed, says what is wrong beside it, and is content once it is put right', async () => {
    const { page, grid } = await open();
    const cell = grid.cell(4, 'length');
    await expect.poll(() => grid.text(4, 'length')).toBe('21 13/1');
    await expect.poll(() => cell.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => grid.text(4, 'cutLengthMm')).toBe('unknown');
    await cell.click();
    const note = page.locator('.cell-note');
    await note.waitFor({ state: 'visible' });
    await expect.poll(() => note.textContent()).toContain('13/1');
    await expect.poll(() => cell.getAttribute('aria-describedby')).toBe(await note.getAttribute('id'));
    await page.keyboard.type('550');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(4, 'length')).toBe('550');
    await expect.poll(() => cell.getAttribute('aria-invalid')).toBeNull();
  });

  it('finds a banding product by typing, and leaves the cell alone when nothing is called so', async () => {
    const { page, grid } = await open();
    await grid.cell(3, 'edgeFront').click();
    await page.keyboard.type('walnut');
    await page.locator('.choice-editor li').first().waitFor();
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(3, 'edgeFront')).toBe('walnut tape 7/8');
    await expect.poll(() => grid.cell(3, 'edgeFront').locator('.swatch').count()).toBe(1);
    await grid.cell(3, 'edgeBack').click();
    await page.keyboard.type('ebony');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.choice-nothing').textContent()).toContain('ebony');
    await page.keyboard.press('Escape');
    await expect.poll(() => grid.text(3, 'edgeBack')).toBe('hidden');
    await grid.cell(3, 'edgeFront').click();
    await page.keyboard.press('Delete');
    await grid.settled();
    await expect.poll(() => grid.text(3, 'edgeFront')).toBe('hidden');
  });

  it('chooses with the arrow keys and with the mouse', async () => {
    const { page, grid } = await open();
    await grid.cell(3, 'grain').click();
    await page.keyboard.press('F2');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(3, 'grain')).toBe('across');
    await grid.cell(3, 'grain').dblclick();
    await page.locator('.choice-editor li', { hasText: 'free' }).click();
    await grid.settled();
    await expect.poll(() => grid.text(3, 'grain')).toBe('free');
  });

  it('takes a part typed in the last line at full speed as one part', async () => {
    const { page, grid, projectId } = await open();
    await page.getByRole('button', { name: 'Add part' }).click();
    for (const text of ['Door', 'Front', '2', '700']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.type('400');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(() => grid.names())
      .toEqual(['Side', 'Top', 'Shelf', 'Back', 'Plinth', 'Stool seat', 'Cleat', 'Door']);
    const door = (await readProject(app.url, projectId)).rows.parts.at(-1);
    expect(door).toMatchObject({
      name: 'Door',
      section: 'Front',
      quantity: '2',
      length: '700 mm',
      width: '400 mm',
    });
    // The line that is left for the next part is blank again.
    await expect.poll(() => grid.text(8, 'name')).toBe('Add a part');
  });
});

describe('ranges of the part list', () => {
  const clipboard = (page: Page): Promise<string> => page.evaluate(() => navigator.clipboard.readText());

  it('are copied as lines and tabs, and pasted as one edit that one undo takes back', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(0, 'length').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+c');
    await expect.poll(async () => (await clipboard(page)).replaceAll('\r', '')).toBe('1800\t300\n900\t300');
    await grid.cell(2, 'length').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await expect
      .poll(async () => [
        await grid.text(2, 'length'),
        await grid.text(2, 'width'),
        await grid.text(3, 'length'),
        await grid.text(3, 'width'),
      ])
      .toEqual(['1800', '300', '900', '300']);
    expect(sent).toHaveLength(1);
    expect(sent[0]?.changes).toHaveLength(2);
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(2, 'length'), await grid.text(3, 'width')])
      .toEqual(['864', '880']);
    await page.keyboard.press('Control+y');
    await grid.settled();
    await expect.poll(() => grid.text(2, 'length')).toBe('1800');
  });

  it('keep sums and exact sizes when copied within the program', async () => {
    const { page, grid, projectId } = await open();
    await grid.type(0, 'length', '23 5/8"');
    await grid.cell(2, 'length').click();
    await page.keyboard.press('Control+c');
    await grid.cell(3, 'length').click();
    await page.keyboard.press('Control+v');
    await grid.cell(0, 'length').click();
    await page.keyboard.press('Control+c');
    await grid.cell(1, 'length').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    const { rows } = await readProject(app.url, projectId);
    expect(rows.parts[3]?.length).toBe('=inside');
    expect(rows.parts[1]?.length).toBe('23 5/8"');
  });

  it('grow the list when a paste runs past its end, and mark what is not understood', async () => {
    const { page, grid, sent } = await open();
    await page.evaluate(() =>
      navigator.clipboard.writeText(
        'Rail\tDoor\t2\t600\t60\tbirch 18\nStile\tDoor\t2\t"23 5/8"""\t60\tebony 40\nPanel\tDoor\t1\tfifty\t400\tbirch 6\n',
      ),
    );
    await grid.cell(6, 'name').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await expect
      .poll(() => grid.names())
      .toEqual(['Side', 'Top', 'Shelf', 'Back', 'Plinth', 'Stool seat', 'Rail', 'Stile', 'Panel']);
    await expect.poll(() => grid.text(7, 'length')).toBe('600.1');
    await expect.poll(() => grid.text(7, 'materialId')).toBe('ebony 40');
    await expect.poll(() => grid.cell(7, 'materialId').getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => grid.cell(8, 'length').getAttribute('aria-invalid')).toBe('true');
    expect(sent).toHaveLength(1);
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(async () => (await grid.names()).at(-1)).toBe('Cleat');
  });

  it('take one pasted value into every cell, and pass over computed ones', async () => {
    const { page, grid, sent } = await open();
    await page.evaluate(() => navigator.clipboard.writeText('310'));
    await grid.cell(0, 'width').click();
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+v');
    await grid.settled();
    await expect
      .poll(() => Promise.all([0, 1, 2, 3].map((row) => grid.text(row, 'width'))))
      .toEqual(['310', '310', '310', '310']);
    await grid.cell(0, 'cutLengthMm').click();
    await page.keyboard.press('Control+v');
    await page.keyboard.press('Delete');
    await grid.settled();
    expect(sent).toHaveLength(1);
  });

  it('are filled down and right, and cleared, each as one edit', async () => {
    const { page, grid, sent } = await open();
    await grid.cell(0, 'width').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+d');
    await grid.settled();
    await expect
      .poll(() => Promise.all([1, 2].map((row) => grid.text(row, 'width'))))
      .toEqual(['300', '300']);
    await grid.cell(3, 'edgeFront').click();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+r');
    await grid.settled();
    await expect
      .poll(() => Promise.all(['edgeBack', 'edgeLeft'].map((column) => grid.text(2, column))))
      .toEqual(['birch tape 22', 'birch tape 22']);
    await page.keyboard.press('Delete');
    await grid.settled();
    await expect
      .poll(() => Promise.all(['edgeFront', 'edgeBack', 'edgeLeft'].map((column) => grid.text(2, column))))
      .toEqual(['hidden', 'hidden', 'hidden']);
    expect(sent).toHaveLength(3);
  });

  it('are drawn with the mouse and filled by their corner', async () => {
    const { page, grid, sent } = await open();
    const middle = async (row: number, column: string): Promise<[number, number]> => {
      const box = await grid.cell(row, column).boundingBox();
      if (box === null) throw new Error('the cell is not drawn');
      return [box.x + box.width / 2, box.y + box.height / 2];
    };
    await page.mouse.move(...(await middle(1, 'section')));
    await page.mouse.down();
    await page.mouse.move(...(await middle(2, 'quantity')), { steps: 4 });
    await page.mouse.move(...(await middle(3, 'length')), { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => page.locator('.ag-cell.in-range').count()).toBe(9);

    const box = await grid.cell(0, 'width').boundingBox();
    if (box === null) throw new Error('the cell is not drawn');
    await grid.cell(0, 'width').click();
    await page.mouse.move(box.x + box.width - 4, box.y + box.height - 4);
    await page.mouse.down();
    await page.mouse.move(...(await middle(1, 'width')), { steps: 3 });
    await page.mouse.move(...(await middle(3, 'width')), { steps: 3 });
    await page.mouse.up();
    await grid.settled();
    await expect
      .poll(() => Promise.all([1, 2, 3].map((row) => grid.text(row, 'width'))))
      .toEqual(['300', '300', '300']);
    expect(sent).toHaveLength(1);
  });

  it('go on past the edge of the window while the mouse is held there', async () => {
    const rows = Array.from({ length: 60 }, (_, index) => ({
      name: `Slat ${index + 1}`,
      length: '600',
      width: '40',
    }));
    const { page, grid } = await open({
      format: 'plywright-project',
      version: 1,
      settings: { name: 'Slats', units: 'metric', currency: 'EUR' },
      parts: rows,
    });
    const box = await grid.cell(3, 'name').boundingBox();
    if (box === null) throw new Error('the cell is not drawn');
    await page.mouse.move(box.x + 20, box.y + 10);
    await page.mouse.down();
    await page.mouse.move(box.x + 20, 895, { steps: 4 });
    // 60 rows do not fit in 900 px, so row 45 can only be reached by scrolling.
    await page.waitForSelector('.ag-row[row-index="45"] .in-range');
    await page.mouse.up();
    await page.keyboard.press('Control+c');
    const copied = (await clipboard(page)).split(/\r?\n/);
    expect(copied[0]).toBe('Slat 4');
    expect(copied.length).toBeGreaterThan(42);
    expect(copied.every((line) => /^Slat \d+$/.test(line))).toBe(true);
  });

  it('cover everything with Ctrl+A, whole rows by their number, and come out as text other programs read', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+c');
    const lines = (await clipboard(page)).split(/\r?\n/);
    // Seven parts; the line that waits for a new one is not content.
    expect(lines).toHaveLength(7);
    expect(lines[0]?.split('\t').slice(1, 7)).toEqual(['Side', 'Carcass', '2', '1800', '300', 'birch 18']);
    await grid.cell(2, 'number').click();
    await page.keyboard.press('Control+c');
    await expect
      .poll(async () => (await clipboard(page)).split('\t').slice(1, 4))
      .toEqual(['Shelf', 'Carcass', '5']);
  });

  it('are cut and put down elsewhere', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'section').click();
    await page.keyboard.press('Control+x');
    await grid.cell(0, 'note').click();
    await page.keyboard.press('Control+v');
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(0, 'section'), await grid.text(0, 'note')])
      .toEqual(['', 'Carcass']);
  });
});

describe('rows of the part list', () => {
  it('are inserted, duplicated, moved and deleted, and each is undone in one step', async () => {
    const { page, grid } = await open();
    const all = ['Side', 'Top', 'Shelf', 'Back', 'Plinth', 'Stool seat', 'Cleat'];
    await grid.cell(1, 'name').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Alt+ArrowDown');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Side', 'Back', 'Top', 'Shelf', ...all.slice(4)]);
    // The range went along, so that pressing again goes on with the same rows.
    await page.keyboard.press('Alt+ArrowDown');
    await grid.settled();
    await expect
      .poll(() => grid.names())
      .toEqual(['Side', 'Back', 'Plinth', 'Top', 'Shelf', ...all.slice(5)]);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(all);

    await grid.cell(1, 'name').click();
    await page.keyboard.press('Alt+Shift+ArrowDown');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Top', ...all.slice(2)]);
    await expect.poll(() => grid.focused()).toBe('2 name');
    await page.keyboard.press('Control+Delete');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(all);

    await grid.cell(1, 'name').click();
    await page.keyboard.press('Control+Enter');
    await grid.settled();
    await expect.poll(() => grid.focused()).toBe('2 name');
    await page.keyboard.type('Divider');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(['Side', 'Top', 'Divider', ...all.slice(2)]);
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual(all);
  });

  it('show their corner radii when there are any, and on demand', async () => {
    const { page, grid } = await open();
    await expect.poll(() => grid.text(1, 'radiusFrontLeft')).toBe('40');
    await page.getByRole('button', { name: 'Columns' }).click();
    await page.getByRole('checkbox', { name: 'Corner radii' }).uncheck();
    await expect.poll(() => grid.cell(1, 'radiusFrontLeft').count()).toBe(0);
    await page.getByRole('checkbox', { name: 'Corner radii' }).check();
    await expect.poll(() => grid.cell(1, 'radiusFrontLeft').count()).toBe(1);
  });

  it('open the working of a computed cell with Enter, and of a total with a click', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'cutLengthMm').click();
    await page.keyboard.press('Escape');
    await grid.cell(0, 'cutWidthMm').focus();
    await page.keyboard.press('Enter');
    await page.locator('#working').waitFor();
    await expect.poll(() => page.locator('#working').textContent()).toContain('300');
    await page.keyboard.press('Escape');
    await page.locator('#working').waitFor({ state: 'detached' });
    await page.locator('.ag-row-pinned [col-id="totalBandedM"] .figure').click();
    await page.locator('#working').waitFor();
  });
});
