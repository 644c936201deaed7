import { isDate } from '../calendar/is-date.ts';
import type { Figure } from '../figure.ts';
import type { PartPlan } from '../plan-output.ts';
import type { ProjectInput, Quote } from '../project-input.ts';
import { groupRows } from './group-rows.ts';
import type { CustomerSheet, QuoteLine } from './ledger-plan.ts';

/**
 * What does the customer see of a quote?
 *
 * @param given the price in whole minor units, and the parts that are built
 * @returns title, dates, what is built by section, and the price; never what materials cost or the markup. A part is
 *   listed by its name and number of pieces; one without a name is counted only. Where the quote shows its work, the price
 *   without tax is the sum of two lines: materials with their markup in one amount, and the hours at their rate.
 *
 * Source: definition. Example: a section "Case" of 2 sides and a top has 3 pieces: "2 x Side", "Top".
 */
export function customerSheet(
  quote: Quote,
  {
    input,
    parts,
    sold,
    labour,
    rateMinorPerHour,
    net,
    taxPercent,
    tax,
    total,
    today,
  }: {
    readonly input: Pick<ProjectInput, 'parts' | 'settings'>;
    readonly parts: readonly PartPlan[];
    /** Materials with their markup. */
    readonly sold: Figure;
    readonly labour: Figure;
    readonly rateMinorPerHour: number | null;
    readonly net: Figure;
    readonly taxPercent: number | null;
    readonly tax: Figure;
    readonly total: Figure;
    readonly today: string;
  },
): CustomerSheet {
  const piecesOf = new Map(parts.map(({ id, quantity }) => [id, quantity.value]));
  const lines: readonly QuoteLine[] = [
    { kind: 'materials', hours: null, rateMinorPerHour: null, minor: sold.value },
    { kind: 'work', hours: quote.hours, rateMinorPerHour, minor: labour.value },
  ];
  return {
    sender: quote.sender,
    title: quote.title === '' ? input.settings.name : quote.title,
    customer: quote.customer,
    date: quote.date,
    validUntil: quote.validUntil,
    expired: isDate(quote.validUntil) ? today > quote.validUntil : null,
    sections: [...groupRows(input.parts, ({ section }) => section)].map(([name, rows]) => {
      const pieces = rows.map(({ id }) => piecesOf.get(id) ?? null);
      return {
        name,
        pieces: pieces.reduce<number | null>(
          (sum, count) => (sum === null || count === null ? null : sum + count),
          0,
        ),
        parts: rows.flatMap((row, index) => {
          const count = pieces[index];
          if (row.name === '') return [];
          return [count === 1 || count === null ? row.name : `${count} x ${row.name}`];
        }),
      };
    }),
    lines: quote.shown === 'work' ? lines : [],
    netMinor: net.value,
    taxPercent,
    taxMinor: tax.value,
    totalMinor: total.value,
    note: quote.note,
  };
}
