import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { readProjectDocument, writeProjectDocument } from '../../server/exchange/project-document.ts';
import { plan } from '../../server/planning/plan.ts';
import type { PartPlan } from '../../server/planning/plan-output.ts';
import type { ProjectInput } from '../../server/planning/project-input.ts';

const folder = new URL('../../db/demo/', import.meta.url);
const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
const catalogue = readCatalogue();
const INCH = 25.4;

function demo(file: string): ProjectInput {
  const read = readProjectDocument(JSON.parse(readFileSync(new URL(file, folder), 'utf8')), catalogue);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 2));
  return read.input;
}

it('there are three demos', () => {
  expect(files.sort()).toEqual([
    'bicycle-workshop-wall-cabinet.json',
    'reading-room-window-seat.json',
    'varnished-hall-bench.json',
  ]);
});

describe.each(files)('the demo %s', (file) => {
  const input = demo(file);
  const planned = plan(input);

  it('raises no error and hardly a warning', () => {
    expect(planned.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(planned.problems.filter(({ severity }) => severity === 'warning').length).toBeLessThan(4);
  });

  it('has a price for every line', () => {
    expect(planned.buy.unpricedLines.value).toBe(0);
    expect(planned.buy.totalMinor.value).toBeGreaterThan(0);
  });

  it('knows every size, area and litre', () => {
    for (const part of planned.parts)
      for (const figure of [part.cutLengthMm, part.cutWidthMm, part.thicknessMm, part.totalFinishM2])
        expect(figure.value).not.toBeNull();
    for (const { coats } of planned.recipes)
      for (const coat of coats.filter(({ method }) => method !== null))
        expect(coat.litres.value).toBeGreaterThan(0);
  });

  it('uses every recipe, blend and named size it has', () => {
    const used = new Set(input.parts.flatMap((part) => [part.showRecipeId, part.backRecipeId]));
    expect(input.recipes.filter(({ id }) => !used.has(id))).toEqual([]);
    const blends = new Set(input.recipes.flatMap(({ steps }) => steps.map(({ blendId }) => blendId)));
    expect(input.blends.filter(({ id }) => !blends.has(id))).toEqual([]);
    const cells = [
      ...input.sizes.map(({ value }) => value),
      ...input.parts.flatMap(({ length, width }) => [length, width]),
    ].join(' ');
    expect(input.sizes.filter(({ name }) => !new RegExp(`\\b${name}\\b`).test(cells))).toEqual([]);
  });

  it('is read back as it was written', () => {
    expect(readProjectDocument(writeProjectDocument(input), catalogue)).toEqual({ ok: true, input });
  });
});

describe('the window seat', () => {
  const input = demo('reading-room-window-seat.json');
  const planned = plan(input);

  /** The figures of the row of that name in that section, in inches. */
  function inches(section: string, name: string): { length: number; width: number; thickness: number } {
    const row = input.parts.find((part) => part.section === section && part.name === name);
    const part = planned.parts.find(({ id }) => id === row?.id) as PartPlan;
    return {
      length: (part.lengthMm.value ?? Number.NaN) / INCH,
      width: (part.widthMm.value ?? Number.NaN) / INCH,
      thickness: (part.thicknessMm.value ?? Number.NaN) / INCH,
    };
  }

  it('has about thirty rows in three thicknesses of sheet, two bandings and two stains', () => {
    expect(input.parts.length).toBeGreaterThanOrEqual(28);
    const materials = new Set(input.parts.map(({ materialId }) => materialId));
    expect([...materials].sort()).toEqual([
      'birch-ply-1-2in',
      'birch-ply-1-4in',
      'birch-ply-3-4in',
      'softwood-1x4',
    ]);
    expect(planned.banding.map(({ id }) => id).sort()).toEqual(['birch-veneer-5-8in', 'birch-veneer-7-8in']);
    expect(input.blends[0]?.components.length).toBe(2);
  });

  it.each(['left bookcase', 'right bookcase'])('fits together in the %s', (section) => {
    const side = inches(section, 'Side');
    const top = inches(section, 'Top and bottom');
    // 24 - 2 x 23/32 = 22 9/16 in between the sides
    expect(top.length).toBeCloseTo(22.5625, 3);
    expect(top.length + 2 * side.thickness).toBeCloseTo(24, 2);
    const shelf = inches(section, 'Loose shelf');
    expect(shelf.length).toBeLessThan(top.length);
    expect(shelf.width).toBeLessThan(side.width);
    // two doors with 1/8 in between them reach 3/8 in over each side: 22 9/16 + 2 x 3/8
    expect(2 * inches(section, 'Door').width + 1 / 8).toBeCloseTo(22.5625 + 0.75, 3);
    // they begin at the toe board and end on the edge of the fixed shelf, whose underside is at 30 in
    const doorTop = inches(section, 'Toe board').width + inches(section, 'Door').length;
    expect(doorTop).toBeGreaterThan(30);
    expect(doorTop).toBeLessThan(30 + side.thickness);
    expect(inches(section, 'Back').width).toBeCloseTo(24, 6);
  });

  it('fits together in the seat', () => {
    const top = inches('window seat', 'Seat top');
    const bottom = inches('window seat', 'Seat bottom');
    const divider = inches('window seat', 'Seat divider');
    const base = inches('window seat', 'Base rail, long');
    // 3 1/2 + 23/32 + 13 1/16 + 23/32 = 18 in
    expect(divider.length).toBeCloseTo(13.0625, 3);
    expect(base.width + bottom.thickness + divider.length + top.thickness).toBeCloseTo(18, 2);
    // four uprights and three bays of 27.0417 in make 84 in
    const rail = inches('window seat', 'Rail under the top');
    expect(4 * divider.thickness + 3 * rail.length).toBeCloseTo(84, 2);
    expect(inches('window seat', 'Seat back').width).toBeCloseTo(divider.length + bottom.thickness, 2);
    // a long rail 3 in back, the cross rail, the rear long rail: 3 + 3/4 + 15 1/2 + 3/4 = 20 in
    const cross = inches('window seat', 'Base rail, cross');
    expect(3 + 2 * base.thickness + cross.length).toBeCloseTo(20, 6);
  });

  it('has bins that go into their bays', () => {
    const bay = inches('window seat', 'Rail under the top');
    const front = inches('book bins', 'Bin front and back');
    const side = inches('book bins', 'Bin side');
    const bottom = inches('book bins', 'Bin bottom');
    expect(front.length).toBeLessThan(bay.length);
    expect(front.width + bottom.thickness).toBeLessThan(
      inches('window seat', 'Seat divider').length - bay.width,
    );
    expect(side.length + 2 * front.thickness).toBeCloseTo(bottom.width, 3);
    expect(bottom.width).toBeLessThan(inches('window seat', 'Seat bottom').width);
  });

  it('bands the rounded seat top in one strip', () => {
    const row = input.parts.find(({ name }) => name === 'Seat top');
    const part = planned.parts.find(({ id }) => id === row?.id);
    expect(part?.strips.map(({ id }) => id)).toEqual(['left+front+right']);
    // by hand, inches: 84 + 2 x 20.75 - 4 x 2 (two corners take 2 in off each of two edges) + 2 x pi x 2 / 2
    expect((part?.strips[0]?.runMm.value ?? 0) / INCH).toBeCloseTo(84 + 41.5 - 8 + 2 * Math.PI, 6);
  });

  it('takes two parts of honey to one of walnut', () => {
    const need = (id: string) => planned.needs.find((row) => row.id === id)?.need.value ?? 0;
    expect(need('oil-stain-walnut')).toBeGreaterThan(1);
    expect(need('oil-stain-honey')).toBeCloseTo(2 * need('oil-stain-walnut'), 9);
  });
});

describe('the bicycle-workshop cabinet', () => {
  const input = demo('bicycle-workshop-wall-cabinet.json');
  const planned = plan(input);
  const partOf = (name: string) => {
    const row = input.parts.find((part) => part.name === name);
    return planned.parts.find(({ id }) => id === row?.id);
  };

  it('is metric, in euros, and small', () => {
    expect(input.settings).toMatchObject({ units: 'metric', currency: 'EUR' });
    expect(input.parts.length).toBe(10);
  });

  it('cuts a door smaller by the 1 mm edging on all four edges', () => {
    // 700 - 4 = 696 long and (900 - 6) / 2 = 447 wide, less 1 mm on each edge
    const door = partOf('Door');
    expect([door?.lengthMm.value, door?.widthMm.value]).toEqual([696, 447]);
    expect([door?.cutLengthMm.value, door?.cutWidthMm.value]).toEqual([694, 445]);
  });

  it('fits its shelves between sides and divider', () => {
    // (900 - 3 x 17.8) / 2 = 423.3 mm between them
    expect(partOf('Shelf')?.lengthMm.value).toBeCloseTo(421.3, 9);
  });

  it('bands the tool rack in one strip all round', () => {
    const [strip, ...more] = partOf('Tool rack')?.strips ?? [];
    expect(more).toEqual([]);
    expect(strip?.closed).toBe(true);
    // by hand: 2 x (800 + 120) - 8 x 30 + 2 x pi x 30
    expect(strip?.runMm.value).toBeCloseTo(1840 - 240 + 60 * Math.PI, 6);
  });
});
