import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogueFaults } from '../../db/catalogue/catalogue-faults.ts';
import { productSchema, supplierSchema } from '../../db/catalogue/product-schema.ts';
import { CATALOGUE_FILES, readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { Evidence, Product, ProductKind } from '../../server/planning/product.ts';

const catalogue = readCatalogue();
const products = new Map(catalogue.products.map((product) => [product.id, product]));

function product(id: string): Product {
  const found = products.get(id);
  if (found === undefined) throw new RangeError(`no product "${id}" is shipped`);
  return found;
}

/** Every piece of evidence of a product, with a name to report it by. */
function evidenceOf({ id, figures, recoatEvidence, packs }: Product): [string, Evidence][] {
  return [
    ...Object.entries(figures).map(([name, figure]): [string, Evidence] => [`${id} ${name}`, figure]),
    ...packs.map((pack): [string, Evidence] => [`${id} ${pack.id}`, pack]),
    ...(recoatEvidence === null ? [] : [[`${id} recoat`, recoatEvidence] as [string, Evidence]]),
  ];
}

const evidence = catalogue.products.flatMap(evidenceOf);

describe('the shipped catalogue', () => {
  it('reads from every file in its folder', () => {
    const files = readdirSync(new URL('../../db/catalogue/', import.meta.url));
    expect(files.filter((file) => file.endsWith('.json')).sort()).toEqual(
      [...CATALOGUE_FILES, 'suppliers', 'solvents', 'starter-recipes'].map((file) => `${file}.json`).sort(),
    );
  });

  it('has rows of every kind', () => {
    const least: Record<ProductKind, number> = {
      sheet: 25,
      board: 15,
      banding: 15,
      finish: 25,
      thinner: 5,
      abrasive: 10,
      glue: 3,
      filler: 3,
      hardware: 10,
      consumable: 8,
    };
    for (const [kind, count] of Object.entries(least))
      expect(catalogue.products.filter((row) => row.kind === kind).length, kind).toBeGreaterThanOrEqual(
        count,
      );
  });

  it('marks every row as shipped and none as retired', () => {
    expect(catalogue.products.filter((row) => row.origin !== 'shipped' || row.retired)).toEqual([]);
  });

  it('names source and date of every published or label value', () => {
    expect(
      evidence
        .filter(([, { basis }]) => basis === 'published' || basis === 'label')
        .filter(([, { source, readOn }]) => source === '' || readOn === null),
    ).toEqual([]);
  });

  it('claims no source and no reading date for practice and memory', () => {
    expect(
      evidence
        .filter(([, { basis }]) => basis === 'practice' || basis === 'memory')
        .filter(([, { source, readOn }]) => source !== '' || readOn !== null),
    ).toEqual([]);
  });

  it('holds no figure entered by a user', () => {
    expect(evidence.filter(([, { basis }]) => basis === 'user')).toEqual([]);
  });

  it('says of every price that it is an illustration', () => {
    const packs = catalogue.products.flatMap((row) => row.packs);
    expect(packs.length).toBeGreaterThan(300);
    expect(
      packs.filter(({ basis, note }) => basis !== 'memory' || note !== 'illustrative; enter your own'),
    ).toEqual([]);
  });

  it('keeps unknown figures as null and says what to do about each', () => {
    const unknown = catalogue.products.flatMap(({ id, figures }) =>
      Object.entries(figures)
        .filter(([, { low, typical, high }]) => low === null && typical === null && high === null)
        .map(([name, figure]) => [`${id} ${name}`, figure.note] as const),
    );
    expect(unknown.length).toBeGreaterThan(10);
    expect(unknown.filter(([, note]) => !note?.startsWith('not known'))).toEqual([]);
  });

  it('has packs for every product, each with a shipped supplier', () => {
    const suppliers = new Set(catalogue.suppliers.map(({ id }) => id));
    expect(
      catalogue.products.filter(
        ({ packs }) =>
          packs.length === 0 ||
          packs.some(({ supplierId }) => supplierId === null || !suppliers.has(supplierId)),
      ),
    ).toEqual([]);
    expect(catalogue.suppliers.length).toBe(5);
  });

  it('sells finishes, thinners, abrasives, glues, fillers and consumables in EUR and in USD', () => {
    const kinds: readonly ProductKind[] = ['finish', 'thinner', 'abrasive', 'glue', 'filler', 'consumable'];
    const oneMarket = catalogue.products
      .filter(({ kind }) => kinds.includes(kind))
      .filter(({ packs }) => new Set(packs.map(({ currency }) => currency)).size !== 2);
    expect(oneMarket.map(({ id }) => id)).toEqual([]);
  });

  it('never asks more per unit for a larger pack of liquid than for a smaller one', () => {
    const dearer = catalogue.products
      .filter(({ kind }) => kind === 'finish' || kind === 'thinner' || kind === 'glue')
      .flatMap(({ id, packs }) =>
        packs.flatMap((small) =>
          packs
            .filter(({ currency, amount }) => currency === small.currency && amount > small.amount)
            .filter(
              (large) => (large.priceMinor ?? 0) / large.amount > (small.priceMinor ?? 0) / small.amount,
            )
            .map((large) => `${id}: ${small.id} and ${large.id}`),
        ),
      );
    expect(dearer).toEqual([]);
  });

  it('gives every finish but a hardener a coverage, a first-coat factor and its rags warning', () => {
    const bare = catalogue.products
      .filter(({ kind, choices }) => kind === 'finish' && choices.role !== 'hardener')
      .filter(
        ({ figures, choices }) =>
          figures.coverage?.typical == null ||
          figures.firstCoatFactor?.typical == null ||
          choices.rags === undefined,
      );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it('marks rags of every drying oil as self-heating', () => {
    const oils = catalogue.products.filter(({ choices }) => choices.carrier === 'oil');
    expect(oils.length).toBeGreaterThan(10);
    expect(oils.filter(({ choices }) => choices.rags !== 'self-heating')).toEqual([]);
  });

  it('keeps the recoat window with a hole: within 2 h, or from 72 h after scuffing', () => {
    // paleamber.net: recoat within 2 h, or wait 72 h and sand: 2 x 60 and 72 x 60 minutes
    expect(product('oil-poly-satin').recoat).toEqual([
      { fromMin: 0, toMin: 120, scuff: false },
      { fromMin: 4320, toMin: null, scuff: true },
    ]);
  });

  it('pairs the two-part finish with its hardener', () => {
    const { hardenerId, mixBase, mixHardener } = product('two-part-water-clear').choices;
    expect([hardenerId, mixBase, mixHardener]).toEqual(['two-part-water-hardener', 10, 1]);
    expect(product('two-part-water-hardener').choices.role).toBe('hardener');
    expect(product('two-part-water-clear').note).toMatch(/isocyanate/);
  });
});

/** A well-formed product, to be spoiled one field at a time. */
const varnish: Product = {
  ...product('water-poly-satin'),
  packs: product('water-poly-satin').packs.slice(0, 2),
};
const coverage = varnish.figures.coverage;
const [pack] = varnish.packs;

function spoilt(changes: object, from: Product = varnish): string[] {
  const read = productSchema.safeParse({ ...from, ...changes });
  return read.success ? [] : read.error.issues.map(({ path }) => path.join('.'));
}

describe('the product schema', () => {
  it('accepts the shipped rows unchanged', () => {
    for (const row of catalogue.products) expect(productSchema.parse(row)).toEqual(row);
    for (const row of catalogue.suppliers) expect(supplierSchema.parse(row)).toEqual(row);
  });

  it.each([
    ['an unknown key', { colour: 'clear' }, ''],
    ['an id with a space', { id: 'water poly' }, 'id'],
    ['an empty name', { name: '' }, 'name'],
    ['a name of spaces', { name: '  ' }, 'name'],
    ['a unit that does not fit the kind', { unit: 'pcs' }, 'unit'],
    ['an unknown figure', { figures: { shine: coverage } }, 'figures'],
    [
      'a figure of another kind',
      { figures: { areaPerPiece: { ...coverage, unit: 'm2' } } },
      'figures.areaPerPiece',
    ],
    [
      'a figure in another unit',
      { figures: { coverage: { ...coverage, unit: 'ft2/gal' } } },
      'figures.coverage.unit',
    ],
    ['low above typical', { figures: { coverage: { ...coverage, low: 11.5 } } }, 'figures.coverage'],
    ['typical above high', { figures: { coverage: { ...coverage, typical: 13 } } }, 'figures.coverage'],
    [
      'low above high without a typical',
      { figures: { coverage: { ...coverage, low: 13, typical: null } } },
      'figures.coverage',
    ],
    ['a coverage of 0', { figures: { coverage: { ...coverage, low: 0 } } }, 'figures.coverage.low'],
    ['a negative coverage', { figures: { coverage: { ...coverage, low: -1 } } }, 'figures.coverage.low'],
    [
      'a figure that is not a number',
      { figures: { coverage: { ...coverage, low: Number.NaN } } },
      'figures.coverage.low',
    ],
    [
      'an endless figure',
      { figures: { coverage: { ...coverage, high: Number.POSITIVE_INFINITY } } },
      'figures.coverage.high',
    ],
    ['a figure given as text', { figures: { coverage: { ...coverage, low: '10' } } }, 'figures.coverage.low'],
    [
      'more than 100 % solids',
      { figures: { solidsByVolume: { ...varnish.figures.solidsByVolume, typical: 101 } } },
      'figures.solidsByVolume.typical',
    ],
    [
      'a published figure without a source',
      { figures: { coverage: { ...coverage, basis: 'published', source: ' ' } } },
      'figures.coverage.source',
    ],
    [
      'a label figure without a source',
      { figures: { coverage: { ...coverage, basis: 'label', source: '' } } },
      'figures.coverage.source',
    ],
    [
      'an unknown basis',
      { figures: { coverage: { ...coverage, basis: 'rumour' } } },
      'figures.coverage.basis',
    ],
    [
      'a date that does not exist',
      { figures: { coverage: { ...coverage, readOn: '2026-02-30' } } },
      'figures.coverage.readOn',
    ],
    [
      'recoat intervals that overlap',
      {
        recoat: [
          { fromMin: 0, toMin: 120, scuff: false },
          { fromMin: 60, toMin: null, scuff: true },
        ],
      },
      'recoat',
    ],
    [
      'recoat intervals out of order',
      {
        recoat: [
          { fromMin: 240, toMin: 480, scuff: false },
          { fromMin: 0, toMin: 60, scuff: true },
        ],
      },
      'recoat',
    ],
    [
      'a recoat interval that ends before it begins',
      { recoat: [{ fromMin: 120, toMin: 60, scuff: false }] },
      'recoat',
    ],
    [
      'an open recoat interval that is not the last',
      {
        recoat: [
          { fromMin: 0, toMin: null, scuff: false },
          { fromMin: 10, toMin: 20, scuff: true },
        ],
      },
      'recoat',
    ],
    ['recoat intervals without evidence', { recoatEvidence: null }, 'recoatEvidence'],
    ['a pack of nothing', { packs: [{ ...pack, amount: 0 }] }, 'packs.0.amount'],
    ['a currency in small letters', { packs: [{ ...pack, currency: 'eur' }] }, 'packs.0.currency'],
    ['a price with a fraction of a cent', { packs: [{ ...pack, priceMinor: 10.5 }] }, 'packs.0.priceMinor'],
    ['a negative price', { packs: [{ ...pack, priceMinor: -1 }] }, 'packs.0.priceMinor'],
    ['a sheet size on a can', { packs: [{ ...pack, lengthMm: 100, widthMm: 100 }] }, 'packs.0.lengthMm'],
    ['two packs with one id', { packs: [pack, pack] }, 'packs.1.id'],
    ['a choice of another kind', { choices: { ...varnish.choices, grit: 120 } }, 'choices.grit'],
    ['a mix without its hardener', { choices: { ...varnish.choices, mixBase: 10 } }, 'choices'],
    [
      'itself as hardener',
      { choices: { ...varnish.choices, hardenerId: varnish.id, mixBase: 1, mixHardener: 1 } },
      'choices.hardenerId',
    ],
  ])('refuses %s', (_, changes, path) => {
    expect(spoilt(changes)).toEqual([path]);
  });

  it('refuses a sheet pack of two', () => {
    const sheet = product('birch-ply-18');
    expect(spoilt({ packs: [{ ...sheet.packs[0], amount: 2 }] }, sheet)).toEqual(['packs.0.amount']);
  });

  it('takes an unknown price and a price of 0, which are two things', () => {
    expect(spoilt({ packs: [{ ...pack, priceMinor: null }] })).toEqual([]);
    expect(spoilt({ packs: [{ ...pack, priceMinor: 0 }] })).toEqual([]);
  });

  it('takes temperatures below 0 and a product from which nothing evaporates', () => {
    const unit = (name: 'flashPoint' | 'voc') => ({ ...varnish.figures[name], low: null, high: null });
    expect(
      spoilt({
        figures: { flashPoint: { ...unit('flashPoint'), typical: -18 }, voc: { ...unit('voc'), typical: 0 } },
      }),
    ).toEqual([]);
  });

  it('refuses a supplier with a negative lead time', () => {
    expect(supplierSchema.safeParse({ id: 'yard', name: 'Yard', leadTimeDays: -1 }).success).toBe(false);
    expect(supplierSchema.safeParse({ id: 'yard', name: 'Yard', leadTimeDays: null }).success).toBe(true);
  });
});

describe('the faults between rows', () => {
  const rows = { products: [varnish], suppliers: catalogue.suppliers };
  const faults = (changed: Partial<typeof rows>) =>
    catalogueFaults({ ...rows, ...changed }).map(({ table, id, field }) => [table, id, field].join(' '));

  it('are none in the shipped catalogue', () => {
    expect(catalogueFaults(catalogue)).toEqual([]);
  });

  it('name an id used twice', () => {
    expect(faults({ products: [varnish, varnish] })).toEqual(['products water-poly-satin id']);
    expect(faults({ suppliers: [...catalogue.suppliers, ...catalogue.suppliers.slice(0, 1)] })).toEqual([
      'suppliers timber-yard id',
    ]);
  });

  it('name a short name used twice, capitals aside', () => {
    const other = { ...varnish, id: 'other', shortName: varnish.shortName.toUpperCase() };
    expect(faults({ products: [varnish, other] })).toEqual(['products other shortName']);
  });

  it('name a supplier that is not there', () => {
    expect(faults({ suppliers: [] })).toEqual([
      'products water-poly-satin packs.0.supplierId',
      'products water-poly-satin packs.1.supplierId',
    ]);
  });

  it('name a hardener that is not there, or is none', () => {
    const mixed = (hardenerId: string): Product => ({
      ...varnish,
      id: 'mixed',
      shortName: 'mixed',
      choices: { ...varnish.choices, hardenerId, mixBase: 4, mixHardener: 1 },
    });
    expect(faults({ products: [varnish, mixed('gone')] })).toEqual(['products mixed choices.hardenerId']);
    expect(faults({ products: [varnish, mixed(varnish.id)] })).toEqual(['products mixed choices.hardenerId']);
  });
});
