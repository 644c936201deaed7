import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProjectDocument, writeProjectDocument } from '../../../server/exchange/project-document.ts';
import type { Product, Supplier } from '../../../server/planning/product.ts';
import type {
  ApplicationMethod,
  CostCategory,
  PartInput,
  ProjectInput,
  ProjectSettings,
  StepKind,
  UsageRule,
} from '../../../server/planning/project-input.ts';
import { COST_CATEGORIES, EDGE_NAMES } from '../../../server/planning/project-input.ts';
import { NO_TERMS } from '../../planning/ledger/no-ledger.ts';
import { shipped } from './planned-document.ts';

/** Random projects of every kind of row, with ids as the database and as people write them. */

const text = fc.string({ unit: 'grapheme', maxLength: 20 });
/** Days that exist, and none. */
const day = fc.constantFrom('', '2027-03-14', '2028-02-29', '0001-01-01');
const named = text.map((rest) => `n${rest}`.trim());
const amount = fc.double({ min: 0, max: 1e6, noNaN: true }).map((value) => (value === 0 ? 0 : value));
const sizeMm = fc.double({ min: 0.1, max: 1e5, noNaN: true });
const orNull = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.option(value, { nil: null });
const choice = <Value>(...values: Value[]): fc.Arbitrary<Value> => fc.constantFrom(...values);
const productId = fc.oneof(
  fc.constant(''),
  fc.constantFrom(...shipped.products.map(({ id }) => id)),
  choice('own-ply', 'gone'),
);
const edge = fc.oneof(
  choice('hidden', 'bare'),
  productId.filter((id) => id !== ''),
);
const supplierId = choice('', 'own-shop', ...shipped.suppliers.map(({ id }) => id));

const minor = fc.integer({ min: 0, max: 1e9 });
const settings: fc.Arbitrary<ProjectSettings> = fc.record({
  name: named,
  units: choice<ProjectSettings['units']>('metric', 'us'),
  inchStyle: choice<ProjectSettings['inchStyle']>('fraction', 'decimal'),
  inchDenominator: choice(2, 4, 8, 16, 32),
  currency: choice('EUR', 'USD', 'JPY', 'KWD'),
  taxPercent: orNull(fc.double({ min: 0, max: 100, noNaN: true }).map((value) => value + 0)),
  coverageChoice: choice<ProjectSettings['coverageChoice']>('low', 'typical', 'high'),
  overhangMm: fc.integer({ min: 0, max: 1000 }),
  trimAllowanceMm: fc.integer({ min: 0, max: 100 }),
  spareStrips: fc.integer({ min: 0, max: 100 }),
  bandingOrder: fc.shuffledSubarray([...EDGE_NAMES], { minLength: 4 }),
  kerfMm: fc.integer({ min: 0, max: 50 }),
  sheetTrimMm: fc.integer({ min: 0, max: 500 }),
  cutStages: choice<ProjectSettings['cutStages']>(null, 2, 3),
  finishLoss: fc.integer({ min: 0, max: 90 }).map((percent) => percent / 100),
  startDate: choice('', '2028-02-29'),
  timeZone: choice('UTC', 'Europe/Berlin', 'America/New_York'),
  hands: fc.integer({ min: 1, max: 20 }),
  rackM2: orNull(fc.integer({ min: 1, max: 100 })),
  largestBatchM2: orNull(fc.integer({ min: 1, max: 100 })),
  sandsApart: fc.boolean(),
  woodWarmerC: fc.integer({ min: -60, max: 60 }),
  dryingDoublesPerC: fc.integer({ min: 1, max: 1000 }),
  dryingUsesHumidity: fc.boolean(),
  climateKind: choice<ProjectSettings['climateKind']>('constant', 'day-night', 'hourly'),
  dayC: fc.integer({ min: -50, max: 60 }),
  nightC: fc.integer({ min: -50, max: 60 }),
  dayHumidity: fc.integer({ min: 1, max: 100 }),
  nightHumidity: fc.integer({ min: 1, max: 100 }),
  keepUnderHealthLimit: fc.boolean(),
  roomLengthM: fc.option(fc.double({ min: 0.1, max: 1000, noNaN: true })),
  roomWidthM: fc.option(fc.double({ min: 0.1, max: 1000, noNaN: true })),
  roomHeightM: fc.option(fc.double({ min: 0.1, max: 1000, noNaN: true })),
  airKind: fc.constantFrom('fan', 'air-changes', 'opening'),
  fanM3PerHour: fc.option(fc.double({ min: 0, max: 1e6, noNaN: true })),
  fanDerating: fc.double({ min: 0.05, max: 1, noNaN: true }),
  airChangesPerHour: fc.option(fc.double({ min: 0, max: 1000, noNaN: true })),
  openingM2: fc.option(fc.double({ min: 0, max: 1000, noNaN: true })),
  windMPerS: fc.double({ min: 0, max: 50, noNaN: true }),
  mixingFactor: fc.double({ min: 1, max: 10, noNaN: true }),
  outdoorC: fc.option(fc.integer({ min: -60, max: 60 })),
  heatPricePerKwhMinor: fc.option(fc.double({ min: 0, max: 1e6, noNaN: true })),
  healthBasis: fc.constantFrom('peak', 'averages'),
  contingencyPercent: fc.integer({ min: 0, max: 100 }),
  rateMinorPerHour: orNull(minor),
  readyMadeMinor: orNull(minor),
});

