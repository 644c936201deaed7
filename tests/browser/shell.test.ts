import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type StartedApp, startApp } from '../http/open-app.ts';
import { importProject, readProject } from './import-project.ts';
import {
  axeFaults,
  findChromium,
  type OpenBrowser,
  openBrowser,
  sidewaysOverflow,
  type Visit,
  type VisitOptions,
} from './open-browser.ts';
import { type PartsGrid, partsGrid } from './parts-grid-cells.ts';

let app: StartedApp;
let browser: OpenBrowser;
let visits: Visit[] = [];
/** Complaints a test has asked for by breaking something on purpose. */
let expected: RegExp | null = null;

beforeAll(async () => {
  app = await startApp();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await app?.close();
});
afterEach(async () => {
  const complaints = visits.flatMap((visit) => visit.complaints);
  for (const visit of visits) await visit.close();
  visits = [];
  const unexpected = complaints.filter((complaint) => expected?.test(complaint) !== true);
  expected = null;
  expect(unexpected).toEqual([]);
});

interface Opened {
  readonly page: Page;
  readonly grid: PartsGrid;
  readonly id: string;
}

async function open(options: VisitOptions = {}): Promise<Opened> {
  const { id } = await importProject(app.url);
  return openAt(id, options);
}

async function openAt(id: string, options: VisitOptions = {}): Promise<Opened> {
  const visit = await browser.visit(`${app.url}/#/p/${id}/parts`, options);
  visits.push(visit);
  await visit.page.waitForSelector('.ag-row[row-index="0"]');
  return { page: visit.page, grid: partsGrid(visit.page), id };
}

/** An edit from somewhere else: another window, a script. */
async function editElsewhere(id: string, values: Record<string, string>): Promise<void> {
  const { revision, rows } = await readProject(app.url, id);
  const changes = [{ op: 'update', table: 'parts', id: rows.parts[0]?.id, values }];
  const answer = await fetch(`${app.url}/api/projects/${id}/changes`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ revision, changes }),
  });
  expect(answer.status).toBe(200);
}

describe('the browser tests', () => {
  it('say how to get a browser when there is none', () => {
    expect(() => findChromium({ CHROMIUM_PATH: '/nowhere/chromium' })).toThrow(
      /CHROMIUM_PATH names \/nowhere/,
    );
    expect(findChromium({ CHROMIUM_PATH: process.execPath })).toBe(process.execPath);
  });
});

describe('problems', () => {
  it('are counted by severity, and a click leads to the cell', async () => {
    const { page, grid } = await open();
    const button = page.locator('#problems-button');
    await expect.poll(() => button.textContent()).toMatch(/2 errors/);
    await button.click();
    const first = page.locator('.problem', { hasText: 'Plinth' }).first();
    await expect.poll(() => first.textContent()).toContain('13/1');
    await first.click();
    await page.waitForFunction(() => document.activeElement?.getAttribute('col-id') === 'length');
    await expect.poll(() => grid.focused()).toBe('4 length');
    // Typing goes straight into the cell that was asked for.
    await page.keyboard.type('550');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => button.textContent()).toMatch(/1 error(?!s)/);
    await expect.poll(() => page.locator('.problem', { hasText: 'Plinth' }).count()).toBe(0);
  });

  it('give the focus back when the panel is closed with Escape', async () => {
    const { page } = await open();
    await page.locator('#problems-button').focus();
    await page.keyboard.press('Enter');
    await page.locator('#problems').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('#problems').waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('problems-button');
  });
});

