import { once } from 'node:events';
import { createServer } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshFile } from '../db/fresh-file.ts';
import { addressOf, runProgram } from '../http/run-program.ts';
import { importProject, readProject } from './import-project.ts';
import { type OpenBrowser, openBrowser } from './open-browser.ts';
import { partsGrid } from './parts-grid-cells.ts';

let browser: OpenBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A port that nobody listens at just now. */
async function freePort(): Promise<string> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return String(typeof address === 'object' ? address?.port : '');
}

describe('undo', () => {
  it('goes on where it was after the page is loaded anew, and after the server is killed and started again', async () => {
    const env = { PLYWRIGHT_DB: freshFile(), PLYWRIGHT_CUTTING_SECONDS: '0', PORT: await freePort() };
    const first = runProgram('main', env);
    const url = await addressOf(first);
    const { id, rows } = await importProject(url);
    const { page } = await browser.visit(`${url}/#/p/${id}/parts`, { width: 1900 });
    const grid = partsGrid(page);
    const press = async (keys: string): Promise<void> => {
      await page.keyboard.press(keys);
      await grid.settled();
    };
    const loaded = async (): Promise<void> => {
      await page.reload();
      await page.waitForSelector('.ag-row[row-index="0"]');
      await grid.cell(0, 'name').click();
    };
    await page.waitForSelector('.ag-row[row-index="0"]');
    await grid.type(0, 'width', '333');
    await page.evaluate(() => navigator.clipboard.writeText('Left\nMiddle\nRight'));
    await grid.cell(0, 'name').click();
    await press('Control+v');
    await expect.poll(async () => (await grid.names()).slice(0, 3)).toEqual(['Left', 'Middle', 'Right']);
    await grid.type(1, 'quantity', '9');

    await loaded();
    await press('Control+z');
    await expect.poll(() => grid.text(1, 'quantity')).toBe(rows.parts[1]?.quantity);

    first.kill('SIGKILL');
    await once(first, 'exit');
    await addressOf(runProgram('main', env));
    await loaded();
    await press('Control+z');
    await expect.poll(() => grid.text(0, 'name')).toBe(rows.parts[0]?.name);
    await press('Control+z');
    await expect.poll(async () => (await readProject(url, id)).rows).toEqual(rows);
    // All three can be done again.
    for (let step = 0; step < 3; step++) await press('Control+y');
    await expect
      .poll(async () => [
        await grid.text(0, 'name'),
        await grid.text(0, 'width'),
        await grid.text(1, 'quantity'),
      ])
      .toEqual(['Left', '333', '9']);
  });
});
