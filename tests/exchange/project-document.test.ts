import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import {
  DEFAULT_SHOP_HOURS,
  defaultSettings,
  documentJsonSchema,
  readProjectDocument,
  writeProjectDocument,
} from '../../server/exchange/project-document.ts';
import { plan } from '../../server/planning/plan.ts';
import type { Problem } from '../../server/planning/problem.ts';
import type { ProjectInput } from '../../server/planning/project-input.ts';
import { NO_CALENDAR_ROWS } from '../planning/calendar/no-calendar.ts';
import { NO_LEDGER_ROWS } from '../planning/ledger/no-ledger.ts';
import { smallDocument } from './small-document.ts';

const catalogue = readCatalogue();

function read(document: unknown): ProjectInput {
  const reading = readProjectDocument(document, catalogue);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 2));
  return reading.input;
}

function problems(document: unknown): readonly Problem[] {
  const reading = readProjectDocument(document, catalogue);
  return reading.ok ? [] : reading.problems;
}

/** Table, id and field of every problem. */
function places(document: unknown): string[] {
  return problems(document).map(({ at }) => [at.table, at.id, at.field].map((part) => part ?? '-').join(' '));
}

const part = smallDocument.parts[0];
const step = smallDocument.recipes[1]?.steps[0];
const ownPly = smallDocument.products[0];

describe('a document', () => {
  const input = read(smallDocument);

  it('fills in what a part leaves out', () => {
    expect(input.parts[1]).toEqual({
      id: '2',
      name: 'Leg',
      section: '',
      quantity: '1',
      length: '40 cm',
      width: '380.5 mm',
      shape: 'rectangle',
      materialId: 'my-ply',
      grain: 'along',
      edgeFront: 'birch-veneer-22',
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
    });
  });

  it('fills in the settings for its units, and keeps those it gives', () => {
    expect(input.settings).toEqual(defaultSettings('metric', 'EUR', 'Bench'));
    const given = {
      ...smallDocument.settings,
      kerfMm: 2.4,
      taxPercent: 20,
      bandingOrder: ['front', 'back', 'left', 'right'],
    };
    expect(read({ ...smallDocument, settings: given }).settings).toEqual({ ...input.settings, ...given });
  });

  it('reads a number as the unit of the project, and makes it self-contained', () => {
    expect([input.sizes[0]?.value, input.parts[0]?.length, input.parts[0]?.quantity]).toEqual([
      '400 mm',
      '1200 mm',
      '2',
    ]);
    const us = read({ ...smallDocument, settings: { ...smallDocument.settings, units: 'us' } });
    expect([us.sizes[0]?.value, us.parts[1]?.width]).toEqual(['400"', '380.5"']);
  });

  it('means the same whether a size is a number or text', () => {
    const typed = { ...smallDocument, parts: [{ ...part, length: '1200' }] };
    const numbered = { ...smallDocument, parts: [{ ...part, length: 1200 }] };
    const lengthOf = (document: object) => plan(read(document)).parts[0]?.lengthMm.value;
    expect(lengthOf(numbered)).toBe(lengthOf(typed));
    // 1.125 in three decimals is no thousand: 1.125 in = 28.575 mm
    const inches = {
      ...numbered,
      settings: { ...smallDocument.settings, units: 'us' },
      parts: [{ ...part, length: 1.125 }],
    };
    expect(lengthOf(inches)).toBeCloseTo(28.575, 9);
  });

  it('calls rows without an id by their place, steps and components through all recipes and blends', () => {
    expect(input.parts.map(({ id }) => id)).toEqual(['1', '2']);
    expect(input.recipes.flatMap(({ steps }) => steps.map(({ id }) => id))).toEqual(['1', '2', '3']);
    expect(input.blends[0]?.components.map(({ id }) => id)).toEqual(['1', '2']);
  });

  it('takes ids and references as numbers or text', () => {
    expect(input.parts[0]?.showRecipeId).toBe('1');
    expect(input.recipes[0]?.steps[0]?.blendId).toBe('1');
    const named = {
      ...smallDocument,
      parts: [
        { ...part, id: 7 },
        { ...part, id: 'Lehne_2' },
      ],
    };
    expect(read(named).parts.map(({ id }) => id)).toEqual(['7', 'Lehne_2']);
  });

  it('wipes stain and brushes topcoat unless told otherwise', () => {
    expect(input.recipes[0]?.steps.map(({ method }) => method)).toEqual(['wipe', 'brush']);
  });

  it('adds its own products and suppliers behind the shipped ones', () => {
    expect(input.catalogue.products.length).toBe(catalogue.products.length + 1);
    expect(input.catalogue.products.at(-1)).toEqual({
      ...ownPly,
      choices: {},
      figures: {},
      recoat: [],
      recoatEvidence: null,
      packs: [],
      retired: false,
      origin: 'user',
      note: null,
    });
    expect(input.catalogue.suppliers.at(-1)?.id).toBe('my-yard');
  });

  it('puts an own product in the place of the shipped one with its id', () => {
    const mine = { ...ownPly, id: 'birch-ply-18', shortName: 'birch 18' };
    const products = read({ ...smallDocument, products: [ownPly, mine] }).catalogue.products;
    const place = catalogue.products.findIndex(({ id }) => id === 'birch-ply-18');
    expect(products[place]?.name).toBe('Yard plywood 18 mm');
    expect(products.length).toBe(catalogue.products.length + 1);
  });

  it('leaves the shipped catalogue untouched', () => {
    expect(catalogue).toEqual(readCatalogue());
  });

  it('needs no more than its head and a list of parts', () => {
    const bare = { format: 'plywright-project', version: 1, settings: smallDocument.settings, parts: [] };
    expect(read(bare)).toEqual({
      settings: defaultSettings('metric', 'EUR', 'Bench'),
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
      shopHours: DEFAULT_SHOP_HOURS.map((row, index) => ({ id: String(index + 1), ...row })),
      catalogue,
    });
  });
});