describe('the keyboard alone', () => {
  it('reaches the list, adds a part, undoes it, opens a working and goes to another screen', async () => {
    const { page, grid, id } = await open();
    await page.keyboard.press('Tab');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe('Skip to the work area');
    // F6 goes round the regions of the page: bar, screens, work area.
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('F6');
    await expect
      .poll(() => page.evaluate(() => document.querySelector('#main')?.contains(document.activeElement)))
      .toBe(true);
    for (let step = 0; step < 20; step += 1) {
      if (await page.evaluate(() => document.activeElement?.textContent?.includes('Add part'))) break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await expect.poll(() => grid.focused()).toBe('7 name');
    await page.keyboard.type('Rail');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.type('2');
    await page.keyboard.press('Tab');
    await page.keyboard.type('600');
    await page.keyboard.press('Tab');
    await page.keyboard.type('60');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => (await readProject(app.url, id)).rows.parts.at(-1))
      .toMatchObject({
        name: 'Rail',
        quantity: '2',
        length: '600 mm',
        width: '60 mm',
      });

    await page.keyboard.press('Control+z');
    await grid.settled();
    await expect
      .poll(async () => (await readProject(app.url, id)).rows.parts.at(-1))
      .toMatchObject({
        name: 'Rail',
        length: '600 mm',
        width: '',
      });
    await page.keyboard.press('Control+Shift+z');
    await grid.settled();
    await expect.poll(async () => (await readProject(app.url, id)).rows.parts.at(-1)?.width).toBe('60 mm');

    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Control+ArrowRight');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => grid.focused()).toMatch(/ totalFinishM2$/);
    await page.keyboard.press('Enter');
    await page.locator('#working h2').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('#working').waitFor({ state: 'detached' });

    await page.keyboard.press('F6');
    for (let step = 0; step < 4 && !(await inNavigation(page)); step += 1) await page.keyboard.press('F6');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(new URL(page.url()).hash).toBe(`#/p/${id}/cutting`);
  });

  it('opens its own list with a question mark', async () => {
    const { page } = await open();
    await page.locator('#problems-button').focus();
    await page.keyboard.press('?');
    await expect.poll(() => page.locator('dialog[open]').textContent()).toContain('fills down');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog').count()).toBe(0);
  });
});

const inNavigation = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.activeElement?.closest('.navigation') != null);

describe('edits that cannot be taken', () => {
  it('because another window was first are shown, kept and can be applied again', async () => {
    expected = /409/;
    const { page, grid, id } = await open();
    // Without events this window does not hear of the other edit in time.
    await page.route('**/events', (route) => route.abort());
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    expected = /409|ERR_FAILED/;
    await editElsewhere(id, { name: 'Left side' });
    await grid.type(0, 'width', '333');
    const notice = page.locator('.notice');
    await expect.poll(() => notice.textContent()).toContain('width “333”');
    await expect
      .poll(async () => [await grid.text(0, 'name'), await grid.text(0, 'width')])
      .toEqual(['Left side', '300']);
    await notice.getByRole('button', { name: 'Apply again' }).click();
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(0, 'name'), await grid.text(0, 'width')])
      .toEqual(['Left side', '333']);
    await expect.poll(() => notice.count()).toBe(0);
  });

  it('because the server is gone wait together in the notice', async () => {
    expected = /ERR_FAILED/;
    const { page, grid } = await open();
    await page.route('**/changes', (route) => route.abort());
    await grid.type(1, 'width', '222');
    await grid.type(2, 'width', '223');
    const notice = page.locator('.notice');
    await expect.poll(() => notice.textContent()).toMatch(/does not answer.*width “222”, width “223”/s);
    await expect.poll(() => grid.text(1, 'width')).toBe('300');
    await page.unroute('**/changes');
    await notice.getByRole('button', { name: 'Apply again' }).click();
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(1, 'width'), await grid.text(2, 'width')])
      .toEqual(['222', '223']);
  });

  it('are refused with words when a closed list does not hold them', async () => {
    const { page, grid } = await open();
    await page.evaluate(() => navigator.clipboard.writeText('diagonal'));
    await grid.cell(0, 'grain').click();
    await page.keyboard.press('Control+v');
    await expect
      .poll(() => page.locator('.notice').textContent())
      .toContain('“diagonal” is not a grain direction');
    await expect.poll(() => grid.text(0, 'grain')).toBe('along');
  });
});

describe('two windows', () => {
  it('on one project see one another’s edits', async () => {
    const first = await open();
    const second = await openAt(first.id);
    await first.grid.type(0, 'name', 'Gable');
    await second.page.waitForFunction(
      () => document.querySelector('.ag-row[row-index="0"] [col-id="name"]')?.textContent === 'Gable',
    );
    await second.grid.type(1, 'name', 'Lid');
    await first.page.waitForFunction(
      () => document.querySelector('.ag-row[row-index="1"] [col-id="name"]')?.textContent === 'Lid',
    );
  });
});

