import { describe, expect, it } from 'vitest';
import { figureIn } from '../../client/state/figure-in.ts';
import type { ProjectState } from '../../server/http/contract.ts';
import { axeFaults, sidewaysOverflow } from './open-browser.ts';
import { screens, textOf, textsOf } from './open-screen.ts';

/** The screens beside the part list, on the window-seat demo. */

const { open, url } = screens();

const PHONE = { width: 390, height: 844, phone: true } as const;

describe('the banding screen', () => {
  it('shows each product with its rolls, drawn to scale and listed', async () => {
    const { page, stored } = await open('banding');
    const { banding } = (await stored()).plan;
    expect(banding.length).toBeGreaterThan(1);
    await expect
      .poll(() => textsOf(page.locator('.banding-screen article h2')))
      .toEqual(banding.map(({ name }) => name));
    await expect
      .poll(() => page.locator('.roll-bar').count())
      .toBe(banding.flatMap(({ rolls }) => rolls).length);
    const strips = banding.flatMap(({ rolls }) => rolls.flatMap((roll) => roll.strips));
    await expect.poll(() => page.locator('.roll-bar .strip').count()).toBe(strips.length);
  });

  it('says which strip the keyboard is on', async () => {
    const { page } = await open('banding');
    const strip = page.locator('.roll-bar .strip').first();
    await strip.focus();
    await expect
      .poll(() => textOf(page.locator('.roll-said').first()))
      .toBe(await strip.getAttribute('aria-label'));
  });

  it('leads from a strip to its part', async () => {
    const { page } = await open('banding');
    const link = page.locator('.strips .link:visible').first();
    const name = await textOf(link);
    await link.click();
    await page.waitForSelector('.part-panel h2');
    await expect.poll(() => textOf(page.locator('.part-panel h2'))).toBe(name);
  });
});

