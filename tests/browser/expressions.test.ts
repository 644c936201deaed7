import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { importProject, readProject } from './import-project.ts';
import { axeFaults } from './open-browser.ts';
import { screens, textOf, type } from './open-screen.ts';
import { type PartsGrid, partsGrid } from './parts-grid-cells.ts';

/** Named sizes and the cells that use them, from the first definition to a switch of the units. */

const { open: openScreen, url, expectComplaint } = screens();

interface Opened {
  readonly page: Page;
  readonly grid: PartsGrid;
  readonly id: string;
}

/** A fresh bookcase on the part list. */
async function open(): Promise<Opened> {
  const { id } = await importProject(url());
  const { page } = await openScreen('parts', { projectId: id, width: 1900 });
  await page.waitForSelector('.ag-row[row-index="0"]');
  return { page, grid: partsGrid(page), id };
}

async function show(page: Page, screen: 'Parts' | 'Buy' | 'Settings'): Promise<void> {
  await page.locator('.navigation a', { hasText: screen }).click();
  await page.waitForSelector(`.screen[data-screen="${screen.toLowerCase()}"] h1`, { state: 'attached' });
}

/** Adds a named size on the settings screen; answers its id. */
async function addSize(page: Page, id: string, name: string, value: string): Promise<string> {
  await show(page, 'Settings');
  await page.locator('[data-add="sizes"]').click();
  await page.waitForFunction(() => document.activeElement?.closest('[data-row^="sizes/"]') !== null);
  const sizeId = (await readProject(url(), id)).rows.sizes.at(-1)?.id ?? '';
  await type(page, `sizes/${sizeId}/name`, name);
  await type(page, `sizes/${sizeId}/value`, value);
  return sizeId;
}

const cutWidths = (grid: PartsGrid): Promise<string[]> =>
  Promise.all([0, 1, 2].map((row) => grid.text(row, 'cutWidthMm')));

async function taped(page: Page): Promise<string> {
  await show(page, 'Buy');
  await page.waitForSelector('.buy-screen[data-current="yes"]');
  const text = await textOf(page.locator('[data-figure="buying/lines/birch-veneer-22/need"]').first());
  await show(page, 'Parts');
  await page.waitForSelector('.ag-row[row-index="0"]');
  return text;
}

const reading = (page: Page) => page.locator('.typing-card [role="status"]');

describe('a named size', () => {
  it('is defined once, used in three parts, and changed for all of them and the buy list in one step', async () => {
    const { page, grid, id } = await open();
    const sizeId = await addSize(page, id, 'depth', '300');
    await show(page, 'Parts');
    await grid.type(0, 'width', '=depth');
    await grid.type(1, 'width', '=depth');
    await grid.type(2, 'width', '=depth - 15');
    await expect.poll(() => cutWidths(grid)).toEqual(['300', '300', '285']);
    // The lengths these cells had before are the same, and so is what is to be bought.
    const tape = await taped(page);

    await show(page, 'Settings');
    await type(page, `sizes/${sizeId}/value`, '400');
    await show(page, 'Parts');
    await grid.settled();
    await expect.poll(() => cutWidths(grid)).toEqual(['400', '400', '385']);
    // Of these parts only the top is banded left and right: 100 mm more on two edges are 0.2 m.
    const metres = (text: string): number => Number(/^[\d.]+(?= m$)/.exec(text)?.[0]);
    await expect.poll(async () => metres(await taped(page))).toBeCloseTo(metres(tape) + 0.2, 2);

    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(() => cutWidths(grid)).toEqual(['300', '300', '285']);
    await expect.poll(() => taped(page)).toBe(tape);
    await expect.poll(async () => (await readProject(url(), id)).rows.sizes.at(-1)?.value).toBe('300 mm');
  });

  it('is renamed wherever it is used, and back with one undo', async () => {
    const { page, grid, id } = await open();
    const [inside] = (await readProject(url(), id)).rows.sizes;
    await grid.type(0, 'width', '=inside/3 + 12');
    await show(page, 'Settings');
    await type(page, `sizes/${inside?.id}/name`, 'clear_width');
    const { rows, undoLabel } = await readProject(url(), id);
    expect([rows.parts[0]?.width, rows.parts[2]?.length]).toEqual(['=clear_width/3 + 12 mm', '=clear_width']);
    expect(undoLabel).toBe('rename named size “inside” to “clear_width” in 2 calculations');
    await show(page, 'Parts');
    await expect
      .poll(async () => [await grid.text(0, 'width'), await grid.text(2, 'length')])
      .toEqual(['300', '864']);
    await grid.cell(0, 'name').click();
    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect.poll(async () => (await readProject(url(), id)).rows.parts[2]?.length).toBe('=inside');
  });

  it('does not take the name of another, and says so at the field with what was typed kept', async () => {
    const { page, id } = await open();
    expectComplaint(/status of 409/);
    const sizeId = await addSize(page, id, 'depth', '300');
    await type(page, `sizes/${sizeId}/name`, 'Inside');
    const field = page.locator(`[data-at="sizes/${sizeId}/name"]`);
    await page.locator(`#said-sizes-${sizeId}-name`).waitFor();
    await expect.poll(() => textOf(page.locator(`#said-sizes-${sizeId}-name`))).toContain('«inside» already');
    await expect.poll(() => field.inputValue()).toBe('Inside');
    await expect.poll(async () => (await readProject(url(), id)).rows.sizes.at(-1)?.name).toBe('depth');
  });

  it('keeps every millimetre when the units are switched', async () => {
    const { page, grid, id } = await open();
    await grid.type(0, 'width', '=inside - 564');
    await grid.type(1, 'width', '=round(inside/3.1)');
    await grid.type(3, 'length', '=2*890');
    const before = await readProject(url(), id);
    // 864 - 564 = 300; 864/3.1 = 278.7; 2 x 890.
    await expect
      .poll(async () => [
        await grid.text(0, 'width'),
        await grid.text(1, 'width'),
        await grid.text(3, 'length'),
      ])
      .toEqual(['300', '279', '1780']);
    await show(page, 'Settings');
    const answered = page.waitForResponse((answer) => answer.request().method() === 'POST');
    await page.locator('[data-at="settings//units"]').selectOption('us');
    await answered;
    const after = await readProject(url(), id);
    expect(after.settings.units).toBe('us');
    const millimetres = ({ plan }: typeof before) =>
      plan.parts.map(({ lengthMm, widthMm }) => [lengthMm, widthMm]);
    expect(millimetres(after)).toEqual(millimetres(before));
    await show(page, 'Parts');
    await grid.cell(0, 'width').click();
    await page.keyboard.press('F2');
    await expect.poll(() => page.locator('.cell-input').inputValue()).toBe('=inside - 564 mm');
    await page.keyboard.press('Escape');
  });
});

