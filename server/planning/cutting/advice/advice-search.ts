import type { FoundSheet } from '../../project-input.ts';
import { type Blank, laidSize } from '../blank.ts';
import { fitsOffer } from '../fit-problem.ts';
import { askedQuestion } from '../found/cutting-question.ts';
import { foundLayouts } from '../found/found-layouts.ts';
import { foundCost } from '../found/with-found.ts';
import type { MaterialJob } from '../material-job.ts';
import type { StockOffer } from '../stock-offer.ts';
import type { AdviceSubject } from './advice-subject.ts';
import {
  FIRST_BAR_STEPS,
  FIRST_LOOK_STEPS,
  MOST_OF_ONE_KIND,
  MOST_PIECES_VARIED,
  SECOND_BAR_STEPS,
  SECOND_LOOK_STEPS,
} from './constants.ts';
import type { AdviceChange, CuttingAdvice, CuttingOutcome } from './cutting-advice.ts';
import { planWithin } from './plan-within.ts';

const FIRST_LOOK = { sheetSteps: FIRST_LOOK_STEPS, barSteps: FIRST_BAR_STEPS };
const SECOND_LOOK = { sheetSteps: SECOND_LOOK_STEPS, barSteps: SECOND_BAR_STEPS };
type Look = typeof FIRST_LOOK;

/** The subject varied in one way. */
interface Variant {
  readonly change: AdviceChange;
  readonly job: MaterialJob;
  readonly kerfMm: number;
}

interface Outcome extends CuttingOutcome {
  /** In the unit of the job's costs. */
  readonly cost: number;
}

/**
 * Works out advice on the cutting of one material, trial by trial; the caller owns the time.
 *
 * Every statement comes from a plan of the varied parts that was made and checked: a thinner saw cut, a size bought
 * alone, a piece less, a part a little smaller (then the least that does it), grain set free where nobody sees it.
 * Changes that cost nothing less are not stated, sizes excepted. Trials that a bound rules out are not made; the others
 * get a short look each and then a longer one. Same subject, plan and trials, same advice. Method of ours, no source.
 */
export class AdviceSearch {
  private readonly subject: AdviceSubject;
  private readonly before: Outcome;
  private readonly found: CuttingAdvice[] = [];
  private readonly work: Generator<void, void, void>;

  /** `sheets`: the plan that the advice is measured against, without fault. */
  constructor(subject: AdviceSubject, sheets: readonly FoundSheet[]) {
    this.subject = subject;
    this.before = outcomeOf(subject.job, subject.kerfMm, sheets);
    this.work = this.search();
  }

  get advice(): readonly CuttingAdvice[] {
    const counts = new Map<AdviceChange['kind'], number>();
    return this.found.toSorted(byWorth).filter(({ change: { kind } }) => {
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      return kind === 'size' || count <= MOST_OF_ONE_KIND;
    });
  }

  /** Makes one trial; false when there are none left. */
  step(): boolean {
    return this.work.next().done !== true;
  }

  private *search(): Generator<void, void, void> {
    yield* this.sizes();
    const open: Variant[] = [];
    for (const variant of this.variants()) {
      yield* this.attempt(variant, FIRST_LOOK, open);
      yield;
    }
    for (const variant of open) {
      yield* this.attempt(variant, SECOND_LOOK, []);
      yield;
    }
  }

  private *variants(): Generator<Variant, void, void> {
    const { job, thinKerfsMm, hiddenPartIds, mostSteps } = this.subject;
    for (const thin of thinKerfsMm) yield { change: { kind: 'kerf', kerfMm: thin }, job, kerfMm: thin };
    if (!job.toLengthOnly) {
      for (const partId of hiddenPartIds) yield this.freed([partId]);
      if (hiddenPartIds.length > 1) yield this.freed(hiddenPartIds);
    }
    const pieces = job.blanks.reduce((sum, { count }) => sum + count, 0);
    // The parts of a grain match are one piece here; advice is on parts.
    const single = job.blanks.filter(({ match }) => match === undefined);
    if (pieces > MOST_PIECES_VARIED) return;
    if (pieces > 1) for (const blank of single) yield this.fewer(blank);
    for (const blank of single)
      for (const side of ['length', 'width'] as const) {
        const variant = this.smaller(blank, side, mostSteps);
        if (variant !== null) yield variant;
      }
  }

  /** One trial: states what it finds, or keeps the variant for a longer look. */
  private *attempt(variant: Variant, look: Look, open: Variant[]): Generator<void, void, void> {
    if (this.covered(variant.change)) return;
    const after = this.cheaper(variant, look);
    if (after === null) open.push(variant);
    if (after === null || after === 'impossible') return;
    if (variant.change.kind === 'smaller') yield* this.leastSmaller(variant, after, look);
    else this.state(variant.change, after);
  }

  /** Halves the way down to the fewest steps by which the part must be smaller. */
  private *leastSmaller(variant: Variant, most: Outcome, look: Look): Generator<void, void, void> {
    const { change } = variant;
    if (change.kind !== 'smaller') return;
    const blank = this.subject.job.blanks.find(({ partId }) => partId === change.partId) as Blank;
    let least = variant;
    let after = most;
    let low = 0;
    let high = this.subject.mostSteps;
    while (high - low > 1) {
      yield;
      const middle = (low + high) >> 1;
      const tried = this.smaller(blank, change.side, middle) as Variant;
      const outcome = this.cheaper(tried, look);
      if (outcome === null || outcome === 'impossible') low = middle;
      else {
        high = middle;
        least = tried;
        after = outcome;
      }
    }
    this.state(least.change, after);
  }

