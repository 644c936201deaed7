import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { type StartedApp, startApp } from '../http/open-app.ts';
import { importProject, readProject } from './import-project.ts';
import { type OpenBrowser, openBrowser, type Visit, type VisitOptions } from './open-browser.ts';

/** The window-seat demo in a real browser, one fresh copy of the project per test. */

const demo = JSON.parse(
  readFileSync(new URL('../../db/demo/reading-room-window-seat.json', import.meta.url), 'utf8'),
) as object;

export interface Opened {
  readonly page: Page;
  readonly id: string;
  /** The project as the server has it now. */
  readonly stored: () => Promise<ProjectState>;
}

export interface Screens {
  readonly url: () => string;
  /** Opens a screen of the demo, or of the project given. */
  readonly open: (
    screen: string,
    options?: VisitOptions & { readonly projectId?: string },
  ) => Promise<Opened>;
  /** The next complaint like this one is asked for by the test. */
  readonly expectComplaint: (like: RegExp) => void;
}

/** Starts the program and the browser for one test file; a test fails on any complaint it did not ask for. */
export function screens(): Screens {
  let app: StartedApp | undefined;
  let browser: OpenBrowser | undefined;
  let visits: Visit[] = [];
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
  const url = (): string => app?.url ?? '';
  return {
    url,
    async open(screen, { projectId, ...options } = {}) {
      const id = projectId ?? (await importProject(url(), demo)).id;
      if (browser === undefined) throw new Error('the browser is not open yet');
      const visit = await browser.visit(`${url()}/#/p/${id}/${screen}`, options);
      visits.push(visit);
      await visit.page.waitForSelector(`.screen[data-screen="${screen}"] h1`, { state: 'attached' });
      return { page: visit.page, id, stored: () => readProject(url(), id) };
    },
    expectComplaint: (like) => {
      expected = like;
    },
  };
}

/** Types into a field as a person does and waits until the server has answered. */
export async function type(page: Page, at: string, text: string): Promise<void> {
  const field = page.locator(`[data-at="${at}"]`);
  await field.fill(text);
  const answered = page.waitForResponse((answer) => answer.request().method() === 'POST');
  await field.press('Enter');
  await answered;
}

/** The text of one element, without the spaces that only its source has. */
export async function textOf(locator: Locator): Promise<string> {
  return ((await locator.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
}

export async function textsOf(locator: Locator): Promise<string[]> {
  return (await locator.allTextContents()).map((text) => text.replaceAll(/\s+/g, ' ').trim());
}

/** Waits until the keyboard is in the row named so. */
export async function focusIn(page: Page, row: string): Promise<void> {
  await page.waitForFunction(
    (name) => document.activeElement?.closest('[data-row]')?.getAttribute('data-row') === name,
    row,
  );
}

export async function countOf(page: Page, selector: string, count: number): Promise<void> {
  await page.waitForFunction(
    ([wanted, many]) => document.querySelectorAll(wanted as string).length === many,
    [selector, count] as const,
  );
}
