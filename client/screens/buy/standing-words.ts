import type { BuyingAnswer } from '../../../server/http/contract.ts';
import { mostPressing } from './due-chip.ts';

/** How buying stands, in a sentence or two. */
export function standingWords({ lines, baskets, orders }: BuyingAnswer): string {
  const byId = new Map(lines.map((line) => [line.id, line]));
  const due = baskets.map(
    ({ lineIds }) => mostPressing(lineIds.flatMap((id) => byId.get(id) ?? []))?.urgency,
  );
  const late = due.filter((urgency) => urgency === 'late').length;
  const today = due.filter((urgency) => urgency === 'today').length;
  const open = orders.filter(({ state }) => state === 'ordered' || state === 'part-received').length;
  const overdue = orders.filter((order) => order.overdue).length;
  const sentences = [
    baskets.length === 0
      ? lines.length === 0
        ? 'Whole packs at least cost for what the parts, the banding and the finish need.'
        : 'Nothing more is to be ordered.'
      : `${many(baskets.length, 'order is', 'orders are')} to be placed${pressing(late, today)}.`,
    open === 0
      ? ''
      : `${many(open, 'order is', 'orders are')} on the way${overdue === 0 ? '' : `, ${many(overdue, 'one of them overdue', 'of them overdue', true)}`}.`,
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

function pressing(late: number, today: number): string {
  const words = [late === 0 ? '' : `${late} late`, today === 0 ? '' : `${today} due today`].filter(
    (word) => word !== '',
  );
  return words.length === 0 ? '' : `, ${words.join(', ')}`;
}

/** "1 order is", "3 orders are"; `bare` leaves the number out where there is one. */
function many(count: number, one: string, more: string, bare = false): string {
  return count === 1 ? (bare ? one : `1 ${one}`) : `${count} ${more}`;
}
