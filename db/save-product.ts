import type { Database } from 'better-sqlite3';
import type { Catalogue, Product, Supplier } from '../server/planning/product.ts';
import { catalogueFaults } from './catalogue/catalogue-faults.ts';
import {
  bumpCatalogueRevision,
  deleteSupplierRow,
  insertProduct,
  insertSupplier,
  productsSoldBy,
  projectsUsingProduct,
  projectsUsingSupplier,
  readCatalogueRows,
  replaceProduct,
  updateSupplier,
} from './catalogue.repository.ts';
import { Refusal } from './refusal.ts';

/**
 * Writes a product that is well formed in itself: a new one, or a new state of the one with its id. Throws Refusal
 * when it does not fit the rest of the catalogue or the projects that use it, and then nothing is kept.
 */
export function saveProduct(db: Database, product: Product): void {
  db.transaction(() => {
    const catalogue = readCatalogueRows(db);
    const before = catalogue.products.find(({ id }) => id === product.id);
    refuseMisfit(product, {
      ...catalogue,
      products: [...catalogue.products.filter(({ id }) => id !== product.id), product],
    });
    if (before === undefined) insertProduct(db, product);
    else {
      refuseChangeOfUse(db, before, product);
      replaceProduct(db, product);
    }
    bumpCatalogueRevision(db);
  }).immediate();
}

export function saveSupplier(db: Database, supplier: Supplier): void {
  db.transaction(() => {
    const known = readCatalogueRows(db).suppliers.some(({ id }) => id === supplier.id);
    if (known) updateSupplier(db, supplier);
    else insertSupplier(db, supplier);
    bumpCatalogueRevision(db);
  }).immediate();
}

/** Takes a supplier away. Throws Refusal while a product or a project names it. */
export function deleteSupplier(db: Database, supplierId: string): void {
  db.transaction(() => {
    const supplier = readCatalogueRows(db).suppliers.find(({ id }) => id === supplierId);
    if (supplier === undefined)
      throw new Refusal('not-found', `There is no supplier with the id “${supplierId.slice(0, 100)}”.`, {
        wayOut: 'Read the catalogue to see which there are.',
      });
    const products = productsSoldBy(db, supplierId);
    const projects = projectsUsingSupplier(db, supplierId);
    if (products.length + projects.length > 0)
      throw new Refusal(
        'in-use',
        `“${supplier.name}” cannot be deleted: it is named in ${named([...products, ...projects])}.`,
        { wayOut: 'Retire the supplier instead; it stays readable and is offered no longer.' },
      );
    deleteSupplierRow(db, supplierId);
    bumpCatalogueRevision(db);
  }).immediate();
}

/** The first few names of a list, and how many more there are. */
function named(names: readonly string[]): string {
  const shown = names
    .slice(0, MOST_NAMES)
    .map((name) => `“${name}”`)
    .join(', ');
  return names.length > MOST_NAMES ? `${shown} and ${names.length - MOST_NAMES} more` : shown;
}

/** A refusal names this many places; more would be no help to its reader. */
const MOST_NAMES = 5;

function refuseMisfit(product: Product, catalogue: Catalogue): void {
  const faults = catalogueFaults(catalogue).filter(({ table }) => table === 'products');
  const taken = faults.find(({ field }) => field === 'shortName');
  if (taken !== undefined)
    throw new Refusal('name-taken', `Another product has the short name “${product.shortName}” already.`, {
      wayOut: 'Give a short name that no other product has.',
      field: 'shortName',
    });
  const [fault] = faults;
  if (fault === undefined) return;
  if (fault.id !== product.id)
    throw new Refusal('in-use', `The change does not fit another product. ${fault.message}`, {
      wayOut: 'Change the other product first.',
    });
  throw new Refusal('bad-request', fault.message, {
    wayOut: 'Choose one that is in the catalogue, or add it first.',
    field: fault.field,
  });
}

/** Kind and unit are what projects count on: they stay as they are while a project uses the product. */
function refuseChangeOfUse(db: Database, before: Product, after: Product): void {
  const field = before.kind !== after.kind ? 'kind' : before.unit !== after.unit ? 'unit' : null;
  if (field === null) return;
  const projects = projectsUsingProduct(db, after.id);
  if (projects.length > 0)
    throw new Refusal(
      'in-use',
      `The ${field} of “${before.name}” cannot change while it is used in ${projects.map((name) => `“${name}”`).join(', ')}.`,
      { wayOut: 'Duplicate the product and change the copy.', field },
    );
}