/** Rows with ids of their own: numbers as the database gives them, or words. */
function rows<Row extends object>(row: fc.Arbitrary<Row>, most = 4): fc.Arbitrary<(Row & { id: string })[]> {
  const ids = fc.uniqueArray(fc.stringMatching(/^[a-z0-9_-]{1,8}$/), { minLength: most, maxLength: most });
  return fc
    .tuple(ids, fc.array(row, { maxLength: most }))
    .map(([names, list]) => list.map((one, index) => ({ ...one, id: names[index] ?? '' })));
}

const part: fc.Arbitrary<Omit<PartInput, 'id'>> = fc.record({
  name: text,
  section: text,
  quantity: text,
  length: text,
  width: fc.oneof(text, choice('600 mm', '23 5/8"', '=depth / 2')),
  shape: choice<PartInput['shape']>('rectangle', 'round'),
  materialId: productId,
  grain: choice<PartInput['grain']>('along', 'across', 'free'),
  edgeFront: edge,
  edgeBack: edge,
  edgeLeft: edge,
  edgeRight: edge,
  radiusFrontLeft: choice('', '40'),
  radiusFrontRight: choice('', '0'),
  radiusBackLeft: choice('', '1/2"'),
  radiusBackRight: text,
  showRecipeId: text,
  backRecipeId: choice('', '1', 'clear'),
  note: text,
  grainMatch: text,
});

const step = fc.record({
  kind: choice<StepKind>('sand', 'dust', 'condition', 'stain', 'seal', 'topcoat', 'scuff', 'cure'),
  productId,
  blendId: text,
  coats: fc.integer({ min: 1, max: 20 }),
  method: choice<ApplicationMethod>('brush', 'roller', 'wipe', 'spray-hvlp', 'spray-airless', 'spray-air'),
  transferEfficiency: orNull(choice(0.3, 1)),
  thinning: choice(0, 0.1, 10),
  thinnerId: productId,
  sessionLossL: orNull(choice(0, 0.05)),
  note: text,
});

/** Steps and components have ids of their own through all recipes and blends. */
function nested<Row extends object, Inner extends object>(
  outer: fc.Arbitrary<Row>,
  inner: fc.Arbitrary<Inner>,
): fc.Arbitrary<(Row & { id: string; inner: (Inner & { id: string })[] })[]> {
  return fc.array(fc.tuple(outer, fc.array(inner, { maxLength: 3 })), { maxLength: 3 }).map((list) =>
    list.map(([row, inside], index) => ({
      ...row,
      id: `r${index}`,
      inner: inside.map((one, place) => ({ ...one, id: `${index}-${place}` })),
    })),
  );
}

const ownPly: Product = {
  id: 'own-ply',
  kind: 'sheet',
  name: 'Own ply',
  shortName: 'own ply',
  unit: 'pcs',
  choices: { species: 'alder' },
  figures: {
    thicknessActual: {
      low: 17.6,
      typical: 18.1,
      high: null,
      unit: 'mm',
      basis: 'user',
      source: '',
      readOn: null,
    },
  },
  recoat: [],
  recoatEvidence: null,
  packs: [],
  retired: false,
  origin: 'user',
  note: null,
};
const ownShop: Supplier = { id: 'own-shop', name: 'Own shop', leadTimeDays: null, ...NO_TERMS };