describe('a figure', () => {
  it('opens its working, follows an input, goes back, and gives the focus back on Escape', async () => {
    const { page } = await open('finish');
    const opener = page.locator('.coat .chosen .figure').first();
    const shown = await textOf(opener);
    await opener.focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('.working-value');
    await expect.poll(() => textOf(page.locator('.working-value strong'))).toBe(shown);
    await page.waitForFunction(() => document.activeElement?.id === 'working-title');
    const title = await textOf(page.locator('#working-title'));
    const input = page.locator('.working-inputs .figure').first();
    const at = await input.getAttribute('data-figure');
    await input.click();
    await page.waitForFunction(
      (before) => document.querySelector('#working-title')?.textContent !== before,
      title,
    );
    await expect.poll(() => page.locator('.working-trail .figure').count()).toBe(1);
    expect(at).toMatch(/^(recipes|parts|totals)\//);
    await page.getByRole('button', { name: 'Back to the figure before' }).click();
    await page.waitForFunction(
      (before) =>
        document.querySelector('#working-title')?.textContent?.replaceAll(/\s+/g, ' ').trim() === before,
      title,
    );
    await page.keyboard.press('Escape');
    await page.waitForSelector('.working-value', { state: 'detached' });
    await page.waitForFunction(() => document.activeElement?.closest('.coat .chosen') !== null);
  });

  it('says the canonical figure beside the project’s unit', async () => {
    const { page } = await open('cutting');
    await page.locator('[data-figure$="/netM2"]').first().click();
    await page.waitForSelector('.working-value');
    const [value, canonical] = await textsOf(page.locator('.working-value > *'));
    expect(value).toMatch(/ft²$/);
    expect(canonical).toMatch(/^[\d.]+ m²$/);
  });

  it('is worked out for every figure the screens show', async () => {
    const { page, id } = await open('banding');
    const paths = new Set<string>();
    for (const screen of ['banding', 'finish', 'buy', 'ledger', 'cutting', 'settings']) {
      await page.goto(`${url()}/#/p/${id}/${screen}`);
      await page.waitForSelector(`.screen[data-screen="${screen}"] h1`);
      if (screen === 'buy' || screen === 'ledger') await page.waitForSelector('.page[data-current="yes"]');
      for (const at of await page.$$eval('[data-figure]', (buttons) =>
        buttons.map((button) => (button as HTMLElement).dataset.figure ?? ''),
      ))
        paths.add(at);
    }
    expect(paths.size).toBeGreaterThan(150);
    const missing: string[] = [];
    const held = new Map<string, unknown>();
    for (const at of paths) {
      const [name = '', ...steps] = at.split('/');
      if (name === 'buying' || name === 'ledger') {
        if (!held.has(name))
          held.set(name, await (await fetch(`${url()}/api/projects/${id}/${name}`)).json());
        if (figureIn(held.get(name), steps) === null) missing.push(at);
        continue;
      }
      const answer = await fetch(`${url()}/api/projects/${id}/working?at=${encodeURIComponent(at)}`);
      if (answer.status !== 200) missing.push(at);
    }
    expect(missing).toEqual([]);
  });
});

describe('the drawing of a part', () => {
  it('names its edges, faces and grain for those who hear it', async () => {
    const { page, stored } = await open('parts');
    const { rows } = await stored();
    const part = rows.parts.find((row) => row.edgeFront !== 'hidden' && row.edgeFront !== 'bare');
    const index = rows.parts.findIndex(({ id }) => id === part?.id);
    await page.locator(`.ag-row[row-index="${index}"] [col-id="name"]`).click();
    await page.waitForSelector('.part-drawing');
    const described = await page.locator('.part-drawing desc').textContent();
    expect(described).toMatch(/front edge banded with/);
    expect(described).toMatch(/Show face: /);
    expect(described).toMatch(/[Gg]rain|turned/);
    await expect.poll(() => page.locator('.part-drawing .ribbon').count()).toBeGreaterThan(0);
  });
});

describe('the cutting screen', () => {
  it('draws every layout and says whether the plan is proven', async () => {
    const { page, stored } = await open('cutting');
    const { materials } = (await stored()).plan;
    await expect
      .poll(() => page.locator('.layout-drawing').count())
      .toBe(materials.flatMap(({ layouts }) => layouts).length);
    for (const { id, proven } of materials) {
      const head = await textOf(page.locator(`article[aria-labelledby="material-${id}"] > header`));
      expect(head.includes('proven: no plan costs less')).toBe(proven);
      if (!proven) expect(head).toMatch(/not proven least|not ruled out/);
    }
  });
});

describe('every screen', () => {
  const names = ['cutting', 'banding', 'finish', 'buy', 'ledger', 'catalogue', 'settings'] as const;
  const looks = [
    ['light', {}],
    ['dark', { mode: 'dark' }],
    ['light, on a phone', PHONE],
    ['dark, on a phone', { ...PHONE, mode: 'dark' }],
  ] as const;

  it.each(looks)('is clean by axe and does not scroll sideways, %s', async (_look, options) => {
    const { page, id } = await open('cutting', options);
    for (const screen of names) {
      await page.goto(`${url()}/#/p/${id}/${screen}`);
      await page.waitForSelector(`.screen[data-screen="${screen}"] h1`, { state: 'attached' });
      if (screen === 'buy' || screen === 'ledger') await page.waitForSelector('.page[data-current="yes"]');
      if (screen === 'catalogue') {
        await page.locator('[data-product="oil-poly-satin"]').click();
        await page.locator('[data-row="figures/coverage"] button').click();
        await page.waitForSelector('.figure-form');
      }
      expect(await axeFaults(page), `${screen}`).toEqual([]);
      await expect.poll(() => sidewaysOverflow(page), { message: screen }).toBe(0);
    }
  });

  it('says what belongs there in an empty project', async () => {
    const created = await fetch(`${url()}/api/projects`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Empty', units: 'metric', currency: 'EUR' }),
    });
    const { id } = (await created.json()) as ProjectState;
    const { page } = await open('cutting', { projectId: id });
    for (const [screen, words] of [
      ['cutting', 'Nothing to cut yet'],
      ['banding', 'No edge is banded yet'],
      ['buy', 'Nothing to buy yet'],
    ] as const) {
      await page.goto(`${url()}/#/p/${id}/${screen}`);
      await page.getByRole('heading', { name: words }).waitFor();
      expect(await axeFaults(page), screen).toEqual([]);
    }
  });
});
