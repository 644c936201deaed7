import { describe, expect, it } from 'vitest';
import { EXPORT_TABLES } from '../../../server/exchange/export/export-table.ts';
import type { CalendarPlan } from '../../../server/planning/calendar/calendar-plan.ts';
import { ownProduct, pack, plannedDocument, typical } from './planned-document.ts';

const sheetSize = { lengthMm: 2440, widthMm: 1220 };
const ply = ownProduct('ply', 'sheet', {
  figures: { thicknessActual: typical(18, 'mm') },
  packs: [pack('sheet', 1, 8050, 'EUR', sheetSize)],
});
const tape = ownProduct('tape', 'banding', {
  unit: 'm',
  figures: { thicknessActual: typical(0.5, 'mm'), width: typical(22, 'mm') },
  packs: [pack('roll', 5, 400, 'EUR')],
});
const varnish = ownProduct('varnish', 'finish', {
  unit: 'L',
  choices: { role: 'topcoat', carrier: 'water' },
  figures: { coverage: typical(10, 'm2/L') },
  packs: [pack('litre', 1, 2599, 'EUR')],
});

/** Two shelves banded in front, one part whose size cannot be read, one coat of varnish on the shelves' show faces. */
const document = {
  settings: {
    name: 'Shelves',
    units: 'metric',
    currency: 'EUR',
    overhangMm: 25,
    spareStrips: 1,
    sheetTrimMm: 0,
    kerfMm: 0,
    finishLoss: 0,
    taxPercent: null,
  },
  sizes: [{ name: 'depth', value: '300' }],
  parts: [
    {
      id: 'shelf',
      name: 'Shelf',
      section: 'left',
      quantity: '2',
      length: '1000',
      width: '=depth - 20.5',
      materialId: 'ply',
      edgeFront: 'tape',
      radiusFrontLeft: '40',
      showRecipeId: 'clear',
      note: '=see drawing',
    },
    {
      id: 'odd',
      name: 'Odd',
      quantity: '1',
      length: '21 13/1',
      width: '80',
      materialId: 'ply',
      edgeLeft: 'bare',
    },
  ],
  recipes: [
    {
      id: 'clear',
      name: 'Clear',
      steps: [
        {
          id: 'a',
          kind: 'topcoat',
          productId: 'varnish',
          method: 'brush',
          sessionLossL: 0,
          transferEfficiency: 1,
        },
      ],
    },
  ],
  extras: [
    { name: 'Hinge', quantity: 4, unitPriceMinor: 250 },
    { name: 'Delivery', quantity: 1 },
  ],
  products: [ply, tape, varnish],
};
const metric = plannedDocument(document);
const us = plannedDocument({ ...document, settings: { ...document.settings, units: 'us', currency: 'USD' } });

