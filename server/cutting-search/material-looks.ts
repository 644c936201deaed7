import type { PlannedProject } from '../http/project-plans.ts';
import { type AdviceSubject, adviceSubject } from '../planning/cutting/advice/advice-subject.ts';
import { type AskedQuestion, cuttingQuestion } from '../planning/cutting/found/cutting-question.ts';
import { foundCost } from '../planning/cutting/found/with-found.ts';
import { adviceName, type CuttingAnswer } from './cutting-answers.ts';

/** The cutting question of one material of a plan, and what advice on it would be worked out from. */
export interface MaterialLook {
  readonly asked: AskedQuestion;
  readonly subject: AdviceSubject;
}

const known = new WeakMap<PlannedProject, ReadonlyMap<string, MaterialLook>>();

/** The materials of a plan that have something to search, by product id; worked out once for each plan. */
export function materialLooks(entry: PlannedProject): ReadonlyMap<string, MaterialLook> {
  let looks = known.get(entry);
  if (looks === undefined) {
    looks = new Map(
      entry.plan.materials.flatMap(({ id }): [string, MaterialLook][] => {
        const asked = cuttingQuestion(entry.input, entry.plan.parts, id);
        const subject = adviceSubject(entry.input, entry.plan.parts, id);
        return asked === null || subject === null ? [] : [[id, { asked, subject }]];
      }),
    );
    known.set(entry, looks);
  }
  return looks;
}

/** The advice on a material as its best plan stands; null while there is none, or only on an earlier plan. */
export function adviceNow({ asked, subject }: MaterialLook, answer: CuttingAnswer | undefined) {
  if (answer === undefined || answer.advice === null) return null;
  const cost = foundCost(asked.question.job, answer.sheets);
  return answer.advice.of === adviceName(subject.hash, cost) ? { items: answer.advice.items, cost } : null;
}