const project: fc.Arbitrary<Omit<ProjectInput, 'catalogue'>> = fc.record({
  settings,
  sizes: rows(fc.record({ name: text, value: text, note: text })),
  parts: rows(part, 6),
  recipes: nested(fc.record({ name: text, faces: choice<'flip' | 'points'>('flip', 'points') }), step).map(
    (list) => list.map(({ inner, ...recipe }) => ({ ...recipe, steps: inner })),
  ),
  blends: nested(fc.record({ name: text }), fc.record({ productId, parts: amount })).map((list) =>
    list.map(({ inner, ...blend }) => ({ ...blend, components: inner })),
  ),
  rules: rows(
    fc.record({
      productId,
      per: choice<UsageRule['per']>('finish-area', 'coat-area', 'banding-metre', 'part', 'project'),
      rate: orNull(amount),
    }),
  ),
  extras: rows(
    fc.record({
      productId,
      name: text,
      category: choice<CostCategory>(...COST_CATEGORIES),
      quantity: amount,
      unitPriceMinor: orNull(fc.integer({ min: 0, max: 1e9 })),
      supplierId,
    }),
  ),
  onHand: rows(
    fc.record({
      productId,
      amount,
      count: fc.integer({ min: 0, max: 1000 }),
      lengthMm: orNull(sizeMm),
      widthMm: orNull(sizeMm),
      place: text,
      batch: text,
      openedOn: day,
      bestBefore: day,
    }),
  ),
  measurements: rows(fc.record({ productId, thicknessMm: fc.double({ min: 0.1, max: 1000, noNaN: true }) })),
  shopHours: rows(fc.record({ weekday: fc.integer({ min: 0, max: 6 }), from: text, to: text })),
  daysOff: rows(fc.record({ date: text, note: text })),
  climateRows: rows(
    fc.record({
      date: text,
      time: text,
      temperatureC: orNull(fc.integer({ min: -40, max: 60 })),
      humidityPercent: orNull(fc.integer({ min: 0, max: 100 })),
    }),
  ),
  pins: rows(fc.record({ taskId: text, start: text })),
  doneTasks: rows(fc.record({ taskId: text, start: text, end: text, litres: orNull(amount) })),
  arrivals: rows(fc.record({ productId, date: text })),
  budgets: rows(fc.record({ category: choice<CostCategory>(...COST_CATEGORIES), amountMinor: minor })),
  stockUses: rows(fc.record({ productId, date: day, amount, note: text })),
  payments: rows(
    fc.record({
      kind: choice<'payment' | 'refund'>('payment', 'refund'),
      date: day,
      supplierId,
      orderId: choice('', 'r0', 'no such'),
      category: choice<CostCategory>(...COST_CATEGORIES),
      amountMinor: minor,
      taxMinor: orNull(minor),
      share: choice(0, 0.5, 1),
      receiptNumber: text,
      note: text,
      attachmentId: text,
    }),
  ),
  substitutes: rows(fc.record({ productId, substituteId: productId })),
  workHours: rows(fc.record({ date: day, hours: amount.map((one) => Math.min(one, 100_000)), note: text })),
  quotes: rows(
    fc.record({
      title: text,
      customer: text,
      date: day,
      validUntil: day,
      materialsMinor: orNull(minor),
      hours: choice(0, 12.5),
      rateMinorPerHour: orNull(minor),
      markupPercent: choice(0, 15, 1000),
      taxPercent: orNull(choice(0, 20)),
      note: text,
      sender: text,
      shown: choice('price', 'work'),
    }),
  ),
  orders: fc.constant([]),
  orderLines: fc.constant([]),
  receipts: fc.constant([]),
});

const catalogue = {
  products: [...shipped.products, ownPly],
  suppliers: [...shipped.suppliers, ownShop],
};

function writeAsFile(rows: Omit<ProjectInput, 'catalogue'>): string {
  return JSON.stringify(writeProjectDocument({ ...rows, catalogue }, shipped));
}

function readFile(file: string): ProjectInput {
  const read = readProjectDocument(JSON.parse(file), shipped);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.input;
}

describe('a project document', () => {
  it('comes back as the same project, whatever the project holds', () => {
    let broughtAlong = 0;
    fc.assert(
      fc.property(project, (given) => {
        const file = writeAsFile(given);
        const { catalogue: read, ...rows } = readFile(file);
        expect(rows).toEqual(given);
        // What the project uses and the shipped catalogue lacks comes along.
        const uses = (id: string): boolean => file.includes(`"${id}"`);
        expect(read.products.some(({ id }) => id === 'own-ply')).toBe(uses('own-ply'));
        expect(read.suppliers.some(({ id }) => id === 'own-shop')).toBe(uses('own-shop'));
        broughtAlong += Number(uses('own-ply'));
      }),
      { numRuns: 200 },
    );
    expect(broughtAlong).toBeGreaterThan(20);
  });

  it('is the same text when it is written again from what was read', () => {
    fc.assert(
      fc.property(project, (given) => {
        // The first reading may put the keys of a row in another order.
        const file = writeAsFile(readFile(writeAsFile(given)));
        expect(writeAsFile(readFile(file))).toBe(file);
      }),
      { numRuns: 100 },
    );
  });
});
