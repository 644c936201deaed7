import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pino } from 'pino';
import { build } from 'vite';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { writeProjectDocument } from '../../server/exchange/project-document.ts';
import { startServer } from '../../server/start-server.ts';
import { startSettings } from '../../server/start-settings.ts';
import { importProject } from '../browser/import-project.ts';
import { openBrowser } from '../browser/open-browser.ts';
import { partsGrid } from '../browser/parts-grid-cells.ts';
import { demoProject } from './demo-project.ts';
import { syntheticProject } from './synthetic-project.ts';

const ROWS = 500;
const WARM = 5;

/**
 * One edit of a width in a real Chromium on a project of 500 part rows: from the Enter key to the answered, redrawn
 * grid, and the server's share of it. `npm run bench -- edit [edits]`; 50 edits by default.
 */
export async function run(args: string[]): Promise<void> {
  const edits = Number(args[0] ?? 50);
  await build({
    configFile: new URL('../../client/vite.config.ts', import.meta.url).pathname,
    logLevel: 'warn',
  });
  const folder = mkdtempSync(join(tmpdir(), 'plywright-bench-'));
  const settings = startSettings({ PORT: '0', PLYWRIGHT_DB: join(folder, 'plywright.db') });
  const server = await startServer(settings, pino({ level: 'silent' }));
  const browser = await openBrowser();
  try {
    const document = writeProjectDocument(syntheticProject(demoProject(), ROWS), readCatalogue());
    const { id } = await importProject(server.url, document);
    const { page } = await browser.visit(`${server.url}/#/p/${id}/parts`);
    await page.waitForSelector('.ag-row[row-index="0"]');
    const grid = partsGrid(page);
    const whole: number[] = [];
    const answered: number[] = [];
    for (let edit = 0; edit < WARM + edits; edit++) {
      await grid.cell(edit % 15, 'width').click();
      await page.keyboard.type(String(5 + (edit % 7)));
      const answer = page.waitForResponse((response) => response.request().method() !== 'GET');
      const start = performance.now();
      await page.keyboard.press('Enter');
      await answer;
      const afterAnswer = performance.now() - start;
      await grid.settled();
      if (edit < WARM) continue;
      answered.push(afterAnswer);
      whole.push(performance.now() - start);
    }
    print('Enter to the server’s answer', answered);
    print('Enter to the redrawn grid', whole);
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function print(what: string, times: number[]): void {
  times.sort((left, right) => left - right);
  const at = (share: number): string =>
    (times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0).toFixed(0);
  console.log(
    `${what.padEnd(30)} ${ROWS} rows · ${times.length} edits · min ${at(0)} · p50 ${at(0.5)} · p95 ${at(0.95)} · max ${at(0.999)} ms`,
  );
}
