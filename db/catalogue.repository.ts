import type { Database } from 'better-sqlite3';
import type {
  Basis,
  Catalogue,
  Evidence,
  Pack,
  Product,
  ProductChoices,
  ProductFigure,
  RecoatInterval,
  Supplier,
} from '../server/planning/product.ts';
import { ROW_LAYOUTS } from './row-layouts.ts';
import { prepared } from './statements.ts';

/** The catalogue: products with their figures, packs and recoat intervals, and suppliers. */

const CHOICE_COLUMNS: Readonly<Record<keyof ProductChoices, string>> = {
  species: 'species',
  deducted: 'deducted',
  bandMaterial: 'band_material',
  role: 'role',
  carrier: 'carrier',
  colour: 'colour',
  hardenerId: 'hardener_id',
  mixBase: 'mix_base',
  mixHardener: 'mix_hardener',
  grit: 'grit',
  nominal: 'nominal',
  rags: 'rags',
};

const productColumns = [
  'id',
  'kind',
  'name',
  'short_name',
  'unit',
  ...Object.values(CHOICE_COLUMNS),
  'recoat_basis',
  'recoat_source',
  'recoat_read_on',
  'recoat_note',
  'retired',
  'origin',
  'note',
  'solvents_basis',
  'solvents_source',
  'solvents_read_on',
  'solvents_note',
];

const sql = {
  revision: `SELECT revision FROM catalogue_state`,
  bump: `UPDATE catalogue_state SET revision = revision + 1`,
  products: `SELECT ${productColumns.join(', ')} FROM product ORDER BY position`,
  figures: `SELECT * FROM product_figure`,
  packs: `SELECT * FROM pack ORDER BY product_id, position`,
  intervals: `SELECT * FROM recoat_interval ORDER BY product_id, position`,
  solvents: `SELECT * FROM product_solvent ORDER BY product_id, position`,
  suppliers: `SELECT id, name, lead_time_days AS leadTimeDays, currency, delivery_minor AS deliveryMinor, free_delivery_from_minor AS freeDeliveryFromMinor, minimum_order_minor AS minimumOrderMinor, surcharge_minor AS surchargeMinor, working_days AS workingDays, retired FROM supplier ORDER BY name, id`,
  insertProduct: `INSERT INTO product (${productColumns.join(', ')}) VALUES (${productColumns.map((column) => `@${column}`).join(', ')})`,
  updateProduct: `UPDATE product SET ${productColumns.map((column) => `${column} = @${column}`).join(', ')} WHERE id = @id`,
  deleteFigures: `DELETE FROM product_figure WHERE product_id = ?`,
  deletePacks: `DELETE FROM pack WHERE product_id = ?`,
  deleteIntervals: `DELETE FROM recoat_interval WHERE product_id = ?`,
  deleteSolvents: `DELETE FROM product_solvent WHERE product_id = ?`,
  insertSolvent: `INSERT INTO product_solvent (product_id, position, solvent_id, share, molar_mass_g_per_mol, lel_percent, limit_mg_per_m3) VALUES (@productId, @position, @solventId, @share, @molarMassGPerMol, @lelPercent, @limitMgPerM3)`,
  insertFigure: `INSERT INTO product_figure (product_id, name, low, typical, high, unit, basis, source, read_on, note) VALUES (@productId, @name, @low, @typical, @high, @unit, @basis, @source, @readOn, @note)`,
  insertPack: `INSERT INTO pack (product_id, position, id, label, amount, length_mm, width_mm, price_minor, currency, supplier_id, basis, source, read_on, note) VALUES (@productId, @position, @id, @label, @amount, @lengthMm, @widthMm, @priceMinor, @currency, @supplierId, @basis, @source, @readOn, @note)`,
  insertInterval: `INSERT INTO recoat_interval (product_id, position, from_min, to_min, scuff) VALUES (?, ?, ?, ?, ?)`,
  insertSupplier: `INSERT INTO supplier (id, name, lead_time_days, currency, delivery_minor, free_delivery_from_minor, minimum_order_minor, surcharge_minor, working_days, retired) VALUES (@id, @name, @leadTimeDays, @currency, @deliveryMinor, @freeDeliveryFromMinor, @minimumOrderMinor, @surchargeMinor, @workingDays, @retired)`,
  updateSupplier: `UPDATE supplier SET name = @name, lead_time_days = @leadTimeDays, currency = @currency, delivery_minor = @deliveryMinor, free_delivery_from_minor = @freeDeliveryFromMinor, minimum_order_minor = @minimumOrderMinor, surcharge_minor = @surchargeMinor, working_days = @workingDays, retired = @retired WHERE id = @id`,
  deleteSupplier: `DELETE FROM supplier WHERE id = ?`,
  productsSoldBy: `SELECT product.name FROM product WHERE product.id IN (SELECT product_id FROM pack WHERE supplier_id = ?) ORDER BY product.position`,
};

