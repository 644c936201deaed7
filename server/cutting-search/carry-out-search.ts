import { AdviceSearch } from '../planning/cutting/advice/advice-search.ts';
import { type CuttingSearch, cuttingSearch } from '../planning/cutting/anytime/cutting-search.ts';
import { foundCost } from '../planning/cutting/found/with-found.ts';
import type { SearchReport, SearchTask } from './search-messages.ts';

/** Better plans are told no more often than this, ms: each makes the project be planned anew. The first is told at once. */
const BETWEEN_REPORTS_MS = 1500;

export interface SearchPlace {
  readonly tell: (report: SearchReport) => void;
  readonly isStopped: () => boolean;
  /** Milliseconds from any moment on. */
  readonly clock: () => number;
}

/** Carries out one task in the thread it is called in: the search for its time, then the advice for its time. */
export function carryOutSearch(task: SearchTask, { tell, isStopped, clock }: SearchPlace): void {
  const { id, question, start, seed, subject } = task;
  let sheets = start;
  if (task.searchMs > 0) {
    const begun = clock();
    const search = cuttingSearch(question, start, seed);
    const complete = searchFor(task, search, { tell, isStopped, clock }, begun);
    sheets = search.plan.sheets;
    tell({ kind: 'searched', id, plan: search.plan, ms: clock() - begun, complete });
  }
  const cost = foundCost(question.job, sheets);
  if (task.adviceMs > 0 && cost !== task.advisedCost && !isStopped()) {
    const begun = clock();
    const advice = new AdviceSearch(subject, sheets);
    while (!isStopped() && clock() - begun < task.adviceMs && advice.step());
    if (!isStopped()) tell({ kind: 'advice', id, cost, advice: advice.advice });
  }
  tell({ kind: 'ended', id, stopped: isStopped() });
}

/** True when nothing is left to try. */
function searchFor(
  { id, searchMs, mostSteps }: SearchTask,
  search: CuttingSearch,
  { tell, isStopped, clock }: SearchPlace,
  begun: number,
): boolean {
  let told = search.plan;
  let toldAt = Number.NEGATIVE_INFINITY;
  for (let step = 0; step < (mostSteps ?? Number.POSITIVE_INFINITY); step++) {
    const now = clock();
    if (isStopped() || (mostSteps === null && now - begun >= searchMs)) return false;
    const more = search.run(1);
    const { plan } = search;
    const better =
      plan.cost < told.cost || plan.boundCost > told.boundCost || plan.offcutMm2 > told.offcutMm2;
    if (better && now - toldAt >= BETWEEN_REPORTS_MS) {
      tell({ kind: 'better', id, plan, ms: now - begun });
      told = plan;
      toldAt = now;
    }
    if (!more) return true;
  }
  return false;
}
