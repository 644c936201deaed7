import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { ChangeRequest, ProjectState } from '../../server/http/contract.ts';
import { type StartedApp, startApp } from '../http/open-app.ts';
import { importProject, readProject } from './import-project.ts';
import { type OpenBrowser, openBrowser, type Visit, type VisitOptions } from './open-browser.ts';
import { type PartsGrid, partsGrid } from './parts-grid-cells.ts';

export interface OpenParts {
  readonly page: Page;
  readonly grid: PartsGrid;
  readonly id: string;
  /** The edits sent so far. */
  readonly sent: ChangeRequest[];
  readonly stored: () => Promise<ProjectState>;
}

/** Starts the program and the browser for one test file; a test fails on anything the browser complains of. */
export function partsScreen(): {
  /** The part list of a fresh copy of a project; the bookcase when none is given. */
  readonly open: (options?: VisitOptions & { readonly document?: object }) => Promise<OpenParts>;
} {
  let app: StartedApp | undefined;
  let browser: OpenBrowser | undefined;
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
  return {
    async open({ document, ...options } = {}) {
      if (app === undefined || browser === undefined) throw new Error('the browser is not open yet');
      const { url } = app;
      const { id } = await importProject(url, document);
      visit = await browser.visit(`${url}/#/p/${id}/parts`, { width: 1900, ...options });
      const { page } = visit;
      const sent: ChangeRequest[] = [];
      page.on('request', (request) => {
        if (request.method() === 'POST' && request.url().endsWith('/changes'))
          sent.push(request.postDataJSON() as ChangeRequest);
      });
      await page.waitForSelector('.ag-row[row-index="0"]');
      return { page, grid: partsGrid(page), id, sent, stored: () => readProject(url, id) };
    },
  };
}