describe('a document that cannot be read', () => {
  it.each([
    ['a list', [smallDocument], 'document - -'],
    ['a text', 'plywright', 'document - -'],
    ['nothing', null, 'document - -'],
    ['no parts', { ...smallDocument, parts: undefined }, 'document - parts'],
    ['no settings', { ...smallDocument, settings: undefined }, 'document - settings'],
    ['another format', { ...smallDocument, format: 'other' }, 'document - format'],
    ['a later version', { ...smallDocument, version: 2 }, 'document - version'],
    ['parts that are no list', { ...smallDocument, parts: {} }, 'document - parts'],
    ['an unknown key at the top', { ...smallDocument, part: [] }, 'document - part'],
    [
      'an unknown setting',
      { ...smallDocument, settings: { ...smallDocument.settings, kerf: 3 } },
      'settings - kerf',
    ],
    [
      'unknown units',
      { ...smallDocument, settings: { ...smallDocument.settings, units: 'imperial' } },
      'settings - units',
    ],
    [
      'a name of spaces',
      { ...smallDocument, settings: { ...smallDocument.settings, name: '  ' } },
      'settings - name',
    ],
    [
      'a currency sign',
      { ...smallDocument, settings: { ...smallDocument.settings, currency: '$' } },
      'settings - currency',
    ],
    [
      'a negative kerf',
      { ...smallDocument, settings: { ...smallDocument.settings, kerfMm: -1 } },
      'settings - kerfMm',
    ],
    [
      'half a spare strip',
      { ...smallDocument, settings: { ...smallDocument.settings, spareStrips: 0.5 } },
      'settings - spareStrips',
    ],
    [
      'an edge named twice in the order',
      {
        ...smallDocument,
        settings: { ...smallDocument.settings, bandingOrder: ['left', 'left', 'back', 'front'] },
      },
      'settings - bandingOrder',
    ],
    ['a part that is a text', { ...smallDocument, parts: ['Seat'] }, 'parts 1 -'],
    ['an unknown key of a part', { ...smallDocument, parts: [part, { widht: 3 }] }, 'parts 2 widht'],
    [
      'an unknown grain',
      { ...smallDocument, parts: [{ ...part, id: 'seat', grain: 'diagonal' }] },
      'parts seat grain',
    ],
    [
      'a length that is an endless number',
      { ...smallDocument, parts: [{ ...part, length: Number.POSITIVE_INFINITY }] },
      'parts 1 length',
    ],
    [
      'a width that is not a number',
      { ...smallDocument, parts: [{ ...part, width: Number.NaN }] },
      'parts 1 width',
    ],
    ['a length that is true', { ...smallDocument, parts: [{ ...part, length: true }] }, 'parts 1 length'],
    ['a null where text is due', { ...smallDocument, parts: [{ ...part, name: null }] }, 'parts 1 name'],
    ['an id with a slash', { ...smallDocument, parts: [{ ...part, id: 'a/b' }] }, 'parts a/b id'],
    ['a fraction as id', { ...smallDocument, parts: [{ ...part, id: 1.5 }] }, 'parts 1.5 id'],
    [
      'a step without a kind',
      { ...smallDocument, recipes: [{ steps: [{ ...step, kind: undefined }] }] },
      'steps 1 kind',
    ],
    [
      'an unknown key of a step',
      { ...smallDocument, recipes: [{ steps: [step, { ...step, coat: 2 }] }] },
      'steps 2 coat',
    ],
    ['half a coat', { ...smallDocument, recipes: [{ steps: [{ ...step, coats: 1.5 }] }] }, 'steps 1 coats'],
    ['21 coats', { ...smallDocument, recipes: [{ steps: [{ ...step, coats: 21 }] }] }, 'steps 1 coats'],
    [
      'negative parts of a blend',
      { ...smallDocument, blends: [{ components: [{ productId: 'x', parts: -1 }] }] },
      'components 1 parts',
    ],
    ['a rule for nothing', { ...smallDocument, rules: [{ productId: 'x' }] }, 'rules 1 per'],
    [
      'a price with a fraction of a cent',
      { ...smallDocument, extras: [{ quantity: 1, unitPriceMinor: 9.5 }] },
      'extras 1 unitPriceMinor',
    ],
    [
      'half a can on hand',
      { ...smallDocument, onHand: [{ productId: 'x', amount: 1, count: 0.5 }] },
      'onHand 1 count',
    ],
    [
      'a sheet of no length on hand',
      { ...smallDocument, onHand: [{ productId: 'x', amount: 1, lengthMm: 0 }] },
      'onHand 1 lengthMm',
    ],
    [
      'a thickness of 0',
      { ...smallDocument, measurements: [{ productId: 'x', thicknessMm: 0 }] },
      'measurements 1 thicknessMm',
    ],
    [
      'a figure in another unit',
      {
        ...smallDocument,
        products: [
          {
            ...ownPly,
            figures: {
              thicknessActual: {
                low: null,
                typical: 18,
                high: null,
                unit: 'in',
                basis: 'user',
                source: '',
                readOn: null,
              },
            },
          },
        ],
      },
      'products my-ply figures.thicknessActual.unit',
    ],
    [
      'a product of an unknown kind',
      { ...smallDocument, products: [{ ...ownPly, kind: 'plank' }] },
      'products my-ply kind',
    ],
    [
      'a product in a unit its kind has not',
      { ...smallDocument, products: [{ ...ownPly, unit: 'L' }] },
      'products my-ply unit',
    ],
    [
      'a supplier without a name',
      { ...smallDocument, suppliers: [{ id: 'my-yard', leadTimeDays: 1 }] },
      'document - suppliers.0.name',
    ],
  ])('is one with %s', (_, document, place) => {
    expect(places(document)).toEqual([place]);
  });

  it.each([
    [
      'two parts with one id',
      {
        ...smallDocument,
        parts: [
          { ...part, id: 'a' },
          { ...part, id: 'a' },
        ],
      },
      'parts a id',
    ],
    [
      'a part whose id is the place of another',
      { ...smallDocument, parts: [part, { ...part, id: 1 }] },
      'parts 1 id',
    ],
    [
      'a step id used in two recipes',
      { ...smallDocument, recipes: [{ steps: [{ ...step, id: 'x' }] }, { steps: [{ ...step, id: 'x' }] }] },
      'steps x id',
    ],
    ['a product twice', { ...smallDocument, products: [ownPly, ownPly] }, 'products my-ply id'],
    [
      'a short name that a shipped product has',
      { ...smallDocument, products: [{ ...ownPly, shortName: 'Birch 18' }] },
      'products my-ply shortName',
    ],
    [
      'a supplier twice',
      { ...smallDocument, suppliers: [...smallDocument.suppliers, ...smallDocument.suppliers] },
      'document - suppliers.my-yard.id',
    ],
    [
      'a pack from a supplier that is not there',
      {
        ...smallDocument,
        products: [
          {
            ...ownPly,
            packs: [
              {
                id: 'a',
                label: 'a',
                amount: 1,
                lengthMm: 2440,
                widthMm: 1220,
                priceMinor: null,
                currency: 'EUR',
                supplierId: 'gone',
                basis: 'user',
                source: '',
                readOn: null,
              },
            ],
          },
        ],
      },
      'products my-ply packs.0.supplierId',
    ],
  ])('is one with %s', (_, document, place) => {
    expect(places(document)).toEqual([place]);
  });

  it('reports all that is wrong at once, each in its row', () => {
    const document = {
      ...smallDocument,
      parts: [
        { ...part, grain: 'x' },
        { ...part, shape: 'y' },
      ],
      extra: 1,
    };
    expect(places(document).sort()).toEqual(['document - extra', 'parts 1 grain', 'parts 2 shape']);
  });

  it('says what is wrong with the offending value, and what to write', () => {
    const [problem] = problems({ ...smallDocument, parts: [part, { ...part, grain: 'allong' }] });
    expect(problem).toEqual({
      code: 'document-unreadable',
      severity: 'error',
      at: { table: 'parts', id: '2', field: 'grain' },
      message: 'Part 2: grain is "allong", but must be one of along, across, free.',
      wayOut: 'Write "along" if that was meant.',
    });
  });

  it('says of the settings, which are many, that they have an unknown key', () => {
    const settings = { ...smallDocument.settings, kerf: 3 };
    expect(problems({ ...smallDocument, settings }).map(({ message }) => message)).toEqual([
      'The settings have the key "kerf", which this format does not know.',
    ]);
  });

  it.each([
    [
      { widht: 600 },
      'Part 1 has the key "widht", which this format does not know.',
      'Write "width" if that was meant, or take the key out.',
    ],
    [
      { edgefront: 'bare' },
      'Part 1 has the key "edgefront", which this format does not know.',
      'Write "edgeFront" if that was meant, or take the key out.',
    ],
    [
      { length: Number.POSITIVE_INFINITY },
      'Part 1: length is Infinity, but must be text or a finite number.',
      'Write a number that a shop could mean.',
    ],
    [{ name: 5 }, 'Part 1: name is 5, but must be text.', 'Correct it in the file and read it again.'],
  ])('explains %j', (row, message, wayOut) => {
    expect(problems({ ...smallDocument, parts: [row] })).toMatchObject([{ message, wayOut }]);
  });

  it('names the step within its recipe', () => {
    const [problem] = problems({ ...smallDocument, recipes: [{ steps: [step, { ...step, coats: 0 }] }] });
    expect(problem?.message).toBe('Recipe 1, step 2: coats is 0, but must be at least 1.');
  });

  it('repeats no more than the beginning of a long text', () => {
    const [problem] = problems({ ...smallDocument, parts: [{ ...part, grain: 'x'.repeat(5000) }] });
    expect(problem?.message.length).toBeLessThan(150);
  });

  it('is not fooled by keys that every object has', () => {
    const json: unknown = JSON.parse(
      JSON.stringify({ ...smallDocument, parts: [{ ...part, toString: 1 }] }).replace(
        '{',
        '{"__proto__":{"parts":[]},',
      ),
    );
    expect(places(json).sort()).toEqual(['document - __proto__', 'parts 1 toString']);
  });

  it('may be nested deeper than any stack', () => {
    const deep: unknown = JSON.parse(`${'['.repeat(20_000)}${']'.repeat(20_000)}`);
    expect(places({ ...smallDocument, parts: deep })).toEqual(['parts 1 -']);
    expect(places({ ...smallDocument, deep })).toEqual(['document - deep']);
  });
});

