import { existsSync } from 'node:fs';
import axe from 'axe-core';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

/** Drives a real Chromium over the started program. */

const WHERE_IT_MAY_BE = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
] as const;

/** Without a sandbox, a graphics card, or anything that speaks to the network by itself. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

/** Where a Chromium is. Throws when there is none: a browser test that cannot run has not passed. */
export function findChromium(environment: NodeJS.ProcessEnv = process.env): string {
  const named = environment.CHROMIUM_PATH;
  if (named !== undefined && named !== '') {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, and there is no such file.`);
  }
  const found = WHERE_IT_MAY_BE.find((path) => existsSync(path));
  if (found !== undefined) return found;
  throw new Error(
    'No Chromium was found. Install one (Debian: apt-get install -y chromium), or set CHROMIUM_PATH to its program.',
  );
}

export interface VisitOptions {
  readonly width?: number;
  readonly height?: number;
  readonly mode?: 'light' | 'dark';
  /** A phone: touch, and a viewport that behaves like one. */
  readonly phone?: boolean;
}

export interface Visit {
  readonly page: Page;
  /** Errors on the console, uncaught errors, and requests that left the machine, in the order they came. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

export interface OpenBrowser {
  visit(url: string, options?: VisitOptions): Promise<Visit>;
  close(): Promise<void>;
}

export async function openBrowser(): Promise<OpenBrowser> {
  const browser = await chromium.launch({ executablePath: findChromium(), args: [...FLAGS] });
  return {
    visit: (url, options = {}) => visit(browser, url, options),
    close: () => browser.close(),
  };
}

async function visit(browser: Browser, url: string, options: VisitOptions): Promise<Visit> {
  const { width = 1440, height = 900, mode = 'light', phone = false } = options;
  const settings: BrowserContextOptions = {
    viewport: { width, height },
    colorScheme: mode,
    reducedMotion: 'reduce',
    permissions: ['clipboard-read', 'clipboard-write'],
    hasTouch: phone,
    isMobile: phone,
  };
  const context = await browser.newContext(settings);
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      complaints.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url());
    if (hostname !== '127.0.0.1' && protocol !== 'data:' && protocol !== 'blob:')
      complaints.push(`request to ${request.url()}`);
  });
  await page.goto(url);
  return { page, complaints, close: () => context.close() };
}

/** What axe finds wrong with the page as it stands, one line each; empty when it finds nothing. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(' ')} — ${node.failureSummary ?? ''}`),
    );
  });
}

/** How far the page can be scrolled sideways, in CSS pixels: 0 when nothing sticks out. */
export function sidewaysOverflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
