import type { Problem } from '../../problem.ts';
import type { PurchaseFacts } from './purchase-problems.ts';

/**
 * What is doubtful about suppliers and substitutes?
 *
 * @returns charges in another currency, suppliers that never work or are not there, products that only a retired supplier has,
 *   and substitutes that cannot stand in. Suppliers that the project neither orders from nor could are not looked at.
 *
 * Source: definition. Valid range: any. Departures: none.
 */
export function supplierProblems({ input, lines }: PurchaseFacts): readonly Problem[] {
  const { catalogue, settings, orders, substitutes } = input;
  const suppliers = new Map(catalogue.suppliers.map((supplier) => [supplier.id, supplier]));
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const problems: Problem[] = [];
  const asked = new Set([
    ...lines.flatMap(({ supplierId }) => supplierId ?? []),
    ...orders.map((one) => one.supplierId),
  ]);
  for (const id of asked) {
    const supplier = suppliers.get(id);
    if (supplier === undefined) continue;
    const { name, currency, workingDays } = supplier;
    const charges = [supplier.deliveryMinor, supplier.minimumOrderMinor, supplier.surchargeMinor];
    if (charges.some((one) => one !== null && one > 0) && currency !== settings.currency)
      problems.push({
        code: 'supplier-other-currency',
        severity: 'warning',
        at: { table: 'suppliers', id, field: 'currency' },
        message: `${name} charges in ${currency}, the project reckons in ${settings.currency}, so its delivery and minimum order are not reckoned with.`,
        wayOut: `Enter its charges in ${settings.currency}; prices are never converted.`,
      });
    if (workingDays.length === 0)
      problems.push({
        code: 'supplier-never-works',
        severity: 'warning',
        at: { table: 'suppliers', id, field: 'workingDays' },
        message: `${name} has no working days, so there is no day by which to order.`,
        wayOut: 'Choose the weekdays on which it works.',
      });
  }
  for (const { id, supplierId } of orders)
    if (supplierId !== '' && !suppliers.has(supplierId))
      problems.push({
        code: 'supplier-unknown',
        severity: 'warning',
        at: { table: 'orders', id, field: 'supplierId' },
        message: `This order names the supplier "${supplierId}", which is not in the catalogue.`,
        wayOut: 'Choose a supplier, or add it to the catalogue.',
      });
  for (const { productId, toOrder, packs } of lines) {
    const product = productId === null ? undefined : products.get(productId);
    if (product === undefined || toOrder.value === 0 || packs.length > 0 || product.packs.length === 0)
      continue;
    const sellers = product.packs.map(({ supplierId }) => suppliers.get(supplierId ?? ''));
    if (!sellers.every((one) => one?.retired === true)) continue;
    problems.push({
      code: 'supplier-retired',
      severity: 'error',
      at: { table: 'products', id: product.id, field: 'packs' },
      message: `"${product.name}" is sold only by ${[...new Set(sellers.map((one) => one?.name))].join(', ')}, which you no longer order from.`,
      wayOut: 'Enter another supplier with its packs, or allow a substitute.',
    });
  }
  for (const { id, productId, substituteId } of substitutes) {
    const product = products.get(productId);
    const stand = products.get(substituteId);
    const why =
      product === undefined || stand === undefined
        ? 'names a product that is not in the catalogue'
        : product.id === stand.id
          ? `lets "${product.name}" stand in for itself`
          : product.unit !== stand.unit
            ? `lets "${stand.name}", counted in ${stand.unit}, stand in for "${product.name}", counted in ${product.unit}`
            : null;
    if (why !== null)
      problems.push({
        code: 'substitute-invalid',
        severity: 'warning',
        at: { table: 'substitutes', id, field: stand === undefined ? 'substituteId' : 'productId' },
        message: `An allowed substitute ${why}, so it is left out.`,
        wayOut: 'Choose two products that are counted in the same unit.',
      });
  }
  return problems;
}
