import type { Catalogue, Product, Supplier } from '../../planning/product.ts';
import type { ProjectInput } from '../../planning/project-input.ts';

/**
 * The products and suppliers that a project's document must bring along, so that it plans the same elsewhere: those
 * the project uses and `shipped` does not have, or has otherwise. The rest of the catalogue, and its prices, stay
 * where they are.
 */
export function ownRows(
  input: ProjectInput,
  shipped: Catalogue,
): { readonly products: readonly Product[]; readonly suppliers: readonly Supplier[] } {
  const used = usedProductIds(input);
  const products = notIn(shipped.products, input.catalogue.products).filter(({ id }) => used.has(id));
  const named = new Set([
    ...products.flatMap(({ packs }) => packs.map(({ supplierId }) => supplierId)),
    ...[...input.extras, ...input.orders, ...input.payments].map(({ supplierId }) => supplierId),
  ]);
  const suppliers = notIn(shipped.suppliers, input.catalogue.suppliers).filter(({ id }) => named.has(id));
  return { products, suppliers };
}

function usedProductIds(input: ProjectInput): Set<string> {
  const used = new Set<string>([
    ...input.parts.flatMap((part) => [
      part.materialId,
      part.edgeFront,
      part.edgeBack,
      part.edgeLeft,
      part.edgeRight,
    ]),
    ...input.recipes.flatMap(({ steps }) => steps.flatMap((step) => [step.productId, step.thinnerId])),
    ...input.blends.flatMap(({ components }) => components.map(({ productId }) => productId)),
    ...[
      ...input.rules,
      ...input.extras,
      ...input.onHand,
      ...input.measurements,
      ...input.arrivals,
      ...input.orderLines,
      ...input.stockUses,
      ...input.substitutes,
    ].map(({ productId }) => productId),
  ]);
  for (const { substituteId } of input.substitutes) used.add(substituteId);
  for (const { id, choices } of input.catalogue.products)
    if (used.has(id) && choices.hardenerId !== undefined) used.add(choices.hardenerId);
  return used;
}

function notIn<Row extends { readonly id: string }>(shipped: readonly Row[], rows: readonly Row[]): Row[] {
  const known = new Map(shipped.map((row) => [row.id, row]));
  return rows.filter((row) => {
    const same = known.get(row.id);
    return same === undefined || (same !== row && canonical(row) !== canonical(same));
  });
}

/** Text that is equal for two values that hold the same, whatever the order of their keys; null counts as left out. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(
          Object.entries(inner)
            .filter(([, field]) => field !== null)
            .sort(([a], [b]) => (a < b ? -1 : 1)),
        )
      : inner,
  );
}
