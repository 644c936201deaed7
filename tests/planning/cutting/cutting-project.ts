import { figure } from '../../../server/planning/figure.ts';
import type { PartPlan } from '../../../server/planning/plan-output.ts';
import type { Pack, Product, ProductFigure } from '../../../server/planning/product.ts';
import type {
  OnHand,
  PartInput,
  ProjectInput,
  ProjectSettings,
} from '../../../server/planning/project-input.ts';
import { CALENDAR_SETTINGS, NO_CALENDAR_ROWS } from '../calendar/no-calendar.ts';
import { LEDGER_SETTINGS, NO_LEDGER_ROWS } from '../ledger/no-ledger.ts';
import type { Demand } from './check-layout.ts';

export interface PackOf {
  readonly id?: string;
  readonly lengthMm: number;
  readonly widthMm?: number;
  readonly price?: number | null;
  readonly currency?: string;
}

export function sheetProduct(packs: readonly PackOf[], id = 'birch-18'): Product {
  return {
    id,
    kind: 'sheet',
    name: 'Birch plywood 18 mm',
    shortName: id,
    unit: 'pcs',
    choices: {},
    figures: { thicknessActual: typical(17.6, 'mm') },
    recoat: [],
    recoatEvidence: null,
    packs: packs.map((pack, index) => packOf(pack, index, 1)),
    retired: false,
    origin: 'user',
    note: null,
  };
}

export function boardProduct(widthMm: number | null, packs: readonly PackOf[], id = 'pine-1x4'): Product {
  return {
    ...sheetProduct([], id),
    kind: 'board',
    name: 'Pine 1x4',
    unit: 'm',
    figures: widthMm === null ? {} : { width: typical(widthMm, 'mm') },
    packs: packs.map((pack, index) => packOf(pack, index, pack.lengthMm / 1000)),
  };
}

function typical(value: number, unit: string): ProductFigure {
  return { low: null, typical: value, high: null, unit, basis: 'user', source: '', readOn: null };
}

function packOf(pack: PackOf, index: number, amount: number): Pack {
  return {
    id: pack.id ?? `pack-${index + 1}`,
    label: `${pack.lengthMm}${pack.widthMm === undefined ? '' : ` x ${pack.widthMm}`}`,
    amount,
    lengthMm: pack.widthMm === undefined ? null : pack.lengthMm,
    widthMm: pack.widthMm ?? null,
    priceMinor: pack.price === undefined ? 5000 : pack.price,
    currency: pack.currency ?? 'EUR',
    supplierId: null,
    basis: 'user',
    source: '',
    readOn: null,
  };
}

/** A demand per row; the material is the first product's unless the row says otherwise. */
export interface Row extends Omit<Demand, 'partId'> {
  readonly materialId?: string;
  readonly name?: string;
}

export function row(lengthMm: number, widthMm: number, count = 1, grain: Row['grain'] = 'along'): Row {
  return { lengthMm, widthMm, count, grain };
}

export interface CuttingProject {
  readonly input: ProjectInput;
  readonly parts: readonly PartPlan[];
  readonly demands: readonly Demand[];
}

/** A project as far as cutting looks at it, with the part figures the geometry would give. */
export function cuttingProject(
  products: readonly Product[],
  rows: readonly Row[],
  more: { settings?: Partial<ProjectSettings>; onHand?: readonly OnHand[] } = {},
): CuttingProject {
  const demands = rows.map((each, index) => ({ ...each, partId: String(index + 1) }));
  const input: ProjectInput = {
    settings: {
      name: 'test',
      units: 'metric',
      inchStyle: 'fraction',
      inchDenominator: 16,
      currency: 'EUR',
      taxPercent: null,
      coverageChoice: 'low',
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
      ...more.settings,
    },
    sizes: [],
    parts: demands.map(
      (demand): PartInput => partInput(demand, demand.materialId ?? products[0]?.id ?? '', demand.name),
    ),
    recipes: [],
    blends: [],
    rules: [],
    extras: [],
    onHand: more.onHand ?? [],
    measurements: [],
    ...NO_CALENDAR_ROWS,
    ...NO_LEDGER_ROWS,
    catalogue: { products, suppliers: [] },
  };
  return { input, parts: demands.map(partPlan), demands };
}

function partInput(demand: Demand, materialId: string, name = ''): PartInput {
  return {
    id: demand.partId,
    name,
    section: '',
    quantity: String(demand.count),
    length: `${demand.lengthMm}`,
    width: `${demand.widthMm}`,
    shape: 'rectangle',
    materialId,
    grain: demand.grain,
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
  };
}

function partPlan(demand: Demand): PartPlan {
  const given = (value: number, unit: 'mm' | 'pcs' | 'm' | 'm2') =>
    figure(value, unit, { rule: 'given', inputs: [] });
  return {
    id: demand.partId,
    quantity: given(demand.count, 'pcs'),
    lengthMm: given(demand.lengthMm, 'mm'),
    widthMm: given(demand.widthMm, 'mm'),
    thicknessMm: given(17.6, 'mm'),
    cutLengthMm: given(demand.lengthMm, 'mm'),
    cutWidthMm: given(demand.widthMm, 'mm'),
    cornersMm: [0, 0, 0, 0],
    edges: [],
    strips: [],
    totalBandedM: given(0, 'm'),
    showFaceM2: given(0, 'm2'),
    backFaceM2: given(0, 'm2'),
    seenEdgeM2: given(0, 'm2'),
    totalFinishM2: given(0, 'm2'),
  };
}

/** The same part with one figure unknown. */
export function withUnknown(part: PartPlan, field: 'cutLengthMm' | 'cutWidthMm' | 'quantity'): PartPlan {
  return { ...part, [field]: { ...part[field], value: null } };
}
