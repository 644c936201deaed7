import { figure } from '../figure.ts';
import type { BandingPlan, RollPlan, RollStrip } from '../plan-output.ts';
import { MM_PER_M } from './constants.ts';

/**
 * How many rolls are bought, how many metres is that, and how much of it is left over?
 *
 * `rolls`: in cutting order, mm; null when they cannot be planned. `priced`: whether prices chose them. `proven`:
 * whether no choice is cheaper. `waiting`:
 * strips no roll holds. `unknown`: entries of the part list left out. Result: pieces and m, null where there is no plan. No source: sums.
 *
 * Example: 2 rolls of 50 ft cut into 20 strips of 33 in: 30.48 m bought, 13.716 m left over.
 */
export function boughtRolls({
  rolls,
  priced,
  proven,
  waiting,
  unknown,
  path,
}: {
  readonly rolls: readonly RollPlan[] | null;
  readonly priced: boolean;
  readonly proven: boolean;
  readonly waiting: readonly RollStrip[];
  readonly unknown: number;
  readonly path: string;
}): Pick<BandingPlan, 'boughtM' | 'wastedM' | 'rollsToBuy'> {
  const notes = [
    priced
      ? proven
        ? 'No choice of rolls costs less: this one meets its lower bound.'
        : 'The cheapest mix found: each roll size alone, and mixes of two sizes, longest strips first. Not proven least.'
      : `No price in the project currency is known: the mix with the fewest metres found. ${proven ? 'None takes fewer: it meets its lower bound.' : 'Not proven least.'}`,
    'Strips are never joined, so the tail of a roll that holds no further strip is left over.',
  ];
  if (waiting.length > 0)
    notes.push(
      `${waiting.reduce((sum, { count }) => sum + count, 0)} strips are longer than every roll and are not cut.`,
    );
  if (unknown > 0) notes.push(`${unknown} strips of the part list are unknown and left out.`);
  const metres = (some: readonly RollPlan[]) =>
    some.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / MM_PER_M;
  const toBuy = rolls?.filter(({ packId }) => packId !== null) ?? null;
  const fromShelf = rolls?.filter(({ packId }) => packId === null) ?? null;
  const byLabel = new Map<string, number>();
  for (const { label } of toBuy ?? []) byLabel.set(label, (byLabel.get(label) ?? 0) + 1);
  const counted = [...byLabel].map(([name, value]) => ({ name, value, unit: 'pcs' as const }));
  const missing = { notes: ['The strips, the roll lengths or the spare strips are not known.'] };
  return {
    rollsToBuy: figure(toBuy?.length ?? null, 'pcs', {
      rule: 'rolls to buy = whole rolls that hold every strip, after those on hand',
      inputs: counted,
      ...(toBuy === null ? missing : { notes }),
    }),
    boughtM: figure(toBuy === null ? null : metres(toBuy), 'm', {
      rule: 'bought = sum of the lengths of the rolls bought',
      inputs: counted,
      ...(toBuy === null ? missing : {}),
    }),
    wastedM: figure(
      rolls === null ? null : rolls.reduce((sum, { leftMm }) => sum + leftMm, 0) / MM_PER_M,
      'm',
      {
        rule: 'left over = rolls bought + rolls on hand that are cut into - strips cut from them',
        inputs: [
          {
            name: 'bought',
            value: toBuy === null ? null : metres(toBuy),
            unit: 'm',
            from: `${path}/boughtM`,
          },
          { name: 'on hand, cut into', value: fromShelf === null ? null : metres(fromShelf), unit: 'm' },
          {
            name: 'strips cut',
            value:
              rolls === null
                ? null
                : rolls.reduce((sum, roll) => sum + roll.lengthMm - roll.leftMm, 0) / MM_PER_M,
            unit: 'm',
          },
        ],
        ...(rolls === null ? missing : {}),
      },
    ),
  };
}