interface EvidenceColumns {
  readonly basis: Basis;
  readonly source: string;
  readonly read_on: string | null;
  readonly note: string | null;
}
interface FigureRow extends EvidenceColumns {
  readonly product_id: string;
  readonly name: string;
  readonly low: number | null;
  readonly typical: number | null;
  readonly high: number | null;
  readonly unit: string;
}
interface PackRow extends EvidenceColumns {
  readonly product_id: string;
  readonly id: string;
  readonly label: string;
  readonly amount: number;
  readonly length_mm: number | null;
  readonly width_mm: number | null;
  readonly price_minor: number | null;
  readonly currency: string;
  readonly supplier_id: string | null;
}
interface IntervalRow {
  readonly product_id: string;
  readonly from_min: number;
  readonly to_min: number | null;
  readonly scuff: number;
}
interface SolventRow {
  readonly product_id: string;
  readonly solvent_id: string;
  readonly share: number | null;
  readonly molar_mass_g_per_mol: number | null;
  readonly lel_percent: number | null;
  readonly limit_mg_per_m3: number | null;
}
interface SupplierRow extends Omit<Supplier, 'workingDays' | 'retired'> {
  readonly workingDays: string;
  readonly retired: number;
}
type ProductRow = Readonly<Record<string, string | number | null>>;

/** Changes with every change of the catalogue, so that plans made from it can be kept. */
export function catalogueRevision(db: Database): number {
  return prepared(db, sql.revision).pluck().get() as number;
}

export function bumpCatalogueRevision(db: Database): void {
  prepared(db, sql.bump).run();
}

/** The whole catalogue, retired products included, in the order in which products came into it. */
export function readCatalogueRows(db: Database): Catalogue {
  const figures = byProduct(prepared(db, sql.figures).all() as FigureRow[]);
  const packs = byProduct(prepared(db, sql.packs).all() as PackRow[]);
  const intervals = byProduct(prepared(db, sql.intervals).all() as IntervalRow[]);
  const solvents = byProduct(prepared(db, sql.solvents).all() as SolventRow[]);
  const products = (prepared(db, sql.products).all() as ProductRow[]).map((row) => {
    const id = row.id as string;
    const shares = solvents.get(id) ?? [];
    return {
      ...toProduct(row, figures.get(id) ?? [], packs.get(id) ?? [], intervals.get(id) ?? []),
      ...toSolvents(row, shares),
    };
  });
  return { products, suppliers: (prepared(db, sql.suppliers).all() as SupplierRow[]).map(toSupplier) };
}

function byProduct<Row extends { readonly product_id: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const grouped = new Map<string, Row[]>();
  for (const row of rows) {
    const ofProduct = grouped.get(row.product_id);
    if (ofProduct === undefined) grouped.set(row.product_id, [row]);
    else ofProduct.push(row);
  }
  return grouped;
}

