import type { Pack, Product, ProductChoices, ProductFigure } from '../../../server/planning/product.ts';
import type { PartInput, ProjectInput, ProjectSettings } from '../../../server/planning/project-input.ts';
import { CALENDAR_SETTINGS, NO_CALENDAR_ROWS } from '../calendar/no-calendar.ts';
import { LEDGER_SETTINGS, NO_LEDGER_ROWS } from '../ledger/no-ledger.ts';

/** Projects of a few rows, built from what a test wants to say and plain defaults for the rest. */

const EVIDENCE = { basis: 'user', source: '', readOn: null } as const;

export function figureOf(typical: number, unit = 'mm'): ProductFigure {
  return { ...EVIDENCE, low: null, typical, high: null, unit };
}

function product(id: string, kind: Product['kind'], rest: Partial<Product>): Product {
  return {
    id,
    kind,
    name: id,
    shortName: id,
    unit: kind === 'sheet' ? 'pcs' : 'm',
    choices: {},
    figures: {},
    recoat: [],
    recoatEvidence: null,
    packs: [],
    retired: false,
    origin: 'user',
    note: null,
    ...rest,
  };
}

export function sheet(id: string, thicknessMm: number | null, rest: Partial<Product> = {}): Product {
  const figures = thicknessMm === null ? {} : { thicknessActual: figureOf(thicknessMm) };
  return product(id, 'sheet', { figures, ...rest });
}

/** A banding product; null leaves a figure unknown. */
export function band(
  id: string,
  thicknessMm: number | null,
  widthMm: number | null = 40,
  rest: Partial<Product> & { readonly choices?: ProductChoices } = {},
): Product {
  return product(id, 'banding', {
    figures: {
      ...(thicknessMm === null ? {} : { thicknessActual: figureOf(thicknessMm) }),
      ...(widthMm === null ? {} : { width: figureOf(widthMm) }),
    },
    packs: [roll('25 m', 25, 1000), roll('50 m', 50, 1900)],
    ...rest,
  });
}

export function roll(label: string, metres: number, priceMinor: number | null, currency = 'EUR'): Pack {
  return {
    ...EVIDENCE,
    id: `roll ${label}`,
    label,
    amount: metres,
    lengthMm: null,
    widthMm: null,
    priceMinor,
    currency,
    supplierId: null,
  };
}

export function partRow(id: string, rest: Partial<PartInput> = {}): PartInput {
  return {
    id,
    name: `Part ${id}`,
    section: '',
    quantity: '1',
    length: '600 mm',
    width: '400 mm',
    shape: 'rectangle',
    materialId: 'ply',
    grain: 'along',
    edgeFront: 'hidden',
    edgeBack: 'hidden',
    edgeLeft: 'hidden',
    edgeRight: 'hidden',
    radiusFrontLeft: '',
    radiusFrontRight: '',
    radiusBackLeft: '',
    radiusBackRight: '',
    showRecipeId: '',
    backRecipeId: '',
    note: '',
    grainMatch: '',
    ...rest,
  };
}

/** All four edges with one treatment. */
export function allEdges(treatment: string): Partial<PartInput> {
  return { edgeFront: treatment, edgeBack: treatment, edgeLeft: treatment, edgeRight: treatment };
}

/** All four corners with one radius. */
export function allCorners(radius: string): Partial<PartInput> {
  return {
    radiusFrontLeft: radius,
    radiusFrontRight: radius,
    radiusBackLeft: radius,
    radiusBackRight: radius,
  };
}

export function smallProject({
  parts,
  products = [sheet('ply', 18), band('veneer', 0.6), band('thick', 2)],
  settings = {},
  ...rest
}: Partial<Omit<ProjectInput, 'settings' | 'catalogue'>> & {
  readonly products?: readonly Product[];
  readonly settings?: Partial<ProjectSettings>;
}): ProjectInput {
  return {
    settings: {
      name: 'test',
      units: 'metric',
      inchStyle: 'fraction',
      inchDenominator: 32,
      currency: 'EUR',
      taxPercent: null,
      coverageChoice: 'low',
      overhangMm: 25,
      trimAllowanceMm: 1.6,
      spareStrips: 0,
      bandingOrder: ['left', 'right', 'back', 'front'],
      kerfMm: 3,
      sheetTrimMm: 0,
      cutStages: null,
      finishLoss: 0,
      ...CALENDAR_SETTINGS,
      ...LEDGER_SETTINGS,
      ...settings,
    },
    sizes: [],
    parts: parts ?? [],
    recipes: [],
    blends: [],
    rules: [],
    extras: [],
    onHand: [],
    measurements: [],
    ...NO_CALENDAR_ROWS,
    ...NO_LEDGER_ROWS,
    ...rest,
    catalogue: { products, suppliers: [] },
  };
}