describe('an entry being typed', () => {
  it('stays where it is when another window saves, and goes into its cell', async () => {
    const { page, grid, id } = await open();
    await grid.cell(1, 'width').click();
    await page.keyboard.type('44');
    await editElsewhere(id, { name: 'Gable' });
    await page.waitForFunction(
      () => document.querySelector('.ag-row[row-index="0"] [col-id="name"]')?.textContent === 'Gable',
    );
    await page.keyboard.type('5');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(0, 'name'), await grid.text(1, 'width')])
      .toEqual(['Gable', '445']);
    // The same row: the other window's value stands in its own cell.
    await grid.cell(0, 'width').click();
    await page.keyboard.type('33');
    await editElsewhere(id, { length: '1700' });
    await page.waitForFunction(
      () => document.querySelector('.ag-row[row-index="0"] [col-id="length"]')?.textContent === '1700',
    );
    await page.keyboard.type('3');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect
      .poll(async () => [await grid.text(0, 'length'), await grid.text(0, 'width')])
      .toEqual(['1700', '333']);
  });
});

describe('projects', () => {
  it('are made, copied, opened and deleted after asking', async () => {
    const { page, grid } = await open();
    const menu = async (item: string): Promise<void> => {
      await page.locator('.project-button').click();
      await page.locator('.menu-item', { hasText: item }).first().click();
    };
    await menu('New project');
    await page.locator('dialog input').fill('Porch seat');
    await page.locator('dialog [name=units]').selectOption('us');
    await page.locator('dialog [name=currency]').selectOption('USD');
    await page.getByRole('button', { name: 'Create project' }).click();
    await page.waitForFunction(() => document.querySelector('.project-name')?.textContent === 'Porch seat');
    await grid.settled();
    await expect.poll(() => grid.names()).toEqual([]);
    await expect.poll(() => page.locator('.chip').allTextContents()).toEqual(['inch', 'USD']);
    await page.getByRole('button', { name: 'Add part' }).click();
    await page.keyboard.type('Seat');
    await page.keyboard.press('Enter');
    await grid.settled();
    await grid.type(0, 'length', '23.625');
    await expect.poll(() => grid.text(0, 'length')).toBe('23 5/8"');

    await menu('Duplicate');
    await page.locator('dialog input').fill('Porch seat in oak');
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      () => document.querySelector('.project-name')?.textContent === 'Porch seat in oak',
    );
    await expect.poll(() => grid.names()).toEqual(['Seat']);

    await menu('Delete this project');
    await expect.poll(() => page.locator('dialog').textContent()).toContain('“Porch seat in oak”');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await menu('Delete this project');
    await page.getByRole('button', { name: 'Delete project' }).click();
    await page.waitForFunction(
      () => document.querySelector('.project-name')?.textContent !== 'Porch seat in oak',
    );
    await page.locator('.project-button').click();
    const names = await page.locator('#project-list').textContent();
    expect(names).toContain('Porch seat');
    expect(names).not.toContain('Porch seat in oak');
    // Brought back from the notice at once, and from the list of deleted ones later.
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Bring it back' }).click();
    const opened = (): Promise<string | null> => page.locator('.project-name').textContent();
    await expect.poll(opened).toBe('Porch seat in oak');
    await expect.poll(() => grid.names()).toEqual(['Seat']);
    await menu('Delete this project');
    await page.getByRole('button', { name: 'Delete project' }).click();
    await expect.poll(opened).not.toBe('Porch seat in oak');
    await menu('Deleted projects');
    await page.getByRole('button', { name: 'Bring back Porch seat in oak' }).click();
    await expect.poll(opened).toBe('Porch seat in oak');
    await expect.poll(() => page.locator('dialog').count()).toBe(0);
    await page.locator('.project-button').click();
    await page
      .locator('.menu-item', { hasText: /Porch seat(?! in oak)/ })
      .first()
      .click();
    await page.waitForFunction(() => document.querySelector('.project-name')?.textContent === 'Porch seat');
  });
});