function toProduct(
  row: ProductRow,
  figures: readonly FigureRow[],
  packs: readonly PackRow[],
  intervals: readonly IntervalRow[],
): Product {
  const choices = Object.entries(CHOICE_COLUMNS).flatMap(([name, column]) => {
    const value = row[column];
    return value === null ? [] : [[name, value]];
  });
  return {
    id: row.id as string,
    kind: row.kind as Product['kind'],
    name: row.name as string,
    shortName: row.short_name as string,
    unit: row.unit as Product['unit'],
    choices: Object.fromEntries(choices) as ProductChoices,
    figures: Object.fromEntries(figures.map((figure) => [figure.name, toFigure(figure)])),
    recoat: intervals.map(
      (interval): RecoatInterval => ({
        fromMin: interval.from_min,
        toMin: interval.to_min,
        scuff: interval.scuff === 1,
      }),
    ),
    recoatEvidence:
      row.recoat_basis === null
        ? null
        : toEvidence({
            basis: row.recoat_basis as Basis,
            source: row.recoat_source as string,
            read_on: row.recoat_read_on as string | null,
            note: row.recoat_note as string | null,
          }),
    packs: packs.map(toPack),
    retired: row.retired === 1,
    origin: row.origin as Product['origin'],
    note: row.note as string | null,
  };
}

/** Both are left out of a product of which nothing is said. */
function toSolvents(
  row: ProductRow,
  shares: readonly SolventRow[],
): Pick<Product, 'solvents' | 'solventsEvidence'> {
  if (row.solvents_basis === null && shares.length === 0) return {};
  return {
    solvents: shares.map((share) => ({
      solventId: share.solvent_id,
      share: share.share,
      molarMassGPerMol: share.molar_mass_g_per_mol,
      lelPercent: share.lel_percent,
      limitMgPerM3: share.limit_mg_per_m3,
    })),
    solventsEvidence:
      row.solvents_basis === null
        ? null
        : toEvidence({
            basis: row.solvents_basis as Basis,
            source: row.solvents_source as string,
            read_on: row.solvents_read_on as string | null,
            note: row.solvents_note as string | null,
          }),
  };
}

function toEvidence({ basis, source, read_on, note }: EvidenceColumns): Evidence {
  return { basis, source, readOn: read_on, note };
}

function toFigure(row: FigureRow): ProductFigure {
  const { low, typical, high, unit } = row;
  return { low, typical, high, unit, ...toEvidence(row) };
}

function toPack(row: PackRow): Pack {
  return {
    id: row.id,
    label: row.label,
    amount: row.amount,
    lengthMm: row.length_mm,
    widthMm: row.width_mm,
    priceMinor: row.price_minor,
    currency: row.currency,
    supplierId: row.supplier_id,
    ...toEvidence(row),
  };
}

/** Adds a product at the end of the catalogue. The caller holds the transaction. */
export function insertProduct(db: Database, product: Product): void {
  prepared(db, sql.insertProduct).run(productColumnsOf(product));
  insertParts(db, product);
}

/** Replaces all of a product but its id and its place. The caller holds the transaction. */
export function replaceProduct(db: Database, product: Product): void {
  prepared(db, sql.updateProduct).run(productColumnsOf(product));
  for (const statement of [sql.deleteFigures, sql.deletePacks, sql.deleteIntervals, sql.deleteSolvents])
    prepared(db, statement).run(product.id);
  insertParts(db, product);
}

