import type { ZodError } from 'zod';
import type { Problem, ProblemTable } from '../planning/problem.ts';
import type { Catalogue } from '../planning/product.ts';
import type { Blend, PartInput, ProjectInput, Recipe, RecipeStep } from '../planning/project-input.ts';
import { defaultSettings } from './default-settings.ts';
import { documentSchema, type ProjectDocument } from './document-schema.ts';

export { defaultSettings } from './default-settings.ts';

export type DocumentReading =
  | { readonly ok: true; readonly input: ProjectInput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const DEFAULT_PART: Omit<PartInput, 'id'> = {
  name: '',
  section: '',
  quantity: '1',
  length: '',
  width: '',
  shape: 'rectangle',
  materialId: '',
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
};

const DEFAULT_STEP: Omit<RecipeStep, 'id' | 'kind'> = {
  productId: '',
  blendId: '',
  coats: 1,
  method: 'brush',
  transferEfficiency: null,
  thinning: 0,
  thinnerId: '',
  sessionLossL: null,
  note: '',
};

/**
 * Reads a project document: the documented JSON form, already parsed. `catalogue` is the shipped one; products and
 * suppliers in the document come beside it, or in place of the row with the same id. Unknown keys, wrong types and
 * ids used twice give located problems, and then nothing is read. What stands in a well-formed document but makes no
 * sense (an unreadable length, a recipe that is not there) is left for the plan to report, beside everything that
 * still computes.
 */
export function readProjectDocument(json: unknown, catalogue: Catalogue): DocumentReading {
  const parsed = documentSchema.safeParse(json);
  if (!parsed.success) return { ok: false, problems: problemsOf(parsed.error, json) };
  const document = parsed.data;
  const twice = repeatedIds(document);
  if (twice.length > 0) return { ok: false, problems: twice };

  const { name, units, currency, ...given } = document.settings;
  return {
    ok: true,
    input: {
      settings: { ...defaultSettings(units, currency, name), ...given },
      sizes: numbered(document.sizes).map(({ note = '', value, ...size }) => ({
        ...size,
        value: typed(value),
        note,
      })),
      parts: numbered(document.parts).map((part) => ({ ...DEFAULT_PART, ...typedCells(part) })),
      recipes: numbered(document.recipes).map(
        ({ faces = 'flip', steps, ...recipe }): Recipe => ({
          ...recipe,
          faces,
          steps: numbered(steps, recipe.id).map((step) => ({ ...DEFAULT_STEP, ...step })),
        }),
      ),
      blends: numbered(document.blends).map(
        ({ components, ...blend }): Blend => ({ ...blend, components: numbered(components, blend.id) }),
      ),
      rules: numbered(document.rules).map((rule) => ({ rate: null, ...rule })),
      extras: numbered(document.extras).map((extra) => ({
        productId: '',
        name: '',
        category: 'other' as const,
        unitPriceMinor: null,
        supplierId: '',
        ...extra,
      })),
      onHand: numbered(document.onHand).map((item) => ({ count: 1, lengthMm: null, widthMm: null, ...item })),
      measurements: numbered(document.measurements),
      catalogue: {
        products: merged(catalogue.products, document.products ?? []),
        suppliers: merged(catalogue.suppliers, document.suppliers ?? []),
      },
    },
  };
}

/**
 * Writes a project as a document. Products that differ from the shipped catalogue (the user's own, or edited ones)
 * go along when the project uses them, so that the document plans the same elsewhere.
 */
export function writeProjectDocument(input: ProjectInput, shipped: Catalogue): ProjectDocument {
  const used = usedProductIds(input);
  const same = new Map(shipped.products.map((product) => [product.id, JSON.stringify(product)]));
  const products = input.catalogue.products.filter(
    (product) => used.has(product.id) && same.get(product.id) !== JSON.stringify(product),
  );
  const shippedSuppliers = new Map(
    shipped.suppliers.map((supplier) => [supplier.id, JSON.stringify(supplier)]),
  );
  const named = new Set([
    ...products.flatMap((product) => product.packs.map((pack) => pack.supplierId)),
    ...input.extras.map((extra) => extra.supplierId),
  ]);
  const suppliers = input.catalogue.suppliers.filter(
    (supplier) => named.has(supplier.id) && shippedSuppliers.get(supplier.id) !== JSON.stringify(supplier),
  );
  const { settings, sizes, parts, recipes, blends, rules, extras, onHand, measurements } = input;
  return structuredClone({
    format: 'plywright-project' as const,
    version: 1 as const,
    settings: { ...settings, bandingOrder: [...settings.bandingOrder] },
    sizes,
    parts,
    recipes,
    blends,
    rules,
    extras,
    onHand,
    measurements,
    ...(products.length > 0 ? { products } : {}),
    ...(suppliers.length > 0 ? { suppliers } : {}),
  }) as ProjectDocument;
}

/** Gives rows without an id their place in the list, from 1, after the parent's id where there is one: "2-1". */
function numbered<Row extends { readonly id?: string }>(
  rows: readonly Row[] | undefined,
  parentId = '',
): (Omit<Row, 'id'> & { readonly id: string })[] {
  return (rows ?? []).map((row, index) => ({
    ...row,
    id: row.id ?? (parentId === '' ? String(index + 1) : `${parentId}-${index + 1}`),
  }));
}

const typed = (value: string | number): string => (typeof value === 'number' ? String(value) : value);

/** Numbers become the text a user would have typed. */
function typedCells<Row extends object>(row: Row): { [Key in keyof Row]: Exclude<Row[Key], number> } {
  return Object.fromEntries(
    Object.entries(row).map(([key, value]) => [key, typeof value === 'number' ? String(value) : value]),
  ) as { [Key in keyof Row]: Exclude<Row[Key], number> };
}

function merged<Row extends { readonly id: string }>(shipped: readonly Row[], own: readonly Row[]): Row[] {
  const replaced = new Map(own.map((row) => [row.id, row]));
  const ids = new Set(shipped.map((row) => row.id));
  return [...shipped.map((row) => replaced.get(row.id) ?? row), ...own.filter((row) => !ids.has(row.id))];
}

function usedProductIds(input: ProjectInput): Set<string> {
  const used = new Set<string>();
  for (const part of input.parts) {
    for (const id of [part.materialId, part.edgeFront, part.edgeBack, part.edgeLeft, part.edgeRight])
      used.add(id);
  }
  for (const recipe of input.recipes)
    for (const step of recipe.steps) used.add(step.productId).add(step.thinnerId);
  for (const blend of input.blends) for (const component of blend.components) used.add(component.productId);
  for (const row of [...input.rules, ...input.extras, ...input.onHand, ...input.measurements])
    used.add(row.productId);
  for (const product of input.catalogue.products) {
    if (used.has(product.id) && product.choices.hardenerId !== undefined)
      used.add(product.choices.hardenerId);
  }
  return used;
}

const TABLES: readonly ProblemTable[] = [
  'sizes',
  'parts',
  'recipes',
  'blends',
  'rules',
  'extras',
  'onHand',
  'measurements',
  'products',
];

/** One problem per fault, in the table and row it sits in, with the whole path in the message. */
function problemsOf(error: ZodError, json: unknown): Problem[] {
  return error.issues.map((issue) => {
    const [table, index, ...rest] = issue.path.map(String);
    const known = TABLES.find((name) => name === table);
    const unknownKeys = issue.code === 'unrecognized_keys' ? issue.keys.join(', ') : null;
    const path = issue.path.map(String).join('.');
    return {
      code: 'document-unreadable',
      severity: 'error',
      at: {
        table: table === 'settings' ? 'settings' : (known ?? 'document'),
        id: known === undefined || index === undefined ? null : rowName(json, known, index),
        field: unknownKeys ?? (known === undefined ? path || null : rest.join('.') || null),
      },
      message:
        unknownKeys === null
          ? `${path === '' ? 'The document' : path} cannot be read: ${issue.message}.`
          : `${path === '' ? 'The document' : path} holds ${unknownKeys}, which is not a field of the form.`,
      wayOut:
        unknownKeys === null
          ? 'Correct the value; the form is described by the published schema.'
          : 'Remove the field or correct its name; nothing else in the document was read.',
    };
  });
}

function rowName(json: unknown, table: string, index: string): string {
  const rows = (json as Record<string, unknown>)[table];
  const row: unknown = Array.isArray(rows) ? rows[Number(index)] : undefined;
  const id = row !== null && typeof row === 'object' && 'id' in row ? row.id : undefined;
  return typeof id === 'string' ? id : String(Number(index) + 1);
}

function repeatedIds(document: ProjectDocument): Problem[] {
  const tables: Partial<Record<ProblemTable, readonly { readonly id?: string }[]>> = {
    sizes: document.sizes ?? [],
    parts: document.parts,
    recipes: document.recipes ?? [],
    steps: (document.recipes ?? []).flatMap((recipe) => recipe.steps),
    blends: document.blends ?? [],
    components: (document.blends ?? []).flatMap((blend) => blend.components),
    rules: document.rules ?? [],
    extras: document.extras ?? [],
    onHand: document.onHand ?? [],
    measurements: document.measurements ?? [],
  };
  return Object.entries(tables).flatMap(([table, rows]) => {
    const nested = table === 'steps' || table === 'components';
    const ids = rows.flatMap((row, index) => row.id ?? (nested ? [] : String(index + 1)));
    return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))].map(
      (id): Problem => ({
        code: 'document-unreadable',
        severity: 'error',
        at: { table: table as ProblemTable, id, field: 'id' },
        message: `The id ${id} is used by more than one row of ${table}.`,
        wayOut: 'Give each row an id of its own, or leave the ids out.',
      }),
    );
  });
}