describe('what makes no sense but is well formed', () => {
  const codes = (document: object) =>
    plan(read(document)).problems.map(({ code, at }) => `${code} ${at.table} ${at.id} ${at.field}`);

  it.each([
    [
      'a recipe that is not there',
      { parts: [{ ...part, showRecipeId: 'gone' }] },
      /^recipe-unknown parts 1 showRecipeId$/,
    ],
    [
      'a material that is not there',
      { parts: [{ ...part, materialId: 'gone' }] },
      /^\S+-unknown parts 1 materialId$/,
    ],
    [
      'a blend that is not there',
      { recipes: [{ steps: [{ kind: 'stain', blendId: 'gone' }] }] },
      /^blend-unknown steps 1 blendId$/,
    ],
    [
      'a product that is not there',
      { rules: [{ productId: 'gone', per: 'part', rate: 1 }] },
      /^product-unknown rules 1 productId$/,
    ],
    [
      'a length that cannot be read',
      { parts: [{ ...part, length: '21 13/1' }] },
      /^dimension-\S+ parts 1 length$/,
    ],
    ['a negative length', { parts: [{ ...part, length: -5 }] }, /^dimension-not-positive parts 1 length$/],
    ['a length larger than a city', { parts: [{ ...part, length: 1e21 }] }, /^dimension-\S+ parts 1 length$/],
    ['half a part', { parts: [{ ...part, quantity: 0.5 }] }, /^quantity-not-whole parts 1 quantity$/],
  ])('is left to the plan to report: %s', (_, changes, expected) => {
    expect(codes({ ...smallDocument, ...changes }).some((line) => expected.test(line))).toBe(true);
  });
});

