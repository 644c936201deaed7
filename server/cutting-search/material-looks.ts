import type { PlannedProject } from '../http/project-plans.ts';
import { type AdviceSubject, adviceSubject } from '../planning/cutting/advice/advice-subject.ts';
import { type BegunJob, begunJob } from '../planning/cutting/begun/begun-job.ts';
import { openLayouts } from '../planning/cutting/begun/open-layouts.ts';
import { costOf } from '../planning/cutting/begun/plan-begun.ts';
import { type AskedQuestion, cuttingQuestion } from '../planning/cutting/found/cutting-question.ts';
import { foundCost } from '../planning/cutting/found/with-found.ts';
import { materialBlanks } from '../planning/cutting/material-blanks.ts';
import type { StockLayout } from '../planning/plan-output.ts';
import { adviceName, type CuttingAnswer } from './cutting-answers.ts';

/** The cutting question of one material of a plan, and what advice on it would be worked out from. */
export interface MaterialLook {
  /** Where sheets are being cut: of what is laid beside them. */
  readonly asked: AskedQuestion;
  readonly subject: AdviceSubject;
  /** The layouts that answer the question. */
  readonly layouts: readonly StockLayout[];
  /** Null where no sheet is being cut. */
  readonly begun: BegunLook | null;
}

export interface BegunLook {
  /** The plan stays as it was begun: there is nothing to search. */
  readonly whole: boolean;
  /** What the sheets that stay cost, in the unit of the question's costs, and how many of them are bought. */
  readonly cost: number;
  readonly bought: number;
}

const known = new WeakMap<PlannedProject, ReadonlyMap<string, MaterialLook>>();

/** The materials of a plan that have something to search, by product id; worked out once for each plan. */
export function materialLooks(entry: PlannedProject): ReadonlyMap<string, MaterialLook> {
  let looks = known.get(entry);
  if (looks === undefined) {
    looks = new Map(
      entry.plan.materials.flatMap(({ id, layouts }): [string, MaterialLook][] => {
        const asked = cuttingQuestion(entry.input, entry.plan.parts, id);
        const subject = adviceSubject(entry.input, entry.plan.parts, id);
        if (asked === null || subject === null) return [];
        const begun = begunOf(entry, id);
        if (begun === null) return [[id, { asked, subject, layouts, begun }]];
        const open = begun.whole ? layouts : openLayouts(layouts, begun.layouts);
        return [[id, { asked, subject, layouts: open, begun: lookOf(begun) }]];
      }),
    );
    known.set(entry, looks);
  }
  return looks;
}

function begunOf({ input, plan }: PlannedProject, id: string): BegunJob | null {
  const material = materialBlanks(input, plan.parts).find(({ product }) => product.id === id);
  return material === undefined ? null : begunJob(material, input);
}

function lookOf({ whole, layouts, all }: BegunJob): BegunLook {
  const bought = layouts.reduce((sum, { packId, count }) => sum + (packId === null ? 0 : count), 0);
  return { whole, cost: whole ? 0 : costOf(layouts, all), bought: whole ? 0 : bought };
}

/** The advice on a material as its best plan stands; null while there is none, or only on an earlier plan. */
export function adviceNow({ asked, subject, begun }: MaterialLook, answer: CuttingAnswer | undefined) {
  // What would change the sheets that are being cut is no advice, and what is left of them says too little.
  if (begun?.whole === false) return null;
  if (answer === undefined || answer.advice === null) return null;
  const cost = foundCost(asked.question.job, answer.sheets);
  return answer.advice.of === adviceName(subject.hash, cost) ? { items: answer.advice.items, cost } : null;
}
