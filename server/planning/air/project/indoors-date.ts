import type { CalendarPlan } from '../../calendar/calendar-plan.ts';
import { stepProducts } from '../../calendar/project/step-products.ts';
import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import { type Figure, figure } from '../../figure.ts';
import type { Product } from '../../product.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { AirIndoors } from './air-plan.ts';
import { INDOORS_ADVICE, STEADY_AFTER_DAYS, STEADY_SOURCE } from './indoors-advice.ts';

interface Laid {
  readonly batchId: string;
  readonly minute: number;
  readonly products: readonly Product[];
}

/**
 * When may the piece come indoors?
 *
 * @param input the project, for curing times
 * @param calendar its calendar; minutes; null when there is none
 * @param clearMinute from when on the shop's air stays under the health limit; null when not known
 * @returns a range in minutes of the calendar: at each end the latest of curing, of fading and of clear air; null where the
 *   last coat of a batch has no known curing time; and the published advice side by side
 *
 * Source: curing times of the catalogue; the days of indoors-advice.ts. Valid range: any. Departures: low confidence:
 * published advice runs from a day to months and is shown, not averaged. A coat under others whose curing time is not
 * known is named, and taken to be sealed in by them, a rule of ours.
 * Example: last coat on day 3, cure 7 to 30 days: day 10 to day 33.
 */
export function indoorsDate(
  input: ProjectInput,
  calendar: CalendarPlan | null,
  clearMinute: number | null,
): AirIndoors {
  const laid = laidCoats(input, calendar);
  const products = [
    ...new Map(laid.flatMap((one) => one.products.map((product) => [product.id, product] as const))).values(),
  ];
  const missing = products.filter((product) => cureOf(product) === null).map(({ name }) => name);
  const tops = [...new Set(laid.map(({ batchId }) => batchId))].map((id) =>
    laid.findLast(({ batchId }) => batchId === id),
  );
  const known =
    laid.length > 0 &&
    tops.every(
      (top) =>
        top !== undefined && top.products.length > 0 && top.products.every((one) => cureOf(one) !== null),
    );
  const last = Math.max(0, ...laid.map(({ minute }) => minute));
  const wait = (end: 'low' | 'high'): number | null => {
    if (!known) return null;
    const cured = laid.flatMap((one) =>
      one.products.flatMap((product) => {
        const cure = cureOf(product);
        return cure === null ? [] : [one.minute + cure[end]];
      }),
    );
    return Math.max(...cured, last + STEADY_AFTER_DAYS * MINUTES_PER_DAY, clearMinute ?? 0) - last;
  };
  const earliest = wait('low');
  const latest = wait('high');
  return {
    earliestMinute: earliest === null ? null : last + earliest,
    latestMinute: latest === null ? null : last + latest,
    earliestWait: working(earliest, 'shortest', products, missing),
    latestWait: working(latest, 'longest', products, missing),
    advice: [...products.flatMap(cureAdvice), ...INDOORS_ADVICE],
    missing,
  };
}

/** In order of time. */
function laidCoats(input: ProjectInput, calendar: CalendarPlan | null): Laid[] {
  return (calendar?.tasks ?? [])
    .flatMap(({ batchId, recipeId, stepId, layToMinute }): Laid[] => {
      if (layToMinute === null) return [];
      const step = input.recipes.find(({ id }) => id === recipeId)?.steps.find(({ id }) => id === stepId);
      const products = step === undefined ? [] : stepProducts(step, input).laid;
      return [{ batchId, minute: layToMinute, products }];
    })
    .toSorted((left, right) => left.minute - right.minute);
}

function cureOf({ figures: { cure } }: Product): { readonly low: number; readonly high: number } | null {
  const low = cure?.low ?? cure?.typical ?? cure?.high ?? null;
  const high = cure?.high ?? cure?.typical ?? cure?.low ?? null;
  return low === null || high === null ? null : { low, high };
}

function cureAdvice(product: Product): AirIndoors['advice'] {
  const cure = cureOf(product);
  if (cure === null) return [];
  const [low, high] = [cure.low, cure.high].map((min) => Math.round((min / MINUTES_PER_DAY) * 10) / 10);
  const { source = '', basis = 'practice', note } = product.figures.cure ?? {};
  const from = source || (basis === 'practice' ? 'common practice, no source' : 'from memory');
  return [
    {
      what: `Cure of ${product.name}`,
      says: low === high ? `${low} days` : `${low} to ${high} days`,
      source: [from, note ?? ''].filter(Boolean).join('; '),
    },
  ];
}

function working(
  waitMin: number | null,
  end: 'shortest' | 'longest',
  products: readonly Product[],
  missing: readonly string[],
): Figure {
  return figure(waitMin, 'min', {
    rule: `wait after the last coat = the latest of the ${end} curing time of any coat, ${STEADY_AFTER_DAYS} days of fading, and clear air in the shop`,
    inputs: [
      ...products.map((product) => ({
        name: `cure of ${product.name}`,
        value: cureOf(product)?.[end === 'shortest' ? 'low' : 'high'] ?? null,
        unit: 'min' as const,
        source: product.figures.cure?.source ?? '',
      })),
      {
        name: 'fading',
        value: STEADY_AFTER_DAYS * MINUTES_PER_DAY,
        unit: 'min',
        source: STEADY_SOURCE,
      },
    ],
    notes: [
      'Low confidence: published advice runs from a day to months, and is shown, not averaged.',
      ...(missing.length === 0
        ? []
        : [
            `The curing time of ${missing.join(', ')} is not known; where other coats cover it, it is taken to be sealed in.`,
          ]),
    ],
  });
}