describe('the tables of a project', () => {
  it('have a heading for every cell, and units in the headings of sizes and money', () => {
    for (const name of EXPORT_TABLES) {
      const { columns, rows } = metric.table(name);
      expect(new Set(columns.map(({ heading }) => heading)).size).toBe(columns.length);
      for (const row of rows) {
        expect(row).toHaveLength(columns.length);
        for (const [index, cell] of row.entries())
          if (cell !== null) expect(typeof cell).toBe(columns[index]?.kind === 'text' ? 'string' : 'number');
      }
    }
    const headings = (name: (typeof EXPORT_TABLES)[number]) =>
      us.table(name).columns.map(({ heading }) => heading);
    expect(headings('parts')).toContain('Length (in)');
    expect(headings('banding-strips')).toContain('All strips (ft)');
    expect(headings('finish-coats')).toContain('Area (ft²)');
    expect(headings('costs')).toContain('Planned (USD)');
  });

  it('give the part list its sizes in the unit of the project, and what was typed beside them', () => {
    expect(metric.column('parts', 'Part')).toEqual(['Shelf', 'Odd']);
    // 300 - 20.5 = 279.5 mm; a size that cannot be read is unknown, not zero.
    expect(metric.column('parts', 'Length (mm)')).toEqual([1000, null]);
    expect(metric.column('parts', 'Width (mm)')).toEqual([279.5, 80]);
    expect(metric.column('parts', 'Length as typed')).toEqual(['1000', '21 13/1']);
    expect(metric.column('parts', 'Width as typed')).toEqual(['=depth - 20.5', '80']);
    expect(metric.column('parts', 'Corner front left (mm)')).toEqual([40, null]);
    expect(metric.column('parts', 'Front edge')).toEqual(['tape', 'hidden']);
    expect(metric.column('parts', 'Left edge')).toEqual(['hidden', 'bare']);
    // Bare numbers are inches in a US project: 1000 in and 300 - 20.5 = 279.5 in.
    expect(us.column('parts', 'Length (in)')).toEqual([1000, null]);
    expect(us.column('parts', 'Width (in)')).toEqual([279.5, 80]);
    // 18 mm / 25.4 = 0.708661 in to six decimals.
    expect(us.column('parts', 'Thickness (in)')).toEqual([0.708661, 0.708661]);
  });

  it('list what to cut by material, longest first, and what cannot be computed last', () => {
    const cut = plannedDocument({
      ...document,
      parts: [
        { name: 'odd', length: '?', width: '10', materialId: 'ply' },
        { name: 'rail', length: '500', width: '100', materialId: 'birch-ply-12' },
        { name: 'short', length: '200', width: '100', materialId: 'ply' },
        { name: 'long', length: '700', width: '100', materialId: 'ply' },
      ],
    });
    expect(cut.column('cut-list', 'Part')).toEqual(['long', 'short', 'odd', 'rail']);
    expect(cut.column('cut-list', 'Cut length (mm)')).toEqual([700, 200, null, 500]);
  });

  it('list the named sizes as typed and in the unit of the project', () => {
    expect(metric.column('named-sizes', 'Name')).toEqual(['depth']);
    expect(metric.column('named-sizes', 'As typed')).toEqual(['300']);
    expect(metric.column('named-sizes', 'Value (mm)')).toEqual([300]);
    expect(us.column('named-sizes', 'Value (in)')).toEqual([300]);
  });

  it('sum the parts by section and by material', () => {
    expect(metric.column('part-groups', 'By')).toEqual(['section', 'section', 'material']);
    expect(metric.column('part-groups', 'Group')).toEqual(['left', 'none', 'ply in full']);
    // Two shelves and one odd part.
    expect(metric.column('part-groups', 'Pieces')).toEqual([2, 1, 3]);
  });

  it('say how many sheets to buy, what they cost and how few there could be', () => {
    // Two shelves of 1000 x 279.5 fit one sheet of 80.50; the odd part has no length and is in no plan.
    const [row, ...rest] = metric.table('sheets').rows;
    expect(rest).toEqual([]);
    expect(metric.column('sheets', 'To buy')).toEqual([1]);
    expect(metric.column('sheets', 'Fewest possible')).toEqual([1]);
    expect(metric.column('sheets', 'Proven best')).toEqual(['yes']);
    expect(metric.column('sheets', 'Cost (EUR)')).toEqual([80.5]);
    expect(row?.[0]).toBe('ply in full');
  });

  it('list the pieces of each sheet, which cover it with what is left over', () => {
    const pieces = metric.column('sheet-pieces', 'Piece');
    const along = metric.column('sheet-pieces', 'Along the sheet (mm)') as number[];
    const across = metric.column('sheet-pieces', 'Across the sheet (mm)') as number[];
    expect(pieces.filter((name) => name === 'Shelf')).toHaveLength(2);
    expect(pieces).toContain('left over');
    // No kerf and no trim: 2440 x 1220.
    const area = along.reduce((sum, length, index) => sum + length * (across[index] ?? 0), 0);
    expect(area).toBeCloseTo(2440 * 1220, 3);
  });

  it('list the saw cuts in their order, each piece freed once', () => {
    const numbers = metric.column('saw-cuts', 'Cut') as number[];
    expect(numbers).toEqual(numbers.map((_, index) => index + 1));
    const freed = metric.column('saw-cuts', 'Frees').flatMap((names) => String(names).split(', '));
    expect(freed.filter((name) => name === 'Shelf')).toHaveLength(2);
    // One cut has the fence at the width of a shelf: 300 - 20.5.
    expect(metric.column('saw-cuts', 'Set to (mm)')).toContain(279.5);
  });

  it('give the tasks of the coat calendar by the clock on the wall, and none before there is one', () => {
    expect(metric.table('coat-calendar').rows).toEqual([]);
    const task = {
      id: 't',
      batchId: '1',
      recipeId: 'clear',
      stepId: 'a',
      number: 1,
      kind: 'topcoat',
      name: 'varnish',
      method: 'brush',
      face: 'show',
      areaM2: 0.5,
      state: 'planned',
      // 09:30 on the second day; clocks are put forward an hour at 02:00 of it (minute 1560).
      startMinute: 1440 + 8 * 60 + 30,
      endMinute: 1440 + 9 * 60,
      handsOnMin: 30,
      scuffFirst: false,
      layFromMinute: null,
      layToMinute: null,
      touchDryMinute: null,
      handleDryMinute: 2880 + 60,
      allowedFromMinute: 0,
      allowedToMinute: null,
    } as const;
    const planned = plannedDocument(document, {
      plan: { tasks: [task], batches: [] } as unknown as CalendarPlan,
      firstDate: '2027-03-27',
      clockShifts: [{ fromMinute: 1560, aheadMin: 60 }],
      stale: true,
    });
    const cell = (heading: string) => planned.column('coat-calendar', heading)[0];
    expect(cell('Begins')).toBe('2027-03-28 09:30');
    expect(cell('Ends')).toBe('2027-03-28 10:00');
    expect(cell('Dry to handle')).toBe('2027-03-29 02:00');
    expect(cell('Not before')).toBe('2027-03-27 00:00');
    expect([cell('Dry to touch'), cell('Not after')]).toEqual([null, null]);
    expect([cell('Finish'), cell('Hands on (min)')]).toEqual(['Clear', 30]);
    expect(cell('Up to date')).toBe('no, planned anew');
  });

  it('list every strip with the spare, and the same strips by roll with what is left', () => {
    // The shelf's front strip covers its front and the 40 mm corner: it is taken from the plan, whose own tests check
    // it; two of them and one spare go on rolls of 5 m.
    const strip = metric.plan.parts[0]?.strips[0]?.stripMm.value ?? 0;
    expect(strip).toBeGreaterThan(1000);
    const rounded = Number(strip.toFixed(6));
    expect(metric.column('banding-strips', 'Part')).toEqual(['Shelf', 'spare']);
    expect(metric.column('banding-strips', 'Strips')).toEqual([2, 1]);
    expect(metric.column('banding-strips', 'Strip length (mm)')).toEqual([rounded, rounded]);
    const pieces = metric.column('banding-rolls', 'Pieces') as number[];
    const lengths = metric.column('banding-rolls', 'Piece length (mm)') as number[];
    expect(metric.column('banding-rolls', 'Part')).toEqual(
      expect.arrayContaining(['Shelf', 'spare', 'left over']),
    );
    // The pieces of a roll and its leftover add up to the roll: 5 m.
    expect(lengths.reduce((sum, length, index) => sum + length * (pieces[index] ?? 0), 0)).toBeCloseTo(
      5000,
      3,
    );
    expect(new Set(metric.column('banding-rolls', 'Roll length (m)'))).toEqual(new Set([5]));
  });

  it('list the coats with their liquid', () => {
    const area = metric.plan.recipes[0]?.areaM2.value ?? 0;
    expect(metric.column('finish-coats', 'Work')).toEqual(['topcoat']);
    expect(metric.column('finish-coats', 'With')).toEqual(['varnish in full']);
    // Coverage 10 m2/L, nothing lost: a tenth of the area in litres; in quarts of 0.946352946 L in a US project.
    const litres = metric.column('finish-coats', 'Liquid (L)')[0] as number;
    expect(litres).toBeCloseTo(area / 10, 6);
    const usArea = us.plan.recipes[0]?.areaM2.value ?? 0;
    expect(us.column('finish-coats', 'Liquid (qt)')[0]).toBeCloseTo(usArea / 10 / 0.946352946, 5);
    expect(metric.column('finish-coats', 'Mixes')).toEqual([null]);
  });

  it('puts the products a coat is mixed from below it, without counting them twice', () => {
    const blended = plannedDocument({
      ...document,
      recipes: [{ id: 'clear', name: 'Clear', steps: [{ id: 'a', kind: 'stain', blendId: 'mix' }] }],
      blends: [
        {
          id: 'mix',
          name: 'Mix',
          components: [
            { productId: 'oil-stain-honey', parts: 2 },
            { productId: 'oil-stain-walnut', parts: 1 },
          ],
        },
      ],
    });
    const [whole, ...rest] = blended.column('finish-coats', 'Liquid (L)') as (number | null)[];
    const shares = blended.column('finish-coats', 'Of which (L)') as (number | null)[];
    expect(rest).toEqual([null, null]);
    expect(shares[0]).toBe(null);
    expect(shares[1]).toBeCloseTo(((whole ?? 0) * 2) / 3, 5);
    expect((shares[1] ?? 0) + (shares[2] ?? 0)).toBeCloseTo(whole ?? 0, 5);
  });

  it('list what to buy by supplier, with an unknown price left open', () => {
    const items = metric.column('buy-list', 'Item');
    const at = (item: string, heading: string) => metric.column('buy-list', heading)[items.indexOf(item)];
    // 80.50 and 4.00 as catalogued; 4 hinges at 2.50.
    expect(at('ply in full', 'Price of one (EUR)')).toBe(80.5);
    expect(at('tape in full', 'Cost (EUR)')).toBe(4);
    expect(at('Hinge', 'Cost (EUR)')).toBe(10);
    expect(at('Delivery', 'Cost (EUR)')).toBe(null);
    expect(at('tape in full', 'Unit')).toBe('m');
    expect(at('varnish in full', 'Pack')).toBe('litre');
  });

  it('writes the need of an item that takes two kinds of pack once', () => {
    const cans = [pack('litre', 1, 2000, 'EUR'), pack('half', 0.5, 1100, 'EUR')];
    const mixed = plannedDocument({
      ...document,
      products: [ply, tape, { ...varnish, packs: cans }],
      // 1.4 litres: a litre and a half-litre can, 31.00, are cheaper than two litres.
      parts: [{ name: 'wall', length: '7000', width: '2000', materialId: 'ply', showRecipeId: 'clear' }],
    });
    const items = mixed.column('buy-list', 'Item');
    const lines = items.flatMap((item, index) => (item === 'varnish in full' ? [index] : []));
    expect(lines.map((line) => mixed.column('buy-list', 'Pack')[line])).toEqual(['litre', 'half']);
    expect(lines.map((line) => mixed.column('buy-list', 'Cost (EUR)')[line])).toEqual([20, 11]);
    const [first, second] = lines.map((line) => mixed.column('buy-list', 'Needed')[line]);
    expect(first).toBeCloseTo(1.4, 6);
    expect(second).toBe(null);
  });

  it('add the costs up, and leave tax open while nobody has said it', () => {
    const names = metric.column('costs', 'Cost');
    const cost = (name: string) => metric.column('costs', 'Planned (EUR)')[names.indexOf(name)];
    // One sheet 80.50, one roll 4.00, one litre 25.99 and the hinges 10.00; the delivery has no price.
    expect(cost('sheets')).toBe(80.5);
    expect(cost('all, before tax')).toBe(120.49);
    expect(cost('tax (not set)')).toBe(null);
    expect(cost('all, with tax')).toBe(null);
    expect(metric.column('costs', 'Lines without a price')[names.indexOf('all, before tax')]).toBe(1);
    const taxed = plannedDocument({ ...document, settings: { ...document.settings, taxPercent: 20 } });
    const last = taxed.column('costs', 'Planned (EUR)').at(-1) as number;
    // Tax is rounded line by line: 16.10 + 0.80 + 5.20 + 2.00 = 24.10 on 120.49.
    expect(last).toBe(144.59);
  });

  it('name the row and the field of each problem, with what to do', () => {
    const rows = metric.table('problems').rows;
    const odd = rows.find((row) => row[2] === 'Odd' && row[3] === 'length');
    expect(odd?.[0]).toBe('error');
    expect(odd?.[1]).toBe('part');
    expect(String(odd?.[4])).toContain('13/1');
    expect(String(odd?.[5]).length).toBeGreaterThan(10);
  });

  it('count money in whole units where the currency has no others', () => {
    const yen = plannedDocument({
      ...document,
      settings: { ...document.settings, currency: 'JPY' },
      extras: [{ name: 'Hinge', quantity: 4, unitPriceMinor: 250 }],
    });
    const items = yen.column('buy-list', 'Item');
    expect(yen.column('buy-list', 'Cost (JPY)')[items.indexOf('Hinge')]).toBe(1000);
  });

  it('are there for a project without a single row', () => {
    const empty = plannedDocument({ settings: document.settings, parts: [] });
    for (const name of EXPORT_TABLES) expect(empty.table(name).rows.length).toBeLessThanOrEqual(20);
    expect(empty.table('parts').rows).toEqual([]);
  });
});