describe('a mistake in a calculation', () => {
  it('in a cell is told while it is typed, marked once it is stored, and led to from the list of problems', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'length').click();
    await page.keyboard.type('=shelf - 2');
    await page.waitForFunction(() =>
      document.querySelector('.typing-card [role="status"]')?.textContent?.includes('no size named «shelf»'),
    );
    await expect.poll(() => textOf(reading(page))).toContain('inside');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.cell(0, 'length').getAttribute('aria-invalid')).toBe('true');
    await page.locator('#problems-button').click();
    await page.locator('.problem', { hasText: 'no size named «shelf»' }).click();
    await page.waitForFunction(() => document.activeElement?.getAttribute('col-id') === 'length');
    await expect.poll(() => grid.focused()).toBe('0 length');
  });

  it('that makes sizes depend on each other is shown at each of them and led to', async () => {
    const { page, grid, id } = await open();
    const sizeId = await addSize(page, id, 'outside', '=inside + 36');
    const [inside] = (await readProject(url(), id)).rows.sizes;
    await type(page, `sizes/${inside?.id}/value`, '=outside - 36');
    await page.locator(`#said-sizes-${sizeId}-value`).waitFor();
    await expect
      .poll(() => textOf(page.locator(`#said-sizes-${inside?.id}-value`)))
      .toContain('inside uses outside uses inside');
    // A part that hangs on the loop is unknown, and not to blame.
    await show(page, 'Parts');
    await expect.poll(() => grid.text(2, 'cutLengthMm')).toBe('unknown');
    await expect.poll(() => grid.cell(2, 'length').getAttribute('aria-invalid')).toBeNull();
    await page.locator('#problems-button').click();
    await page.locator('.problem', { hasText: 'outside uses inside uses outside' }).click();
    await page.waitForFunction(
      (at) => document.activeElement?.getAttribute('data-at') === at,
      `sizes/${sizeId}/value`,
    );
    await page.keyboard.press('Control+a');
    await page.keyboard.type('900');
    await page.keyboard.press('Enter');
    await page.locator(`#said-sizes-${inside?.id}-value`).waitFor({ state: 'detached' });
    await show(page, 'Parts');
    await expect.poll(() => grid.text(2, 'cutLengthMm')).toBe('864'); // 900 - 36
  });

  it('by deleting a size is shown at the cells that used it', async () => {
    const { page, grid } = await open();
    await show(page, 'Settings');
    await page.getByRole('button', { name: 'Remove inside' }).click();
    await page.waitForFunction(() => document.querySelector('[data-row^="sizes/"]') === null);
    await show(page, 'Parts');
    await grid.settled();
    await expect.poll(() => grid.cell(2, 'length').getAttribute('aria-invalid')).toBe('true');
    await grid.cell(2, 'length').click();
    await expect.poll(() => textOf(page.locator('.cell-note'))).toContain('no size named «inside»');
  });
});