function productColumnsOf(product: Product): ProductRow {
  const choices = Object.entries(CHOICE_COLUMNS).map(([name, column]) => [
    column,
    product.choices[name as keyof ProductChoices] ?? null,
  ]);
  return {
    ...Object.fromEntries(choices),
    id: product.id,
    kind: product.kind,
    name: product.name,
    short_name: product.shortName,
    unit: product.unit,
    recoat_basis: product.recoatEvidence?.basis ?? null,
    recoat_source: product.recoatEvidence?.source ?? null,
    recoat_read_on: product.recoatEvidence?.readOn ?? null,
    recoat_note: product.recoatEvidence?.note ?? null,
    solvents_basis: product.solventsEvidence?.basis ?? null,
    solvents_source: product.solventsEvidence?.source ?? null,
    solvents_read_on: product.solventsEvidence?.readOn ?? null,
    solvents_note: product.solventsEvidence?.note ?? null,
    retired: product.retired ? 1 : 0,
    origin: product.origin,
    note: product.note,
  };
}

function insertParts(db: Database, product: Product): void {
  const productId = product.id;
  for (const [name, figure] of Object.entries(product.figures))
    prepared(db, sql.insertFigure).run({ ...figure, productId, name, note: figure.note ?? null });
  product.packs.forEach((pack, position) => {
    prepared(db, sql.insertPack).run({ ...pack, productId, position, note: pack.note ?? null });
  });
  product.solvents?.forEach((share, position) => {
    prepared(db, sql.insertSolvent).run({ ...share, productId, position });
  });
  product.recoat.forEach((interval, position) => {
    prepared(db, sql.insertInterval).run(
      productId,
      position,
      interval.fromMin,
      interval.toMin,
      interval.scuff ? 1 : 0,
    );
  });
}

function toSupplier({ workingDays, retired, ...row }: SupplierRow): Supplier {
  return {
    ...row,
    workingDays: workingDays === '' ? [] : workingDays.split(',').map(Number),
    retired: retired === 1,
  };
}

function supplierColumns({ workingDays, retired, ...supplier }: Supplier) {
  return { ...supplier, workingDays: workingDays.join(','), retired: retired ? 1 : 0 };
}

export function insertSupplier(db: Database, supplier: Supplier): void {
  prepared(db, sql.insertSupplier).run(supplierColumns(supplier));
}

export function updateSupplier(db: Database, supplier: Supplier): void {
  prepared(db, sql.updateSupplier).run(supplierColumns(supplier));
}

export function deleteSupplierRow(db: Database, supplierId: string): void {
  prepared(db, sql.deleteSupplier).run(supplierId);
}

/** Names of the products of which a supplier offers packs. */
export function productsSoldBy(db: Database, supplierId: string): string[] {
  return prepared(db, sql.productsSoldBy).pluck().all(supplierId) as string[];
}

/** Columns of project lists that may hold a product's id. */
const productMentions = [
  ...['material_id', 'edge_front', 'edge_back', 'edge_left', 'edge_right'].map((column) => ['part', column]),
  ...Object.values(ROW_LAYOUTS).flatMap((layout) =>
    layout.fields
      .filter(({ name }) => name === 'productId' || name === 'thinnerId' || name === 'substituteId')
      .map((field) => [layout.sqlName, field.column]),
  ),
];
const projectsUsing = `SELECT name FROM project WHERE id IN (${productMentions
  .map(([table, column]) => `SELECT project_id FROM ${table} WHERE ${column} = @id`)
  .join(' UNION ')}) ORDER BY id`;

/** Names of the projects in which a product is used. */
export function projectsUsingProduct(db: Database, productId: string): string[] {
  return prepared(db, projectsUsing).pluck().all({ id: productId }) as string[];
}

const projectsWithSupplier = `SELECT name FROM project WHERE id IN (${Object.values(ROW_LAYOUTS)
  .flatMap((layout) =>
    layout.fields
      .filter(({ name }) => name === 'supplierId')
      .map(({ column }) => `SELECT project_id FROM ${layout.sqlName} WHERE ${column} = @id`),
  )
  .join(' UNION ')}) ORDER BY id`;

/** Names of the projects that order from, pay or mention a supplier. */
export function projectsUsingSupplier(db: Database, supplierId: string): string[] {
  return prepared(db, projectsWithSupplier).pluck().all({ id: supplierId }) as string[];
}
