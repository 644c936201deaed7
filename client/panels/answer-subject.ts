import type { ProjectState } from '../../server/http/contract.ts';
import { CATEGORY_WORDS } from '../screens/buy/words.ts';
import { dateText } from '../screens/ledger/day-text.ts';
import { getState } from '../state/store.ts';

const PROJECT = 'Whole project';

/** Whose figure a path into the buying or the ledger answer names, in the words of those screens. */
export function answerSubject(
  { rows }: ProjectState,
  [, list = '', encodedId = '']: readonly string[],
): string {
  const id = decodeURIComponent(encodedId);
  const { buying, catalogue } = getState();
  const supplierOf = (supplierId: string): string =>
    catalogue?.suppliers.find((one) => one.id === supplierId)?.name ?? 'no supplier';
  if (list === 'lines') return buying?.lines.find((line) => line.id === id)?.name ?? id;
  if (list === 'baskets') return `Order from ${supplierOf(id)}`;
  if (list === 'stock' || list === 'coverages')
    return catalogue?.products.find((product) => product.id === id)?.name ?? id;
  if (list === 'choice') return 'Choice of suppliers';
  if (list === 'headings') return CATEGORY_WORDS[id as keyof typeof CATEGORY_WORDS] ?? id;
  if (list === 'parts') return rows.parts.find((part) => part.id === id)?.name || `Part no. ${id}`;
  if (list === 'sections') return id === '' ? 'Parts without a section' : `Section ${id}`;
  if (list === 'orders') {
    const order = rows.orders.find((one) => one.id === id);
    return order === undefined
      ? PROJECT
      : `Order from ${supplierOf(order.supplierId)}, ${dateText(order.date)}`;
  }
  if (list === 'payments') {
    const payment = rows.payments.find((one) => one.id === id);
    return payment === undefined ? PROJECT : `Payment of ${dateText(payment.date)}`;
  }
  return PROJECT;
}
