import { isDate } from '../calendar/is-date.ts';
import type { Figure } from '../figure.ts';
import type { Problem, ProblemCode, Severity } from '../problem.ts';
import type { Quote } from '../project-input.ts';

/**
 * What keeps a quote from being sent, or makes it doubtful?
 *
 * @param given its figures, and today as YYYY-MM-DD
 * @returns a problem per doubtful cell of the quote
 *
 * Source: definition.
 */
export function quoteProblems(
  quote: Quote,
  given: {
    readonly materials: Figure;
    readonly labour: Figure;
    readonly total: Figure;
    readonly rateMinorPerHour: number | null;
    readonly today: string;
  },
): readonly Problem[] {
  const { date, validUntil } = quote;
  const problem = (
    code: ProblemCode,
    severity: Severity,
    field: string,
    message: string,
    wayOut: string,
  ): Problem => ({ code, severity, at: { table: 'quotes', id: quote.id, field }, message, wayOut });
  const unreadable = (field: 'date' | 'validUntil'): readonly Problem[] =>
    quote[field] === '' || isDate(quote[field])
      ? []
      : [
          problem(
            'ledger-date-unreadable',
            'error',
            field,
            `"${quote[field]}" is not a day that exists.`,
            'Write it as 2027-03-14.',
          ),
        ];
  const valid = isDate(validUntil);
  return [
    ...unreadable('date'),
    ...unreadable('validUntil'),
    ...(given.materials.value === null
      ? [
          problem(
            'quote-price-missing',
            'error',
            'materialsMinor',
            'Some of what the plan buys has no known price, so the quote has none.',
            'Enter the missing prices in the catalogue, or what materials come to as agreed.',
          ),
        ]
      : []),
    ...(given.labour.value === null && given.rateMinorPerHour === null
      ? [
          problem(
            'quote-rate-missing',
            'error',
            'rateMinorPerHour',
            `The quote has ${quote.hours} hours but no rate for an hour.`,
            'Enter a rate in the quote, or one for the project in its settings.',
          ),
        ]
      : []),
    ...(given.total.value === null && given.materials.value !== null && given.rateMinorPerHour !== null
      ? [
          problem(
            'amount-too-large',
            'error',
            'hours',
            'The price of this quote is too large to be kept to the last unit.',
            'Check its hours and the price of an hour.',
          ),
        ]
      : []),
    ...(valid && isDate(date) && validUntil < date
      ? [
          problem(
            'quote-dates-backwards',
            'warning',
            'validUntil',
            `The quote is valid until ${validUntil}, which is before its own date, ${date}.`,
            'Correct one of the two dates.',
          ),
        ]
      : valid && given.today > validUntil
        ? [
            problem(
              'quote-expired',
              'note',
              'validUntil',
              `The quote was valid until ${validUntil}.`,
              'Give it a later date before it is sent again.',
            ),
          ]
        : []),
  ];
}
