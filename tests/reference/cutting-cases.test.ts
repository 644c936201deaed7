import { describe, expect, it } from 'vitest';
import { equalPieceLength } from '../../server/planning/cutting/equal-piece-length.ts';
import { planMaterials } from '../../server/planning/cutting/plan-materials.ts';
import { sheetsForAllowance } from '../../server/planning/cutting/sheets-for-allowance.ts';
import { wasteAddOn } from '../../server/planning/cutting/waste-add-on.ts';
import type { MaterialPlan } from '../../server/planning/plan-output.ts';
import { brokenRules } from '../planning/cutting/check-layout.ts';
import {
  boardProduct,
  cuttingProject,
  type Row,
  row,
  sheetProduct,
} from '../planning/cutting/cutting-project.ts';

/** Questions people have asked in public, with the numbers they gave; lengths here are in inches. */

const INCH = 25.4;

function inches(length: number, width: number, count: number, grain: Row['grain'] = 'along'): Row {
  return row(length * INCH, width * INCH, count, grain);
}

function plan(sheet: readonly [number, number], rows: readonly Row[], kerf: number): MaterialPlan {
  const product = sheetProduct([{ lengthMm: sheet[0] * INCH, widthMm: sheet[1] * INCH }]);
  const project = cuttingProject([product], rows, { settings: { kerfMm: kerf * INCH } });
  const [material] = planMaterials(project.input, project.parts).materials;
  if (material === undefined) throw new Error('nothing was planned');
  expect(brokenRules(material, { kerfMm: kerf * INCH, trimMm: 0, demands: project.demands })).toEqual([]);
  return material;
}

describe('waste, gross and net', () => {
  // woodweb.com/knowledge_base/Calculating_a_material_waste_factor.html: 291 sq ft of panels used 10 sheets of 32.
  it('turns ten sheets used for 291 sq ft into 9.1 % of gross and 10.0 % on net', () => {
    const ofGross = 1 - 291 / 320;
    expect(100 * ofGross).toBeCloseTo(9.1, 1);
    expect(100 * wasteAddOn(ofGross)).toBeCloseTo(10.0, 1);
  });

  // Same thread. It prints 26, 34, 44, 55, 67, 82, 100; the first four are 0.7 to 1.2 too high, by w / (1 - w).
  it.each([
    [20, 25.0],
    [25, 33.3],
    [30, 42.9],
    [35, 53.8],
    [40, 66.7],
    [45, 81.8],
    [50, 100],
  ])('adds for %i %% waste of the sheet %d %% to the net', (waste, addOn) => {
    expect(100 * wasteAddOn(waste / 100)).toBeCloseTo(addOn, 1);
  });

  it('refuses a waste of everything', () => {
    for (const bad of [1, -0.1, Number.NaN]) expect(() => wasteAddOn(bad)).toThrow(RangeError);
  });

  // furnituremaking.us/making-3/timber-calculations.html gives 10 % or 20 % for sheet goods; 84 sq ft is assumed.
  it('needs three sheets for 84 sq ft at 10 %, four at 20 %, and tips at 14.3 %', () => {
    expect(sheetsForAllowance(84, 32, 0.1).sheets).toBe(3);
    expect(sheetsForAllowance(84, 32, 0.2).sheets).toBe(4);
    // 3 x 32 / 84 - 1 = 0.142857
    expect(sheetsForAllowance(84, 32, 0.1).tipsAt).toBeCloseTo(0.142857, 6);
    expect(sheetsForAllowance(64, 32, 0).sheets).toBe(2);
    expect(sheetsForAllowance(64.01, 32, 0).sheets).toBe(3);
    expect(sheetsForAllowance(0, 32, 0.2).sheets).toBe(0);
  });

  it('refuses areas and allowances that are none', () => {
    expect(() => sheetsForAllowance(-1, 32, 0)).toThrow(RangeError);
    expect(() => sheetsForAllowance(1, 0, 0)).toThrow(RangeError);
    expect(() => sheetsForAllowance(1, 32, Number.NaN)).toThrow(RangeError);
  });
});

describe('equal pieces', () => {
  // assets.doityourself.com/stry/bookcaselayout cuts 15-7/8 in strips because 16 in will not fit three times.
  it('gives three shelves of 15.917 in from 48 in at a kerf of 1/8 in', () => {
    expect(equalPieceLength(48, 3, 1 / 8)).toBeCloseTo(15.917, 3);
    expect(plan([96, 48], [inches(96, 15.9166, 3)], 1 / 8).stocks.value).toBe(1);
    expect(plan([96, 48], [inches(96, 15.875, 3)], 1 / 8).stocks.value).toBe(1);
    expect(plan([96, 48], [inches(96, 16, 3)], 1 / 8).stocks.value).toBe(2);
  });

  // wiki.nottinghack.org.uk, "How To: Purchase Timber at a Merchant": 2.4 m cut into four may give 598 mm.
  it('gives four pieces of 597.75 mm from 2400 mm at a kerf of 3 mm, 598.2 at 2.4', () => {
    expect(equalPieceLength(2400, 4, 3)).toBe(597.75);
    expect(equalPieceLength(2400, 4, 2.4)).toBeCloseTo(598.2, 9);
    for (const [length, boards] of [
      [597.75, 1],
      [598, 2],
    ] as const) {
      const project = cuttingProject([boardProduct(89, [{ lengthMm: 2400 }])], [row(length, 89, 4)]);
      expect(planMaterials(project.input, project.parts).materials[0]?.stocks.value).toBe(boards);
    }
  });

  it('refuses to share what the saw turns to dust', () => {
    expect(() => equalPieceLength(10, 5, 3)).toThrow(RangeError);
    expect(() => equalPieceLength(0, 5, 3)).toThrow(RangeError);
    expect(() => equalPieceLength(10, 1.5, 0)).toThrow(RangeError);
  });
});

describe('sheets that are not 48 x 96', () => {
  // woodmagazine.com/wood-supplies/lumber/make-the-most-of-your-materials: MDF is often 1 in larger each way.
  it('fits four 12 in rips on 49 in MDF and not on 48 in plywood', () => {
    // 4 x 12 + 3 x 1/8 = 48-3/8
    expect(plan([97, 49], [inches(96, 12, 4)], 1 / 8).stocks.value).toBe(1);
    expect(plan([96, 48], [inches(96, 12, 4)], 1 / 8).stocks.value).toBe(2);
  });
});

describe('a published layout that only works without a kerf', () => {
  // issuhub.com/view/index/4654?pageIndex=16: two 12 x 60 and four 12 x 36 from one 4 x 8 sheet, 69 % of its area.
  const rough = [inches(60, 12, 2), inches(36, 12, 4)];

  it('needs a second sheet with a kerf of 1/8 in, although area says one', () => {
    expect(sheetsForAllowance(22, 32, 0).sheets).toBe(1);
    expect(plan([96, 48], rough, 1 / 8).stocks.value).toBe(2);
    expect(plan([96, 48], rough, 0).stocks.value).toBe(1);
  });

  it('fits one sheet when the rough width may shrink to the fourth strip, 11-5/8 in', () => {
    // 48 - 3 x (12 + 1/8) = 11-5/8: the strips become 12, 12, 12 and 11-5/8.
    const shrunk = [inches(60, 12, 2), inches(36, 12, 2), inches(36, 11.625, 2)];
    expect(plan([96, 48], shrunk, 1 / 8).stocks.value).toBe(1);
  });
});
