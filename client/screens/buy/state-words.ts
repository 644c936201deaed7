import type { BuyingAnswer } from '../../../server/http/contract.ts';

export type BuyLine = BuyingAnswer['lines'][number];
export type Basket = BuyingAnswer['baskets'][number];
type OrderState = BuyingAnswer['orders'][number]['state'];

/** How a line stands, and the tone of its chip. */
export const LINE_STATES: Readonly<Record<BuyLine['state'], readonly [words: string, tone: string]>> = {
  covered: ['in stock', 'good'],
  'to-order': ['to order', ''],
  'part-ordered': ['partly ordered', 'note'],
  ordered: ['ordered', 'note'],
  'part-received': ['partly here', 'note'],
  received: ['here', 'good'],
};

export const ORDER_STATES: Readonly<Record<OrderState, readonly [words: string, tone: string]>> = {
  empty: ['nothing ordered', ''],
  ordered: ['ordered', 'note'],
  'part-received': ['partly here', 'note'],
  received: ['all here', 'good'],
};
