import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pino } from 'pino';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { writeProjectDocument } from '../../server/exchange/project-document.ts';
import { startServer } from '../../server/start-server.ts';
import { startSettings } from '../../server/start-settings.ts';
import { importProject } from '../browser/import-project.ts';
import { openBrowser } from '../browser/open-browser.ts';
import { type PartsGrid, partsGrid } from '../browser/parts-grid-cells.ts';
import { demoProject } from './demo-project.ts';
import { syntheticProject } from './synthetic-project.ts';

const SIZES = [500, 5_000, 20_000];
const EDITS = 8;
const WARM = 2;
/** One turn of the wheel, CSS pixels, and how many follow each other, one a frame. */
const TURN_PX = 240;
const TURNS = 150;
/** Jumps of the scroll bar to somewhere else in the list. */
const JUMPS = 30;

/**
 * The part list in a real Chromium through the real server: how even the frames are while it scrolls, how soon a
 * typed value is seen and how soon it is answered, searched and sorted. `npm run bench -- grid [rows]`; 500, 5,000
 * and 20,000 rows by default.
 */
export async function run(args: string[]): Promise<void> {
  await build({
    configFile: new URL('../../client/vite.config.ts', import.meta.url).pathname,
    logLevel: 'error',
  });
  for (const rows of args.length === 0 ? SIZES : args.map(Number)) await runFor(rows);
}

async function runFor(rows: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'plywright-bench-'));
  const settings = startSettings({ PORT: '0', PLYWRIGHT_DB: join(folder, 'plywright.db') });
  const server = await startServer(settings, pino({ level: 'silent' }));
  const browser = await openBrowser();
  try {
    const document = writeProjectDocument(syntheticProject(demoProject(), rows), readCatalogue());
    const { id } = await importProject(server.url, document);
    const opened = performance.now();
    const { page } = await browser.visit(`${server.url}/#/p/${id}/parts`);
    page.setDefaultTimeout(120_000);
    // The runner names the functions it hands to the page, with a helper the page has not got.
    await page.evaluate('globalThis.__name = (named) => named');
    await page.waitForSelector('.ag-row[row-index="0"]');
    console.log(`${rows} rows · opened in ${(performance.now() - opened).toFixed(0)} ms`);
    const grid = partsGrid(page);
    print('  at rest, gaps between frames', await gaps(page, () => page.waitForTimeout(1500)));
    print('  turning the wheel', await gaps(page, () => turnWheel(page)));
    print('  jumping by the scroll bar', await gaps(page, () => jump(page)));
    await toTop(page);
    const edits = await edit(page, grid);
    print('  typed value seen', edits.seen);
    print('  edit answered and drawn', edits.answered);
    print('  longest gap per edit', edits.longest);
    print('  letter typed to list narrowed', await search(page));
    print('  sorted by a header', await sort(page, grid));
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Times between the page's frames, ms, while something is done. */
async function gaps(page: Page, work: () => Promise<unknown>): Promise<number[]> {
  await page.evaluate(() => {
    const frames: number[] = [];
    Object.assign(window, { frames });
    const note = (time: number): void => {
      frames.push(time);
      if ((window as unknown as { frames: number[] }).frames === frames) requestAnimationFrame(note);
    };
    requestAnimationFrame(note);
  });
  await work();
  const frames = await page.evaluate(() => {
    const { frames } = window as unknown as { frames: number[] };
    Object.assign(window, { frames: [] });
    return frames;
  });
  return frames.slice(1).map((time, index) => time - (frames[index] ?? time));
}

async function turnWheel(page: Page): Promise<void> {
  await page.mouse.move(500, 500);
  for (let turn = 0; turn < TURNS; turn++) {
    await page.mouse.wheel(0, turn < TURNS / 2 ? TURN_PX : -TURN_PX);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
  }
}

async function jump(page: Page): Promise<void> {
  await page.evaluate(async (jumps) => {
    const viewport = document.querySelector('.ag-grid-viewport');
    if (viewport === null) throw new Error('the list has no viewport');
    const height = viewport.scrollHeight;
    // Far apart and always the same: steps of the golden ratio round the list.
    for (let step = 1; step <= jumps; step++) {
      viewport.scrollTop = height * ((step * 0.618) % 1);
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    }
  }, JUMPS);
}

async function toTop(page: Page): Promise<void> {
  await page.evaluate(() => document.querySelector('.ag-grid-viewport')?.scrollTo({ top: 0 }));
  await page.waitForSelector('.ag-row[row-index="0"]');
}

async function edit(
  page: Page,
  grid: PartsGrid,
): Promise<{ seen: number[]; answered: number[]; longest: number[] }> {
  const result = { seen: [] as number[], answered: [] as number[], longest: [] as number[] };
  for (let edit = 0; edit < WARM + EDITS; edit++) {
    const row = edit % 15;
    const typed = String(5 + (edit % 7));
    await grid.cell(row, 'width').click();
    await page.keyboard.type(typed);
    await watchFor(page, row, typed);
    let answered = 0;
    const frames = await gaps(page, async () => {
      const answer = page.waitForResponse((response) => response.request().method() === 'POST');
      const start = performance.now();
      await page.keyboard.press('Enter');
      await answer;
      await grid.settled();
      answered = performance.now() - start;
    });
    const seen = await page.evaluate(() => (window as unknown as { seen: Promise<number> }).seen);
    if (edit < WARM) continue;
    result.seen.push(seen);
    result.answered.push(answered);
    result.longest.push(Math.max(...frames));
  }
  return result;
}

/** The page notes by its own clock how long after the next key the cell shows what was typed. */
function watchFor(page: Page, row: number, text: string): Promise<unknown> {
  return page.evaluate(
    ([at, typed]) => {
      const selector = `.ag-row[row-index="${at}"] [col-id="width"] .cell-text`;
      const seen = new Promise<number>((done) => {
        const look = (from: number): void => {
          if (document.querySelector(selector)?.textContent?.startsWith(typed))
            done(performance.now() - from);
          else requestAnimationFrame(() => look(from));
        };
        window.addEventListener('keydown', ({ timeStamp }) => look(timeStamp), { once: true, capture: true });
      });
      Object.assign(window, { seen });
    },
    [String(row), text] as const,
  );
}

async function search(page: Page): Promise<number[]> {
  const times: number[] = [];
  await page.keyboard.press('Control+f');
  for (const letter of 'shelf 4') {
    const start = performance.now();
    await page.keyboard.press(letter === ' ' ? 'Space' : letter);
    await twoFrames(page);
    times.push(performance.now() - start);
  }
  await page.keyboard.press('Escape');
  await twoFrames(page);
  return times;
}

async function sort(page: Page, grid: PartsGrid): Promise<number[]> {
  const times: number[] = [];
  for (const column of ['length', 'name']) {
    await grid.cell(0, column).click();
    await page.keyboard.press('ArrowUp');
    for (let press = 0; press < 3; press++) {
      const start = performance.now();
      await page.keyboard.press('Enter');
      await twoFrames(page);
      times.push(performance.now() - start);
    }
  }
  return times;
}

function twoFrames(page: Page): Promise<unknown> {
  return page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

function print(what: string, times: number[]): void {
  times.sort((left, right) => left - right);
  const at = (share: number): string =>
    (times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0).toFixed(0).padStart(5);
  console.log(
    `${what.padEnd(34)} p50 ${at(0.5)} · p95 ${at(0.95)} · max ${at(1)} ms · ${times.length} times`,
  );
}
