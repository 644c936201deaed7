import type { AdviceView, MaterialSearch } from '../http/contract.ts';
import type { PlannedProject } from '../http/project-plans.ts';
import { adviceSentence } from '../planning/cutting/advice/advice-sentence.ts';
import type { CuttingAdvice } from '../planning/cutting/advice/cutting-advice.ts';
import type { MaterialPlan } from '../planning/plan-output.ts';
import type { CuttingAnswer } from './cutting-answers.ts';
import { adviceNow, type MaterialLook } from './material-looks.ts';
import { partName } from './part-name.ts';

/** How the search of one material stands, as a window shows it. */
export function searchState(
  entry: PlannedProject,
  material: MaterialPlan,
  look: MaterialLook | undefined,
  answer: CuttingAnswer | undefined,
  phase: Pick<MaterialSearch, 'state' | 'since' | 'budgetMs'>,
): MaterialSearch {
  const inMoney = look !== undefined && !look.subject.job.byArea;
  const advice = look === undefined ? null : (adviceNow(look, answer)?.items ?? null);
  return {
    id: material.id,
    ...phase,
    searchedMs: Math.round(answer?.searchedMs ?? 0),
    complete: answer?.complete ?? false,
    stocks: material.stocks.value,
    boundStocks: material.boundStocks.value,
    costMinor: material.costMinor.value,
    boundCostMinor: inMoney && answer !== undefined ? answer.boundCost + (look.begun?.cost ?? 0) : null,
    advice: advice?.map((one) => adviceView(one, entry, material)) ?? null,
  };
}

function adviceView(
  advice: CuttingAdvice,
  { project, input }: PlannedProject,
  material: MaterialPlan,
): AdviceView {
  const { change, before, after } = advice;
  const packs = input.catalogue.products.find(({ id }) => id === material.id)?.packs ?? [];
  const sentence = adviceSentence(advice, {
    settings: project.settings,
    kind: material.kind,
    partName: (id) => partName(project.rows.parts, id),
    packLabel: (id) => packs.find((pack) => pack.id === id)?.label ?? id,
  });
  const partIds = change.kind === 'grain' ? change.partIds : 'partId' in change ? [change.partId] : [];
  return { kind: change.kind, partIds, sentence, before, after };
}