describe('a cell being typed', () => {
  it('shows what it is read as, in the unit of the project and in full', async () => {
    const { page, grid, id } = await open();
    await grid.cell(0, 'length').click();
    await page.keyboard.type('23 5/8"');
    await page.waitForFunction(() =>
      document.querySelector('.typing-card')?.textContent?.includes('600.1 mm'),
    );
    // 23.625 in x 25.4 mm.
    await expect.poll(() => textOf(reading(page))).toBe('Reads as 600.1 mm 600.075 mm');
    await expect.poll(() => reading(page).getAttribute('aria-live')).toBe('polite');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.typing-card').count()).toBe(0);
    await grid.cell(0, 'quantity').click();
    await page.keyboard.type('=inside/216 mm');
    await page.waitForFunction(() =>
      document.querySelector('.typing-card')?.textContent?.includes('4 pieces'),
    );
    await page.keyboard.press('Escape');
    await expect.poll(async () => (await readProject(url(), id)).revision).toBe(1);
  });

  it('offers names at the equals sign: arrows choose, Enter and Tab take, Escape closes the list before the cell', async () => {
    const { page, grid, id } = await open();
    await addSize(page, id, 'in_front', '20');
    await show(page, 'Parts');
    const offers = page.locator('.typing-card [role="option"]');
    const input = page.locator('.cell-input');
    await grid.cell(0, 'width').click();
    await page.keyboard.type('=');
    await expect.poll(() => offers.allTextContents()).toEqual(['inside864 mm', 'in_front20 mm']);
    await expect.poll(() => input.getAttribute('aria-expanded')).toBe('true');
    await expect.poll(() => input.getAttribute('aria-activedescendant')).toBeNull();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const active = (await input.getAttribute('aria-activedescendant')) ?? '';
    await expect.poll(() => page.locator(`#${active}`).textContent()).toContain('in_front');
    expect(await axeFaults(page)).toEqual([]);
    await page.keyboard.press('Tab');
    await expect.poll(() => input.inputValue()).toBe('=in_front');
    await expect.poll(() => offers.count()).toBe(0);
    await page.keyboard.type(' * 2 + ins');
    await expect.poll(() => offers.allTextContents()).toEqual(['inside864 mm']);
    await page.keyboard.press('Enter');
    await expect.poll(() => input.inputValue()).toBe('=in_front * 2 + inside');
    await page.waitForFunction(() => document.querySelector('.typing-card')?.textContent?.includes('904 mm'));
    await page.keyboard.type(' - in');
    // What is wrong with half a name is said once the names that would complete it are sent away.
    await page.waitForTimeout(1000);
    await expect.poll(() => reading(page).textContent()).toBe('');
    await page.keyboard.press('Escape');
    await expect.poll(() => offers.count()).toBe(0);
    await expect.poll(() => textOf(reading(page))).toContain('no size named «in»');
    await expect.poll(() => input.inputValue()).toBe('=in_front * 2 + inside - in');
    await page.keyboard.press('Escape');
    await expect.poll(() => input.count()).toBe(0);
    await expect.poll(() => grid.text(0, 'width')).toBe('300');
  });

  it('takes a name with the mouse, and commits with Enter once a name is typed in full', async () => {
    const { page, grid } = await open();
    await grid.cell(0, 'width').click();
    await page.keyboard.type('=i');
    await page.locator('.typing-card [role="option"]', { hasText: 'inside' }).click();
    await page.keyboard.type(' / 3');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.focused(), await grid.text(0, 'width')])
      .toEqual(['1 width', '288']);
    await page.keyboard.type('=inside');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.focused(), await grid.text(1, 'width')])
      .toEqual(['2 width', '864']);
    // A unit behind a number is no name, though one begins like it.
    await page.keyboard.type('=11 in');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.focused(), await grid.text(2, 'width')])
      .toEqual(['3 width', '279.4']);
  });

  it('never waits for the reading: keys are taken and the cell is committed while the server is silent', async () => {
    const { page, grid } = await open();
    let asked = 0;
    await page.route('**/reading', () => {
      asked += 1;
    });
    await grid.cell(0, 'length').click();
    await page.keyboard.type('=inside');
    await page.waitForTimeout(300);
    await page.keyboard.type(' - 2*12');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(0, 'length')).toBe('840');
    expect(asked).toBeGreaterThan(0);
    await expect.poll(() => page.locator('.typing-card').count()).toBe(0);
  });

  it('asks once per pause and drops an answer that something else has been typed over', async () => {
    const { page, grid } = await open();
    const texts: string[] = [];
    await page.route('**/reading', async (route) => {
      const { text } = route.request().postDataJSON() as { text: string };
      texts.push(text);
      // The answer to the first question comes after the one to the second.
      if (texts.length === 1) await new Promise((done) => setTimeout(done, 900));
      await route.continue();
    });
    await grid.cell(0, 'length').click();
    await page.keyboard.type('70');
    await page.waitForTimeout(300);
    await page.keyboard.type('0');
    await page.waitForFunction(() => document.querySelector('.typing-card')?.textContent?.includes('700 mm'));
    await page.waitForTimeout(900);
    expect(texts).toEqual(['70', '700']);
    await expect.poll(() => textOf(reading(page))).toBe('Reads as 700 mm');
    await page.keyboard.press('Escape');
  });
});