  /** Freeing all hidden grain says nothing new where freeing one part does it, nor a thinner cut where a wider one does. */
  private covered(change: AdviceChange): boolean {
    return (
      (change.kind === 'grain' && change.partIds.length > 1 && this.states('grain')) ||
      (change.kind === 'kerf' && this.states('kerf'))
    );
  }

  private states(kind: AdviceChange['kind']): boolean {
    return this.found.some(({ change }) => change.kind === kind);
  }

  /** Every size that can be bought alone, better or not: it is good to know what it would come to. */
  private *sizes(): Generator<void, void, void> {
    const { job, kerfMm } = this.subject;
    const bought = job.offers.filter(({ packId }) => packId !== null);
    if (bought.length < 2) return;
    for (const { packId } of bought) {
      if (packId === null) continue;
      const kept = job.offers.map((offer) => offer.packId === null || offer.packId === packId);
      const only = job.offers.filter((_, index) => kept[index]);
      const costs = job.costs.filter((_, index) => kept[index]);
      const size = only.filter((offer) => offer.packId === packId);
      if (!job.blanks.every((blank) => size.some((offer: StockOffer) => fitsOffer(blank, offer)))) continue;
      const variant = {
        change: { kind: 'size', packId } as const,
        job: { ...job, offers: only, costs },
        kerfMm,
      };
      const after = planOf(variant, { below: Number.POSITIVE_INFINITY, enough: 0, ...SECOND_LOOK });
      yield;
      if (after === null || after === 'impossible') continue;
      // The size that the plan uses alone anyway is no news.
      if (after.cost !== this.before.cost || after.stocks !== this.before.stocks)
        this.state(variant.change, after);
    }
  }

  private fewer(blank: Blank): Variant {
    const { job, kerfMm } = this.subject;
    const blanks = job.blanks.flatMap((each) => {
      if (each !== blank) return [each];
      return each.count > 1 ? [{ ...each, count: each.count - 1 }] : [];
    });
    return { change: { kind: 'fewer', partId: blank.partId }, job: { ...job, blanks }, kerfMm };
  }

  /** Null where the part would vanish, or where a board's own width cannot be narrowed. */
  private smaller(blank: Blank, side: 'length' | 'width', steps: number): Variant | null {
    const { job, kerfMm, stepMm } = this.subject;
    const byMm = steps * stepMm;
    const field = side === 'length' ? 'lengthMm' : 'widthMm';
    const less = { ...blank, [field]: blank[field] - byMm };
    if (!(less[field] > 0)) return null;
    if (job.toLengthOnly && laidSize(less).widthMm !== laidSize(blank).widthMm) return null;
    const blanks = job.blanks.map((each) => (each === blank ? less : each));
    return { change: { kind: 'smaller', partId: blank.partId, side, byMm }, job: { ...job, blanks }, kerfMm };
  }

  private freed(partIds: readonly string[]): Variant {
    const { job, kerfMm } = this.subject;
    const blanks = job.blanks.map(
      (each): Blank => (partIds.includes(each.partId) ? { ...each, grain: 'free' } : each),
    );
    return { change: { kind: 'grain', partIds }, job: { ...job, blanks }, kerfMm };
  }

  private cheaper(variant: Variant, look: Look): Outcome | 'impossible' | null {
    const { cost } = this.before;
    if (cost <= 0) return 'impossible';
    return planOf(variant, { below: cost, enough: cost - 1, ...look });
  }

  private state(change: AdviceChange, after: Outcome): void {
    this.found.push({ change, before: bare(this.before), after: bare(after) });
  }
}

function planOf(
  { job, kerfMm }: Variant,
  wanted: Parameters<typeof planWithin>[1],
): Outcome | 'impossible' | null {
  const sheets = planWithin(askedQuestion(job, kerfMm).question, wanted);
  return sheets === null || sheets === 'impossible' ? sheets : outcomeOf(job, kerfMm, sheets);
}

function outcomeOf(job: MaterialJob, kerfMm: number, sheets: readonly FoundSheet[]): Outcome {
  const asked = askedQuestion(job, kerfMm);
  const prices = new Map(job.offers.map(({ packId, priceMinor }) => [packId, priceMinor ?? 0]));
  let stocks = 0;
  let costMinor = 0;
  for (const { packId, count } of foundLayouts(asked, sheets)) {
    if (packId === null) continue;
    stocks += count;
    costMinor += count * (prices.get(packId) ?? 0);
  }
  const cost = foundCost(asked.question.job, sheets);
  return { stocks, costMinor: job.unpriced ? null : costMinor, cost };
}

function bare({ stocks, costMinor }: Outcome): CuttingOutcome {
  return { stocks, costMinor };
}

const ORDER: readonly AdviceChange['kind'][] = ['smaller', 'grain', 'kerf', 'fewer', 'size'];

/** By kind, the largest saving first, then the smallest change. */
function byWorth(left: CuttingAdvice, right: CuttingAdvice): number {
  const kinds = ORDER.indexOf(left.change.kind) - ORDER.indexOf(right.change.kind);
  const saving = right.before.stocks - right.after.stocks - (left.before.stocks - left.after.stocks);
  const by = ({ change }: CuttingAdvice): number => (change.kind === 'smaller' ? change.byMm : 0);
  return kinds || saving || by(left) - by(right);
}
