import { isDate } from '../calendar/is-date.ts';
import type { Figure } from '../figure.ts';
import type { PartPlan } from '../plan-output.ts';
import type { ProjectInput, Quote } from '../project-input.ts';
import { groupRows } from './group-rows.ts';
import type { CustomerSheet } from './ledger-plan.ts';

/**
 * What does the customer see of a quote?
 *
 * @param given the price in whole minor units, and the parts that are built
 * @returns title, dates, what is built by section, and the price; nothing of materials, hours, rates or markup. A part is
 *   listed by its name and number of pieces; one without a name is counted only.
 *
 * Source: definition. Example: a section "Case" of 2 sides and a top has 3 pieces: "2 x Side", "Top".
 */
export function customerSheet(
  quote: Quote,
  {
    input,
    parts,
    net,
    taxPercent,
    tax,
    total,
    today,
  }: {
    readonly input: Pick<ProjectInput, 'parts' | 'settings'>;
    readonly parts: readonly PartPlan[];
    readonly net: Figure;
    readonly taxPercent: number | null;
    readonly tax: Figure;
    readonly total: Figure;
    readonly today: string;
  },
): CustomerSheet {
  const piecesOf = new Map(parts.map(({ id, quantity }) => [id, quantity.value]));
  return {
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
    netMinor: net.value,
    taxPercent,
    taxMinor: tax.value,
    totalMinor: total.value,
    note: quote.note,
  };
}