describe('writing a document', () => {
  const input = read(smallDocument);

  it('gives the same input when read back', () => {
    expect(read(writeProjectDocument(input, catalogue))).toEqual(input);
    expect(read(JSON.parse(JSON.stringify(writeProjectDocument(input))))).toEqual(input);
  });

  it('leaves out what equals its default, and empty lists', () => {
    const bare = read({
      ...smallDocument,
      parts: [{ name: 'Seat' }],
      products: [],
      extras: [],
      measurements: [],
    });
    expect(writeProjectDocument({ ...bare, recipes: [], blends: [] }, catalogue)).toEqual({
      format: 'plywright-project',
      version: 1,
      settings: bare.settings,
      shopHours: bare.shopHours,
      sizes: [{ id: '1', name: 'depth', value: '400 mm' }],
      parts: [{ id: '1', name: 'Seat' }],
      rules: [{ id: '1', productId: 'rag-lint-free', per: 'coat-area' }],
      onHand: [{ id: '1', productId: 'water-poly-satin', amount: 0.3 }],
    });
  });

  it('keeps a method that is not the usual one', () => {
    const [recipe] = input.recipes;
    if (recipe === undefined) throw new Error('no recipe');
    const steps = recipe.steps.map((row) => ({ ...row, method: 'roller' as const }));
    const rolled = { ...input, recipes: [{ ...recipe, steps }, ...input.recipes.slice(1)] };
    expect(read(writeProjectDocument(rolled, catalogue))).toEqual(rolled);
  });

  it('takes along the own products that are used, a hardener among them, and no others', () => {
    const twoPart = catalogue.products.find(({ id }) => id === 'two-part-water-clear');
    const hardener = catalogue.products.find(({ id }) => id === 'two-part-water-hardener');
    const own = [
      {
        ...twoPart,
        id: 'my-clear',
        name: 'My clear',
        shortName: 'my clear',
        choices: { ...twoPart?.choices, hardenerId: 'my-hardener' },
      },
      { ...hardener, id: 'my-hardener', name: 'My hardener', shortName: 'my hardener' },
      { ...hardener, id: 'unused', name: 'Unused', shortName: 'unused' },
    ];
    const document = {
      ...smallDocument,
      products: [ownPly, ...own],
      recipes: [{ steps: [{ kind: 'topcoat', productId: 'my-clear' }] }],
      parts: [{ ...part, materialId: 'my-ply' }],
    };
    const written = writeProjectDocument(read(document), catalogue);
    expect(written.products?.map(({ id }) => id)).toEqual(['my-ply', 'my-clear', 'my-hardener']);
    expect(plan(read(written))).toEqual(plan(read(document)));
  });

  it('takes along a shipped product that was changed, and none that only lies otherwise in memory', () => {
    const changed = (change: object) => ({
      ...input,
      catalogue: {
        ...input.catalogue,
        products: input.catalogue.products.map((row) =>
          row.id === 'birch-ply-18' ? { ...row, ...change } : row,
        ),
      },
    });
    const ids = (from: ProjectInput) => writeProjectDocument(from, catalogue).products?.map(({ id }) => id);
    expect(ids(changed({ note: 'from the new mill' }))).toEqual(['birch-ply-18', 'my-ply']);
    const ply = catalogue.products.find(({ id }) => id === 'birch-ply-18');
    const reversed = Object.fromEntries(Object.entries(ply ?? {}).reverse());
    expect(ids(changed({}))).toEqual(['my-ply']);
    expect(
      ids({
        ...input,
        catalogue: {
          ...input.catalogue,
          products: [
            ...input.catalogue.products.filter(({ id }) => id !== 'birch-ply-18'),
            reversed as never,
          ],
        },
      }),
    ).toEqual(['my-ply']);
  });

  it('shares nothing with the input', () => {
    const written = writeProjectDocument(input, catalogue);
    expect(written.settings).not.toBe(input.settings);
    expect(written.products?.[0]).not.toBe(input.catalogue.products.at(-1));
  });
});

