import { html, nothing, type TemplateResult } from 'lit-html';
import { icon } from '../../shell/icons.ts';
import { shortDateText } from '../ledger/day-text.ts';
import type { BuyLine } from './state-words.ts';

type Due = Pick<BuyLine, 'urgency' | 'orderBy' | 'neededBy'>;

/** Until when to order, with a sign where it presses: in words and by an icon, not by colour alone.
 * In the column “Order by” the day is enough. */
export function dueChip(
  { urgency, orderBy, neededBy }: Due,
  inColumn = false,
): TemplateResult | typeof nothing {
  const last = orderBy ?? neededBy;
  if (last === null) return nothing;
  const day = shortDateText(last);
  if (urgency === 'late')
    return html`<span class="chip error due" data-due="late">${icon('problem')} late: ${inColumn ? '' : orderBy === null ? 'was needed ' : 'order was due '}${day}</span>`;
  if (urgency === 'today')
    return html`<span class="chip warning due" data-due="today">${icon('calendar')} ${inColumn ? '' : orderBy === null ? 'needed ' : 'order '}today</span>`;
  if (orderBy === null) return nothing;
  return urgency === 'soon'
    ? html`<span class="chip note due" data-due="soon">${icon('calendar')} ${inColumn ? 'soon:' : 'order by'} ${day}</span>`
    : html`<span class="due" data-due="none">${inColumn ? '' : 'order by '}${day}</span>`;
}

/** The most pressing of several lines. */
export function mostPressing(lines: readonly BuyLine[]): Due | null {
  const rank = ['late', 'today', 'soon', 'none'] as const;
  const dated = lines.filter(({ orderBy, urgency }) => orderBy !== null || urgency !== 'none');
  return (
    dated.toSorted(
      (one, other) =>
        rank.indexOf(one.urgency) - rank.indexOf(other.urgency) ||
        (one.orderBy ?? '9999').localeCompare(other.orderBy ?? '9999'),
    )[0] ?? null
  );
}
