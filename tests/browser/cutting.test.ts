import { describe, expect, it } from 'vitest';
import type { CuttingAnswer } from '../../server/http/contract.ts';
import type { CutNode } from '../../server/planning/plan-output.ts';
import { screens, textOf } from './open-screen.ts';

/** The cutting screen at the saw: cut order, ticks, offcuts. */

const { open, url } = screens();
const PHONE = { width: 390, height: 844, phone: true } as const;

async function listOf(id: string): Promise<CuttingAnswer> {
  return (await (await fetch(`${url()}/api/projects/${id}/cutting`)).json()) as CuttingAnswer;
}

describe('the drawing of a layout', () => {
  it.each([
    ['wide', {}],
    ['on a phone', PHONE],
  ] as const)('keeps every text inside its piece, %s', async (_look, options) => {
    const { page } = await open('cutting', options);
    await page.waitForSelector('.cut-mark');
    const outside = await page.$$eval('.layout-drawing', (drawings) =>
      drawings.flatMap((drawing) => {
        const pieces = [...drawing.querySelectorAll('.part, .offcut')].map((one) =>
          one.getBoundingClientRect(),
        );
        return [...drawing.querySelectorAll('.label text')].flatMap((text) => {
          const box = text.getBoundingClientRect();
          const inside = pieces.some(
            (piece) =>
              box.left >= piece.left - 0.5 &&
              box.right <= piece.right + 0.5 &&
              (box.top + box.bottom) / 2 >= piece.top &&
              (box.top + box.bottom) / 2 <= piece.bottom,
          );
          return inside ? [] : [text.textContent];
        });
      }),
    );
    expect(outside).toEqual([]);
  });

  it('numbers its cuts as the list beside it does', async () => {
    const { page, id } = await open('cutting');
    await page.waitForSelector('.cut-mark');
    const { layouts } = await listOf(id);
    const cuts = layouts[0]?.cuts ?? [];
    const first = page.locator('.layout').first();
    const marks = await first.locator('.cut-mark text').allTextContents();
    expect(marks.every((mark) => cuts.some(({ number }) => String(number) === mark))).toBe(true);
    expect(new Set(marks).size).toBe(marks.length);
    await expect.poll(() => textOf(first.locator('.cut-order summary'))).toContain(`${cuts.length} cuts`);
    await expect
      .poll(() => textOf(first.locator('.cut-order li').first()))
      .toMatch(/^1\S* (Trim|Rip|Crosscut) /);
  });
});

describe('ticking pieces as cut', () => {
  it('shows the progress, survives a reload, and is no step of undo', async () => {
    const { page, id, stored } = await open('cutting');
    await page.waitForSelector('.tick input');
    const before = await stored();
    const first = page.locator('.layout').first();
    const all = await first.locator('.tick input').count();
    const answered = page.waitForResponse((answer) => answer.url().endsWith('/cutting/ticks'));
    await first.locator('.tick input').first().focus();
    await page.keyboard.press('Space');
    await answered;
    await expect.poll(() => textOf(first.locator('.layout-progress'))).toBe(`1 of ${all} cut`);
    await expect.poll(() => first.locator('.piece.done').count()).toBe(1);
    await page.reload();
    await page.waitForSelector('.tick input:checked');
    await expect.poll(() => textOf(first.locator('.layout-progress'))).toBe(`1 of ${all} cut`);
    const after = await stored();
    expect([after.revision, after.canUndo]).toEqual([before.revision, before.canUndo]);
    const untick = page.waitForResponse((answer) => answer.url().endsWith('/cutting/ticks'));
    await first.locator('.tick input').first().uncheck();
    await untick;
    await expect
      .poll(async () => (await listOf(id)).layouts.every(({ done }) => done.length === 0))
      .toBe(true);
  });
});

