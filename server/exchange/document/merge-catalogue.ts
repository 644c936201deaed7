import { catalogueFaults } from '../../../db/catalogue/catalogue-faults.ts';
import type { Problem } from '../../planning/problem.ts';
import type { Catalogue, Product, Supplier } from '../../planning/product.ts';
import { documentProblem } from './document-problem.ts';

/**
 * The catalogue a document is planned with: its own products and suppliers in place of those with the same id, the
 * others added at the end; and a problem for every clash, missing supplier and missing hardener.
 */
export function mergeCatalogue(
  base: Catalogue,
  own: { readonly products: readonly Product[]; readonly suppliers: readonly Supplier[] },
): { readonly catalogue: Catalogue; readonly problems: readonly Problem[] } {
  if (own.products.length === 0 && own.suppliers.length === 0) return { catalogue: base, problems: [] };
  const catalogue: Catalogue = {
    ...base,
    products: merge(base.products, own.products),
    suppliers: merge(base.suppliers, own.suppliers),
  };
  const repeated = [
    ...repeats(own.products).map((id) => ({
      table: 'products' as const,
      id,
      field: 'id',
      message: `The document has the product "${id}" twice.`,
    })),
    ...repeats(own.suppliers).map((id) => ({
      table: 'suppliers' as const,
      id,
      field: 'id',
      message: `The document has the supplier "${id}" twice.`,
    })),
  ];
  const problems = [...repeated, ...catalogueFaults(catalogue)].map(({ table, id, field, message }) =>
    documentProblem(
      table === 'products'
        ? { table, id, field }
        : { table: 'document', id: null, field: `suppliers.${id}.${field}` },
      message,
      'Correct the products or suppliers of the document; ids and short names must differ, and what they name must be there.',
    ),
  );
  return { catalogue, problems };
}

function merge<Row extends { readonly id: string }>(base: readonly Row[], own: readonly Row[]): Row[] {
  const mine = new Map(own.map((row) => [row.id, row]));
  const shipped = new Set(base.map(({ id }) => id));
  return [
    ...base.map((row) => mine.get(row.id) ?? row),
    ...[...mine.values()].filter(({ id }) => !shipped.has(id)),
  ];
}

function repeats(rows: readonly { readonly id: string }[]): string[] {
  const ids = rows.map(({ id }) => id);
  return [...new Set(ids.filter((id, index) => ids.indexOf(id) < index))];
}
