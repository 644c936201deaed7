import { sumFigure } from '../finish/sum-figure.ts';
import type { BandingPlan, RollStrip } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { RowStrips } from './banding-strips.ts';
import { boughtRolls } from './bought-rolls.ts';
import { MM_PER_M, SAME_LENGTH_MM } from './constants.ts';
import { cutRolls } from './cut-rolls.ts';
import { neededMetres } from './needed-metres.ts';
import { rollLengthUnknown, tooLongProblems, tooManyRolls } from './roll-problems.ts';
import { rollStock } from './roll-stock.ts';
import { stripQueue } from './strip-queue.ts';

/**
 * What is needed of one banding product, what is bought, and how is it cut?
 *
 * `rows`: its strips, mm, per row of the part list. `spare`: spare strips; null when the setting cannot be used.
 * Result: metres, rolls with their cuts, and the problems: strips no roll holds (at their part), no roll length
 * known (at the product). Rows of unknown length or quantity are left out and said so. A spare is as long as the
 * longest strip a roll can hold. No source: the spare is a setting; the rest is sums.
 *
 * Example: 70 ft of 32 in edges needs 3 rolls of 25 ft, cut 9 strips to the roll.
 */
export function planProductBanding(
  product: Product,
  rows: readonly RowStrips[],
  spare: number | null,
  input: ProjectInput,
  nameOf: (partId: string) => string,
): { readonly banding: BandingPlan; readonly problems: readonly Problem[] } {
  const path = `banding/${product.id}`;
  const summands = (value: (row: RowStrips) => number | null, field: string) =>
    rows.map((row) => ({
      name: `${nameOf(row.partId)}, ${row.stripId}`,
      value: value(row),
      from: `parts/${row.partId}/strips/${row.stripId}/${field}`,
    }));
  const strips = sumFigure({
    rule: 'strips = sum over the rows of the pieces, one strip each',
    unit: 'pcs',
    noun: 'strips of the part list',
    summands: summands(({ count, stripMm }) => (stripMm === null ? null : count), 'stripMm'),
    notes: ['Spare strips are not counted here.'],
  });
  const edgeM = sumFigure({
    rule: 'edge = sum over the rows of pieces x run / 1000',
    unit: 'm',
    noun: 'strips of the part list',
    summands: summands(
      ({ count, runMm }) => (count === null || runMm === null ? null : (count * runMm) / MM_PER_M),
      'runMm',
    ),
  });

  const stock = rollStock(product, input);
  const problems: Problem[] = [...stock.problems];
  const known = rows.flatMap(({ partId, stripId, count, stripMm }): RollStrip[] =>
    count === null || stripMm === null ? [] : [{ partId, stripId, lengthMm: stripMm, count }],
  );
  const spareMm = spareLength(known, stock.offers.length > 0 ? stock.offers : stock.onHand);
  const spares: RollStrip[] =
    spare === null || spareMm === null || spare === 0
      ? []
      : [{ partId: null, stripId: null, lengthMm: spareMm, count: spare }];
  const queue = stripQueue([...known, ...spares]);
  const cut = cutRolls(queue, stock, input.settings.units);
  const waiting = queue.waiting();
  if (cut === null) problems.push(tooManyRolls(product));
  else if (waiting.length > 0 && stock.offers.length === 0) problems.push(rollLengthUnknown(product));
  else {
    const longestMm = Math.max(0, ...[...stock.offers, ...stock.onHand].map(({ lengthMm }) => lengthMm));
    problems.push(
      ...tooLongProblems(waiting, rows, product, nameOf, { longestMm, units: input.settings.units }),
    );
  }

  // What is bought is not known without a usable number of spares, without any known strip, or without a roll to buy.
  const noRoll = waiting.length > 0 && stock.offers.length === 0;
  const settled = spare === null || known.length === 0 || noRoll ? null : (cut?.rolls ?? null);
  return {
    banding: {
      id: product.id,
      name: product.name,
      strips,
      edgeM,
      neededM: neededMetres({
        strips,
        edgeM,
        known,
        spare,
        spareMm,
        path,
        overhangMm: input.settings.overhangMm,
      }),
      ...boughtRolls({
        rolls: settled,
        priced: stock.priced,
        proven: cut?.proven ?? false,
        waiting,
        unknown: rows.length - known.length,
        path,
      }),
      rolls: settled ?? [],
    },
    problems,
  };
}

/** Length of the longest strip that one of the rolls holds, mm; null when there is none. */
function spareLength(
  strips: readonly RollStrip[],
  rolls: readonly { readonly lengthMm: number }[],
): number | null {
  const longestRollMm = rolls.reduce((longest, { lengthMm }) => Math.max(longest, lengthMm), 0);
  let longestMm: number | null = null;
  for (const { lengthMm, count } of strips)
    if (count > 0 && lengthMm <= longestRollMm + SAME_LENGTH_MM && lengthMm > (longestMm ?? 0))
      longestMm = lengthMm;
  return longestMm;
}
