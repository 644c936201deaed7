import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../../server/exchange/export/write-csv.ts';
import { writeWorkbook } from '../../../server/exchange/export/write-workbook.ts';
import { previewImport } from '../../../server/exchange/import/preview-import.ts';
import { readSource, type Source } from '../../../server/exchange/import/read-source.ts';
import type { PreviewRow } from '../../../server/exchange/part-list/preview-part-list.ts';
import { readLength } from '../../../server/planning/dimensions/read-length.ts';
import { type PlannedDocument, plannedDocument, shipped } from './planned-document.ts';

/** What is written has six decimals, of mm or of inches: half of the last place of an inch, in mm. */
const WITHIN_MM = 0.0000005 * 25.4;

const materials = shipped.products
  .filter(({ kind }) => kind === 'sheet' || kind === 'board')
  .map(({ id }) => id);
const bandings = shipped.products.filter(({ kind }) => kind === 'banding').map(({ id }) => id);

const name = fc
  .oneof(
    fc.string({ unit: 'grapheme', maxLength: 30 }),
    fc.constantFrom('=1+1', '-side', "'=x", 'a, "b"; c|d', 'é½', 'valueOf', 'a\uFFFDb', '\uFFFD'),
  )
  // What XML has no way to say is left out of workbooks, and outer spaces of any list are not kept.
  .map((text) => text.replace(/[\p{C}\s]+/gu, ' ').trim());
const size = fc.oneof(
  fc.integer({ min: 1, max: 2400 }).map(String),
  fc.integer({ min: 1, max: 24_000 }).map((tenths) => `${tenths / 10} mm`),
  fc
    .tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 31 }))
    .map(([inch, part]) => `${inch} ${part}/32"`),
  fc.constant('=side / 3'),
);
const edge = fc.oneof(fc.constantFrom('hidden', 'bare'), fc.constantFrom(...bandings));
const part = fc.record({
  name,
  section: name,
  note: name,
  quantity: fc.integer({ min: 1, max: 400 }).map(String),
  length: size,
  width: size,
  materialId: fc.oneof(fc.constant(''), fc.constantFrom(...materials)),
  grain: fc.constantFrom('along', 'across', 'free'),
  edgeFront: edge,
  edgeBack: edge,
  edgeLeft: edge,
  edgeRight: edge,
  showRecipeId: fc.constantFrom('', 'clear', 'dark'),
  backRecipeId: fc.constantFrom('', 'clear', 'dark'),
});
const document = fc.record({
  settings: fc
    .record({ name, units: fc.constantFrom('metric', 'us'), currency: fc.constant('EUR') })
    .map((settings) => ({
      ...settings,
      name: `x${settings.name}`,
    })),
  sizes: fc.constant([{ name: 'side', value: '1000 mm' }]),
  recipes: fc.constant([
    { id: 'clear', name: 'Clear satin' },
    { id: 'dark', name: '=dark, "walnut"' },
  ]),
  parts: fc.array(part, { minLength: 1, maxLength: 12 }),
});

async function importedBack(source: Source, project: PlannedDocument): Promise<readonly PreviewRow[]> {
  const read = await readSource(source);
  if (!read.ok) throw new Error(read.refusal.message);
  const { settings, recipes } = project.input;
  return previewImport(read.table, {}, { units: settings.units, products: shipped.products, recipes }).rows;
}

function expectSameParts(rows: readonly PreviewRow[], project: PlannedDocument): void {
  const { parts, settings } = project.input;
  expect(
    rows.map((row) => ({
      name: row.name.text,
      section: row.section.text,
      note: row.note.text,
      quantity: row.quantity.text,
      materialId: row.material.text,
      grain: row.grain.text,
      faces: [row.showFace.text, row.backFace.text],
      edges: [row.edges.front.text, row.edges.back.text, row.edges.left.text, row.edges.right.text],
    })),
  ).toEqual(
    parts.map((one) => ({
      name: one.name,
      section: one.section,
      note: one.note,
      quantity: one.quantity,
      materialId: one.materialId,
      grain: one.grain,
      faces: [one.showRecipeId, one.backRecipeId],
      edges: [one.edgeFront, one.edgeBack, one.edgeLeft, one.edgeRight],
    })),
  );
  for (const [index, row] of rows.entries())
    for (const axis of ['length', 'width'] as const) {
      const read = readLength(row[axis].text, settings.units);
      const meant = project.plan.parts[index]?.[`${axis}Mm`].value ?? Number.NaN;
      expect(read.ok && Math.abs(read.mm - meant)).toBeLessThanOrEqual(WITHIN_MM + 1e-9);
      expect(row[axis].state).toBe('read');
    }
}

describe('a part list that was exported', () => {
  it('comes back from CSV as the same parts', async () => {
    await fc.assert(
      fc.asyncProperty(document, async (given) => {
        const project = plannedDocument(given);
        expectSameParts(await importedBack({ text: writeCsv(project.table('parts')) }, project), project);
      }),
      { numRuns: 150 },
    );
  }, 60_000);

  it('comes back from a workbook as the same parts, also from the one with all tables', async () => {
    await fc.assert(
      fc.asyncProperty(document, fc.boolean(), async (given, alone) => {
        const project = plannedDocument(given);
        const tables = alone ? [project.table('parts')] : [project.table('parts'), project.table('buy-list')];
        expectSameParts(await importedBack({ workbook: await writeWorkbook(tables) }, project), project);
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  it('leaves a size open that could not be read, and asks for it', async () => {
    const project = plannedDocument({
      settings: { name: 'x', units: 'metric', currency: 'EUR' },
      parts: [{ name: 'Odd', quantity: '2', length: '21 13/1', width: '80', materialId: 'birch-ply-18' }],
    });
    const [row] = await importedBack({ text: writeCsv(project.table('parts')) }, project);
    expect(row?.length).toMatchObject({ text: '', state: 'refused' });
    expect(row?.width).toMatchObject({ text: '80 mm', state: 'read' });
  });
});
