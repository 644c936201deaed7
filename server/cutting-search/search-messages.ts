import type { AdviceSubject } from '../planning/cutting/advice/advice-subject.ts';
import type { CuttingAdvice } from '../planning/cutting/advice/cutting-advice.ts';
import type { AnytimePlan } from '../planning/cutting/anytime/cutting-search.ts';
import type { CuttingQuestion } from '../planning/cutting/found/cutting-question.ts';
import type { FoundSheet } from '../planning/project-input.ts';

/** What the search thread is asked to do, and what it says. Plain data, copied from one thread to the other. */

export interface SearchTask {
  /** Rises from task to task; a task is to stop as soon as its number is in `SearchThreadData.stop`. */
  readonly id: number;
  readonly question: CuttingQuestion;
  /** The plan to begin from. */
  readonly start: readonly FoundSheet[];
  readonly seed: number;
  /** 0 for advice alone. */
  readonly searchMs: number;
  readonly mostSteps: number | null;
  readonly subject: AdviceSubject;
  /** 0 for none. */
  readonly adviceMs: number;
  /** Cost of the plan that advice is there for already; null for none. */
  readonly advisedCost: number | null;
}

export interface SearchThreadData {
  /** One 32-bit number: tasks up to this id are to stop. */
  readonly stop: SharedArrayBuffer;
}

export type SearchReport =
  /** The plan or its bound is better than reported before. */
  | { readonly kind: 'better'; readonly id: number; readonly plan: AnytimePlan; readonly ms: number }
  /** The search is over. `complete`: nothing is left to try. */
  | {
      readonly kind: 'searched';
      readonly id: number;
      readonly plan: AnytimePlan;
      readonly ms: number;
      readonly complete: boolean;
    }
  /** `cost`: of the plan that the advice is measured against. */
  | {
      readonly kind: 'advice';
      readonly id: number;
      readonly cost: number;
      readonly advice: readonly CuttingAdvice[];
    }
  /** The thread is free for the next task. `stopped`: it was told to stop. */
  | { readonly kind: 'ended'; readonly id: number; readonly stopped: boolean }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