describe('the page', () => {
  it('remembers the colours chosen', async () => {
    const { page } = await open({ mode: 'light' });
    const ground = (): Promise<string> =>
      page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await ground();
    // system -> light -> dark
    await page.locator('.mode').click();
    await page.locator('.mode').click();
    const dark = await ground();
    expect(dark).not.toBe(light);
    await page.reload();
    await page.waitForSelector('.ag-row[row-index="0"]');
    await expect.poll(() => ground()).toBe(dark);
  });

  it('says that the server is gone, and starts when it is back', async () => {
    expected = /ERR_FAILED/;
    const { page } = await open();
    await page.route('**/api/**', (route) => route.abort());
    await page.reload();
    await page.getByRole('heading', { name: 'does not answer' }).waitFor();
    await page.unroute('**/api/**');
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.waitForSelector('.ag-row[row-index="0"]');
  });

  it('says so when the code of a screen cannot be fetched', async () => {
    expected = /ERR_FAILED|Failed to fetch dynamically imported module/;
    const { page } = await open();
    await page.route('**/render-buy-screen*', (route) => route.abort());
    await page.locator('.navigation a', { hasText: 'Buy' }).click();
    await page.getByRole('heading', { name: 'could not be fetched' }).waitFor();
  });

  it('shows every screen, each under its own address and title', async () => {
    const { page, id } = await open();
    for (const [screen, words] of [
      ['cutting', 'Cutting'],
      ['banding', 'Banding'],
      ['finish', 'Finish'],
      ['buy', 'Buy'],
      ['ledger', 'Ledger'],
      ['quotes', 'Quotes'],
      ['catalogue', 'Catalogue'],
      ['settings', 'Settings'],
      ['parts', 'Parts'],
    ]) {
      await page.locator('.navigation a', { hasText: words ?? '' }).click();
      await page.locator(`.screen[data-screen="${screen}"] h1`).first().waitFor();
      expect(new URL(page.url()).hash).toBe(`#/p/${id}/${screen}`);
      await expect.poll(() => page.title()).toBe(`Hall bookcase · ${words} · Plywright`);
    }
    await page.goBack();
    await page.locator('.screen[data-screen="settings"] h1').first().waitFor();
    await page.goForward();
    await page.waitForSelector('.ag-row[row-index="0"]');
  });

  it('fits a phone: nothing sticks out, the name column stays, a second tap edits', async () => {
    const { page, grid } = await open({ width: 390, height: 844, phone: true });
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    await expect.poll(() => page.locator('.navigation').boundingBox()).toMatchObject({ x: 0, width: 390 });
    await grid.cell(1, 'quantity').tap();
    await expect.poll(() => page.locator('.cell-input').count()).toBe(0);
    await grid.cell(1, 'quantity').tap();
    await page.locator('.cell-input').fill('3');
    await page.keyboard.press('Enter');
    await grid.settled();
    await expect.poll(() => grid.text(1, 'quantity')).toBe('3');
    const before = await grid.cell(0, 'name').boundingBox();
    await grid.cell(0, 'note').scrollIntoViewIfNeeded();
    await expect.poll(async () => (await grid.cell(0, 'name').boundingBox())?.x).toBe(before?.x);
    await page.getByRole('button', { name: 'Drawing' }).tap();
    await page.locator('.parts-panel').waitFor();
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
    await page.locator('#problems-button').tap();
    await page.locator('#problems').waitFor();
    await expect.poll(() => sidewaysOverflow(page)).toBe(0);
  });
});

describe('the bar at the foot of a phone', () => {
  it('keeps the later screens behind its last button, which says where one is', async () => {
    const { page } = await open({ width: 390, height: 844, phone: true });
    const more = page.getByRole('button', { name: 'More' });
    await more.tap();
    await page
      .getByRole('navigation', { name: 'More screens' })
      .getByRole('link', { name: 'Settings' })
      .tap();
    await page.locator('.screen[data-screen="settings"] h1').first().waitFor();
    await page.getByRole('button', { name: 'Settings', exact: true }).waitFor();
    await page.locator('#more-screens').waitFor({ state: 'hidden' });
    expect(await axeFaults(page)).toEqual([]);
  });
});

describe('axe finds nothing wrong', () => {
  for (const mode of ['light', 'dark'] as const) {
    it(`with the list, a selected part, problems, a working and the dialogs, ${mode}`, async () => {
      const { page, grid } = await open({ mode });
      await grid.cell(1, 'name').click();
      expect(await axeFaults(page)).toEqual([]);
      await page.locator('#problems-button').click();
      expect(await axeFaults(page)).toEqual([]);
      await page.locator('.totals .figure').first().click();
      await page.locator('#working h2').waitFor();
      expect(await axeFaults(page)).toEqual([]);
      await grid.cell(2, 'edgeFront').click();
      await page.keyboard.press('F2');
      await page.locator('.choice-editor').waitFor();
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.locator('.help').click();
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.locator('.project-button').click();
      expect(await axeFaults(page)).toEqual([]);
      await page.locator('.menu-item', { hasText: 'New project' }).click();
      expect(await axeFaults(page)).toEqual([]);
    });

    it(`on a phone, ${mode}`, async () => {
      const { page, grid } = await open({ mode, width: 390, height: 844, phone: true });
      await grid.cell(1, 'name').tap();
      await page.getByRole('button', { name: 'Drawing' }).tap();
      expect(await axeFaults(page)).toEqual([]);
    });
  }
});
