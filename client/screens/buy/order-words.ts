import type { OrderLineRow } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';

/** "Wood conditioner, quart": the product and its pack, or the free line's own words. */
export function lineName({ products }: ScreenBook, line: OrderLineRow): string {
  const product = products.get(line.productId);
  const pack = product?.packs.find(({ id }) => id === line.packId);
  return (
    `${product?.name ?? line.name}${pack === undefined ? '' : `, ${pack.label}`}` || 'a line without name'
  );
}

export function supplierName({ suppliers }: ScreenBook, supplierId: string): string {
  return suppliers.get(supplierId)?.name ?? (supplierId === '' ? 'no supplier' : supplierId);
}