describe('keeping an offcut', () => {
  it('waits for the sheet to be cut; then puts it on hand once, the plan stays, and undo takes it back', async () => {
    const { page, id, stored } = await open('cutting');
    await page.waitForSelector('.tick input');
    const before = await stored();
    const { layouts } = await listOf(id);
    const at = layouts.findIndex(({ offcuts, sheets }) => offcuts.length > 0 && sheets === 1);
    const layout = page.locator('.layout').nth(at);
    const keep = layout.getByRole('button', { name: /^Keep / }).first();
    await expect.poll(() => keep.getAttribute('aria-disabled')).toBe('true');
    await expect.poll(() => textOf(layout.locator('.offcut-wait'))).toContain('once all parts');
    await layout.locator('.tick input').first().focus();
    for (let piece = 0; piece < (layouts[at]?.parts.length ?? 0); piece++) {
      if (piece > 0) await page.keyboard.press('Tab');
      while (await page.evaluate(() => document.activeElement?.getAttribute('type') !== 'checkbox'))
        await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
    }
    await expect.poll(() => keep.getAttribute('aria-disabled'), { timeout: 20_000 }).toBe('false');
    await expect
      .poll(async () => (await listOf(id)).layouts[at]?.done.length, { timeout: 20_000 })
      .toBe(layouts[at]?.parts.length);
    const answered = page.waitForResponse((answer) => answer.url().endsWith('/cutting/keep'));
    await keep.click();
    await answered;
    await expect.poll(() => textOf(layout.locator('.kept').first())).toBe('on hand');
    const after = await stored();
    expect(after.rows.onHand.length).toBe(before.rows.onHand.length + 1);
    expect(after.plan.materials.map((material) => material.layouts)).toEqual(
      before.plan.materials.map((material) => material.layouts),
    );
    await expect.poll(() => textOf(page.locator('.notice'))).toContain('on hand now');
    const undone = page.waitForResponse((answer) => answer.url().endsWith('/undo'));
    await page.keyboard.press('Control+z');
    await undone;
    await expect.poll(async () => (await stored()).rows.onHand).toEqual(before.rows.onHand);
    await expect.poll(() => keep.getAttribute('aria-disabled')).toBe('false');
  });
});

describe('paper', () => {
  /** Pages of a PDF: its page objects, which Chromium does not compress. */
  const pagesOf = (pdf: Buffer): number =>
    pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  /** Labels and layouts that were on paper while it was printed. */
  interface Printed {
    readonly layouts: number;
    readonly labels: number;
    readonly first: string;
    readonly labelled: string;
  }

  it.each(['A4', 'Letter'] as const)('has one layout on a page of %s, then the labels', async (format) => {
    const { page, stored } = await open('cutting', { mode: 'dark' });
    await page.waitForSelector('.cut-mark');
    await page.evaluate(() => {
      addEventListener('beforeprint', () => {
        const paper = document.querySelector('#cutting-paper');
        (window as unknown as { printed: Printed }).printed = {
          layouts: paper?.querySelectorAll('.sheet-page').length ?? 0,
          labels: paper?.querySelectorAll('.paper-labels > li').length ?? 0,
          labelled: paper?.querySelector('.paper-labels > li')?.textContent?.replaceAll(/\s+/g, ' ') ?? '',
          first: paper?.querySelector('.sheet-page')?.textContent?.replaceAll(/\s+/g, ' ') ?? '',
        };
      });
    });
    const pdf = await page.pdf({ format });
    const printed = await page.evaluate(() => (window as unknown as { printed: Printed }).printed);
    const { plan, settings, rows } = await stored();
    const layouts = plan.materials.flatMap((material) => material.layouts).length;
    const laid = plan.materials.flatMap((material) =>
      material.layouts.map(({ count, cut }) => count * parts(cut)),
    );
    expect(printed.layouts).toBe(layouts);
    // Every piece that is laid has its label.
    expect(printed.labels).toBe(laid.reduce((sum, count) => sum + count, 0));
    const [part] = rows.parts;
    const recipe = rows.recipes.find(({ id }) => id === part?.showRecipeId)?.name ?? 'no finish';
    for (const words of [part?.name, part?.section, plan.parts[0]?.quantity, 'front', recipe])
      expect(printed.labelled).toContain(String(words));
    expect(printed.first).toContain(settings.name);
    expect(printed.first).toContain(String(new Date().getFullYear()));
    expect(printed.first).toMatch(/Cut order 1/);
    expect(pagesOf(pdf)).toBeGreaterThan(layouts);
    // The screen is as it was, and the paper gone.
    await expect.poll(() => page.locator('#cutting-paper').count()).toBe(0);
    await expect.poll(() => page.locator('.layout').first().isVisible()).toBe(true);
  });

  it('is the sheets alone, a page each, when asked for them', async () => {
    const { page, stored } = await open('cutting');
    await page.waitForSelector('.cut-mark');
    const layouts = (await stored()).plan.materials.flatMap((material) => material.layouts).length;
    const printed = page.getByRole('button', { name: 'Print sheets' });
    await page.evaluate(() => {
      // The dialog itself cannot be driven; what it is given can.
      window.print = () => undefined;
    });
    await printed.click();
    for (const format of ['A4', 'Letter'] as const) {
      await printed.click();
      expect(pagesOf(await page.pdf({ format })), format).toBe(layouts);
    }
    const labels = page.getByRole('button', { name: 'Print labels' });
    await labels.click();
    const pieces = await page.pdf({ format: 'A4' });
    expect(pagesOf(pieces)).toBeGreaterThan(0);
    expect(pagesOf(pieces)).toBeLessThan(layouts);
  });
});

function parts(cut: CutNode): number {
  if (cut.type === 'split') return cut.children.reduce((sum, child) => sum + parts(child), 0);
  return cut.type === 'part' ? 1 : 0;
}
