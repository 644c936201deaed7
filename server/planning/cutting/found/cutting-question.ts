import type { PartPlan } from '../../plan-output.ts';
import type { ProjectInput } from '../../project-input.ts';
import { begunJob } from '../begun/begun-job.ts';
import { type Blank, laidSize } from '../blank.ts';
import { FIT_TOLERANCE_MM, GRID_PER_MM, MOST_KERF_MM } from '../constants.ts';
import { usableSize } from '../fit-problem.ts';
import { materialBlanks } from '../material-blanks.ts';
import { type MaterialJob, materialJob } from '../material-job.ts';
import type { JobPiece, JobStock, SheetJob } from '../sheet-2d/sheet-job.ts';
import type { StockOffer } from '../stock-offer.ts';
import { stableHash } from './stable-hash.ts';

/** Raised when the meaning of a stored answer changes, or a bound turns out wrong: older answers are then left alone. */
const QUESTION_FORM = 1;

/**
 * What is to be cut from what, as plain data without names: the same question however the rows are ordered or called,
 * in this project or another. Pieces and stocks are merged and sorted; sizes are whole grid units with one kerf in.
 */
export interface CuttingQuestion {
  /** Equal for equal questions, and else different. */
  readonly hash: string;
  readonly kerfMm: number;
  /** Pieces and stock are equally wide: cuts to length only. */
  readonly toLengthOnly: boolean;
  readonly job: SheetJob;
}

/** How the parts of a piece lie, in a key. */
const INNER = { none: 0, length: 1, width: 2 } as const;

/** A question with the rows and the stock that stand behind its pieces and stocks. */
export interface AskedQuestion {
  readonly question: CuttingQuestion;
  /** Per piece of the question, in the order of the part list. */
  readonly owners: readonly (readonly Blank[])[];
  /** Per stock of the question. */
  readonly offers: readonly (readonly StockOffer[])[];
}

/**
 * The cutting question of one material; where sheets are being cut, of what is to be laid beside them.
 *
 * `input`, `parts`: as for planMaterials, mm. `materialId`: product id. Result: the question with what stands behind
 * it; null where there is nothing to cut, no size is known, or kerf or trim cannot be used. Rule of ours, no source.
 */
export function cuttingQuestion(
  input: ProjectInput,
  parts: readonly PartPlan[],
  materialId: string,
): AskedQuestion | null {
  const { kerfMm, sheetTrimMm } = input.settings;
  if (!(kerfMm >= 0 && kerfMm <= MOST_KERF_MM && sheetTrimMm >= 0 && Number.isFinite(sheetTrimMm)))
    return null;
  const material = materialBlanks(input, parts).find(({ product }) => product.id === materialId);
  if (material === undefined) return null;
  const job = begunJob(material, input)?.open ?? materialJob(material, input).job;
  return job === null || job.blanks.length === 0 ? null : askedQuestion(job, kerfMm);
}

/**
 * The question that a material's job comes to.
 *
 * `kerfMm`: mm. Result: see CuttingQuestion. Only what can change the best plan goes in: sizes, counts, whether a piece
 * may be turned, usable stock sizes, costs, how many there are, the kerf; names, labels and ids do not. Rule of ours.
 */
export function askedQuestion(job: MaterialJob, kerfMm: number): AskedQuestion {
  const onGrid = (mm: number): number => Math.round((mm + kerfMm) * GRID_PER_MM);
  const pieces = joined(
    job.blanks.map((blank) => {
      const laid = laidSize(blank);
      const turnable = blank.grain === 'free' && !job.toLengthOnly;
      const [length, width] = [onGrid(laid.lengthMm), onGrid(laid.widthMm)];
      const flip = turnable && length < width;
      return {
        key: flip
          ? [width, length, 1, 0]
          : [length, width, turnable ? 1 : 0, INNER[blank.match?.along ?? 'none']],
        number: blank.count,
        owner: blank,
      };
    }),
  );
  const stocks = joined(
    job.offers.map((offer, index) => {
      const usable = usableSize(offer);
      const cost = job.costs[index] as number;
      const length = onGrid(usable.lengthMm + FIT_TOLERANCE_MM);
      const width = onGrid(usable.widthMm + FIT_TOLERANCE_MM);
      return {
        key: [Number.isFinite(offer.limit) ? 1 : 0, cost, length, width],
        number: offer.limit,
        owner: offer,
      };
    }),
  );
  const sheetJob: SheetJob = {
    pieces: pieces.map(({ key, number }): JobPiece => {
      const [length, width, turnable, inner] = key as [number, number, number, number];
      const piece = { length, width, turnable: turnable === 1, count: number };
      return inner === INNER.none ? piece : { ...piece, inner: inner === INNER.length ? 'length' : 'width' };
    }),
    stocks: stocks.map(({ key, number }): JobStock => {
      const [, cost, length, width] = key as [number, number, number, number];
      return { length, width, cost, limit: number };
    }),
    ...(job.stages === null || job.toLengthOnly ? {} : { stages: job.stages }),
  };
  const text = [
    QUESTION_FORM,
    kerfMm,
    job.toLengthOnly ? 'to length' : 'guillotine',
    ...(sheetJob.stages === undefined ? [] : [`${sheetJob.stages} stages`]),
    ...sheetJob.pieces.map((piece) =>
      [piece.length, piece.width, piece.turnable ? 'turns' : 'stays', piece.count, piece.inner ?? []]
        .flat()
        .join(),
    ),
    'from',
    ...sheetJob.stocks.map(({ length, width, cost, limit }) => [length, width, cost, limit].join()),
  ].join(';');
  return {
    question: { hash: stableHash(text), kerfMm, toLengthOnly: job.toLengthOnly, job: sheetJob },
    owners: pieces.map(({ owners }) => owners),
    offers: stocks.map(({ owners }) => owners),
  };
}

interface Joined<Owner> {
  readonly key: readonly number[];
  number: number;
  readonly owners: Owner[];
}

/** Entries of one key as one, their numbers added up, greatest keys first. */
function joined<Owner>(
  entries: readonly { readonly key: number[]; readonly number: number; readonly owner: Owner }[],
): Joined<Owner>[] {
  const byKey = new Map<string, Joined<Owner>>();
  for (const { key, number, owner } of entries) {
    const known = byKey.get(key.join());
    if (known === undefined) byKey.set(key.join(), { key, number, owners: [owner] });
    else {
      known.number += number;
      known.owners.push(owner);
    }
  }
  return [...byKey.values()].sort((a, b) => {
    const at = a.key.findIndex((value, index) => value !== b.key[index]);
    return (b.key[at] ?? 0) - (a.key[at] ?? 0);
  });
}