describe('the published schema', () => {
  it('is the one the program reads by', () => {
    const file = new URL('../../server/exchange/project-document.schema.json', import.meta.url);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(documentJsonSchema());
  });

  it('refuses unknown keys in every object it describes', () => {
    const open: string[] = [];
    const visit = (schema: unknown, path: string): void => {
      if (typeof schema !== 'object' || schema === null) return;
      const { type, properties, additionalProperties } = schema as Record<string, unknown>;
      if (type === 'object' && properties !== undefined && additionalProperties !== false) open.push(path);
      for (const [key, inner] of Object.entries(schema)) visit(inner, `${path}/${key}`);
    };
    visit(documentJsonSchema(), '');
    expect(open).toEqual([]);
  });
});

describe('whatever comes', () => {
  it('never throws on any JSON value, and locates every problem', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        for (const { code, at, message, wayOut } of problems(json)) {
          expect(code).toBe('document-unreadable');
          expect(at.table).toMatch(/^[a-zA-Z]+$/);
          expect(message.length * wayOut.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  it('never throws on a document with one value put in place of another', () => {
    const spots: (readonly (string | number)[])[] = [];
    const walk = (value: unknown, path: readonly (string | number)[]): void => {
      spots.push(path);
      if (Array.isArray(value)) value.forEach((inner, index) => void walk(inner, [...path, index]));
      else if (typeof value === 'object' && value !== null)
        for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
    };
    walk(smallDocument, []);
    const put = (value: unknown, [key, ...rest]: readonly (string | number)[], odd: unknown): unknown => {
      if (key === undefined) return odd;
      const inner = put((value as Record<string | number, unknown>)[key], rest, odd);
      return Array.isArray(value) ? value.with(Number(key), inner) : { ...(value as object), [key]: inner };
    };
    const odd = fc.oneof(
      fc.constantFrom(
        null,
        true,
        '',
        ' ',
        0,
        -0,
        -1,
        0.5,
        1e21,
        Number.MAX_VALUE,
        Number.NaN,
        [],
        {},
        'x',
        '=',
        '=1/0',
      ),
      fc.string({ maxLength: 30 }),
      fc.double(),
    );
    fc.assert(
      fc.property(fc.constantFrom(...spots), odd, (path, value) => {
        const reading = readProjectDocument(put(smallDocument, path, value), catalogue);
        // What can be read must also be planned, with problems rather than exceptions.
        if (reading.ok) expect(plan(reading.input).parts.length).toBe(reading.input.parts.length);
        else expect(reading.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 400, seed: 2 },
    );
  });

  it('reads back any part it writes', () => {
    const text = fc.string({ maxLength: 20 });
    const anyPart = fc.record({
      name: text,
      section: text,
      quantity: text,
      length: text,
      width: text,
      shape: fc.constantFrom('rectangle' as const, 'round' as const),
      materialId: text,
      grain: fc.constantFrom('along' as const, 'across' as const, 'free' as const),
      edgeFront: text,
      edgeBack: text,
      edgeLeft: text,
      edgeRight: text,
      radiusFrontLeft: text,
      radiusFrontRight: text,
      radiusBackLeft: text,
      radiusBackRight: text,
      showRecipeId: text,
      backRecipeId: text,
      note: text,
      grainMatch: text,
    });
    const input = read(smallDocument);
    fc.assert(
      fc.property(fc.array(anyPart, { maxLength: 4 }), (rows) => {
        const project = { ...input, parts: rows.map((row, index) => ({ ...row, id: `p${index}` })) };
        const written: unknown = JSON.parse(JSON.stringify(writeProjectDocument(project, catalogue)));
        expect(read(written).parts).toEqual(project.parts);
      }),
      { numRuns: 200, seed: 3 },
    );
  });
});
