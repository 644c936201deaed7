import { type Figure, type FigureUnit, figure } from '../../../server/planning/figure.ts';
import type { PartPlan } from '../../../server/planning/plan-output.ts';
import type {
  Pack,
  Product,
  ProductChoices,
  ProductFigure,
  ProductFigureName,
  ProductKind,
} from '../../../server/planning/product.ts';
import type {
  PartInput,
  ProjectInput,
  ProjectSettings,
  Recipe,
  RecipeStep,
} from '../../../server/planning/project-input.ts';
import { CALENDAR_SETTINGS, NO_CALENDAR_ROWS } from '../calendar/no-calendar.ts';
import { LEDGER_SETTINGS, NO_LEDGER_ROWS } from '../ledger/no-ledger.ts';

/** Small builders for tests of finish, packs and buying: everything not named is empty or neutral. */

type Range = number | readonly [number | null, number | null, number | null];

export function aFigure(range: Range): ProductFigure {
  const [low, typical, high] = typeof range === 'number' ? [null, range, null] : range;
  return { low, typical, high, unit: '', basis: 'label', source: 'typical of the family', readOn: null };
}

export function aPack(id: string, amount: number, priceMinor: number | null, more: Partial<Pack> = {}): Pack {
  return {
    id,
    label: id,
    amount,
    lengthMm: null,
    widthMm: null,
    priceMinor,
    currency: 'USD',
    supplierId: null,
    basis: 'user',
    source: '',
    readOn: null,
    ...more,
  };
}

const UNIT_OF: Readonly<Record<ProductKind, Product['unit']>> = {
  sheet: 'pcs',
  board: 'm',
  banding: 'm',
  finish: 'L',
  thinner: 'L',
  abrasive: 'pcs',
  glue: 'g',
  filler: 'g',
  hardware: 'pcs',
  consumable: 'pcs',
};

export function aProduct(
  id: string,
  kind: ProductKind,
  figures: Partial<Record<ProductFigureName, Range>> = {},
  more: Partial<Product> & { readonly choices?: ProductChoices } = {},
): Product {
  return {
    id,
    kind,
    name: id,
    shortName: id,
    unit: UNIT_OF[kind],
    choices: {},
    figures: Object.fromEntries(Object.entries(figures).map(([name, range]) => [name, aFigure(range)])),
    recoat: [],
    recoatEvidence: null,
    packs: [],
    retired: false,
    origin: 'user',
    note: null,
    ...more,
  };
}

export const SETTINGS: ProjectSettings = {
  name: 'test',
  units: 'metric',
  inchStyle: 'fraction',
  inchDenominator: 32,
  currency: 'USD',
  taxPercent: null,
  coverageChoice: 'typical',
  overhangMm: 25,
  trimAllowanceMm: 1.6,
  spareStrips: 1,
  bandingOrder: ['left', 'right', 'back', 'front'],
  kerfMm: 3,
  sheetTrimMm: 0,
  cutStages: null,
  finishLoss: 0,
  ...CALENDAR_SETTINGS,
  ...LEDGER_SETTINGS,
};

export function aStep(id: string, kind: RecipeStep['kind'], more: Partial<RecipeStep> = {}): RecipeStep {
  return {
    id,
    kind,
    productId: '',
    blendId: '',
    coats: 1,
    method: 'brush',
    transferEfficiency: null,
    thinning: 0,
    thinnerId: '',
    sessionLossL: 0,
    note: '',
    ...more,
  };
}

export function aRecipe(id: string, steps: readonly RecipeStep[]): Recipe {
  return { id, name: `recipe ${id}`, steps, faces: 'flip' };
}

const known = (value: number | null, unit: FigureUnit): Figure =>
  figure(value, unit, { rule: 'given', inputs: [] });

export interface GivenPart {
  readonly id: string;
  readonly pieces: number | null;
  readonly showM2?: number | null;
  readonly backM2?: number | null;
  readonly edgeM2?: number | null;
  readonly bandedM?: number;
  readonly showRecipeId?: string;
  readonly backRecipeId?: string;
}

/** A part as the part list holds it and as the geometry plans it, from its areas. */
export function aPart(given: GivenPart): { readonly row: PartInput; readonly plan: PartPlan } {
  const { id, pieces, showM2 = 0, backM2 = 0, edgeM2 = 0, bandedM = 0 } = given;
  const { showRecipeId = '', backRecipeId = '' } = given;
  const perPiece =
    (showRecipeId === '' ? 0 : (showM2 ?? Number.NaN)) +
    (backRecipeId === '' ? 0 : (backM2 ?? Number.NaN)) +
    (showRecipeId === '' && backRecipeId === '' ? 0 : (edgeM2 ?? Number.NaN));
  const total = pieces === null || Number.isNaN(perPiece) ? null : pieces * perPiece;
  return {
    row: {
      id,
      name: `part ${id}`,
      section: '',
      quantity: String(pieces ?? ''),
      length: '',
      width: '',
      shape: 'rectangle',
      materialId: '',
      grain: 'along',
      edgeFront: 'bare',
      edgeBack: 'bare',
      edgeLeft: 'bare',
      edgeRight: 'bare',
      radiusFrontLeft: '',
      radiusFrontRight: '',
      radiusBackLeft: '',
      radiusBackRight: '',
      showRecipeId,
      backRecipeId,
      note: '',
      grainMatch: '',
    },
    plan: {
      id,
      quantity: known(pieces, 'pcs'),
      lengthMm: known(null, 'mm'),
      widthMm: known(null, 'mm'),
      thicknessMm: known(null, 'mm'),
      cutLengthMm: known(null, 'mm'),
      cutWidthMm: known(null, 'mm'),
      cornersMm: [0, 0, 0, 0],
      edges: [],
      strips: [],
      totalBandedM: known(bandedM, 'm'),
      showFaceM2: known(showM2, 'm2'),
      backFaceM2: known(backM2, 'm2'),
      seenEdgeM2: known(edgeM2, 'm2'),
      totalFinishM2: known(total, 'm2'),
    },
  };
}

export function aProject(
  more: Partial<Omit<ProjectInput, 'settings' | 'catalogue'>> & {
    readonly settings?: Partial<ProjectSettings>;
    readonly products?: readonly Product[];
    readonly suppliers?: ProjectInput['catalogue']['suppliers'];
  } = {},
): ProjectInput {
  const { settings, products = [], suppliers = [], ...tables } = more;
  return {
    sizes: [],
    parts: [],
    recipes: [],
    blends: [],
    rules: [],
    extras: [],
    onHand: [],
    measurements: [],
    ...NO_CALENDAR_ROWS,
    ...NO_LEDGER_ROWS,
    ...tables,
    settings: { ...SETTINGS, ...settings },
    catalogue: { products, suppliers },
  };
}
