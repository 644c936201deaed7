import type { CalendarTaskPlan } from '../../calendar/calendar-plan.ts';
import { isDate } from '../../calendar/is-date.ts';
import { stepProducts } from '../../calendar/project/step-products.ts';
import type { CoatPlan, RecipePlan } from '../../plan-output.ts';
import type { DoneTask, ProjectInput, RecipeStep } from '../../project-input.ts';
import type { BuyingCalendar } from '../dates/needed-by.ts';
import { dateOfMinute } from '../dates/needed-by.ts';

/** What one finished task took of one product. */
export interface CoatUse {
  readonly taskId: string;
  /** Row that ticks it off; null when only a later task of the batch is ticked off. */
  readonly doneTaskId: string | null;
  readonly stepId: string;
  readonly productId: string;
  /** YYYY-MM-DD, or empty. */
  readonly date: string;
  readonly areaM2: number | null;
  /** In the product's unit, as reckoned; null when not known. */
  readonly planned: number | null;
  /** As measured, else as reckoned. */
  readonly used: number;
  readonly measured: boolean;
}

/**
 * What did the finished tasks of the calendar take from stock?
 *
 * @param recipes the finish plan: litres, pieces and m2 of each coat over all parts
 * @param calendar its tasks, with area m2; null when there is none yet
 * @returns per task and product the reckoned and the used amount. Measured litres are of the mixed liquid and fall on
 *   its products as reckoned; a task without them took what was reckoned. A task whose amount is neither measured nor
 *   known is left out.
 *
 * Source: a rule of ours; a coat is shared out over its tasks by area, as in `taskLitres`. Valid range: any. Departures:
 * a measured task that the calendar no longer has counts as used, and as reckoned so.
 * Example: a coat of 0.6 L on 6 m2, a task of 2 m2 with 0.25 L measured: 0.2 L planned, 0.25 L used.
 */
export function coatUses(
  input: ProjectInput,
  recipes: readonly RecipePlan[],
  calendar: BuyingCalendar | null,
): readonly CoatUse[] {
  const uses: CoatUse[] = [];
  const rows = new Map(input.doneTasks.map((row) => [row.taskId, row]));
  const steps = new Map(
    input.recipes.flatMap((recipe) => recipe.steps.map((step) => [step.id, step] as const)),
  );
  const seen = new Set<string>();
  for (const task of calendar?.plan.tasks ?? []) {
    const row = rows.get(task.id);
    if (row === undefined && task.state !== 'done' && task.state !== 'assumed') continue;
    seen.add(task.id);
    const date = dateOf(row) || (calendar === null ? '' : dateOfMinute(task.endMinute, calendar));
    uses.push(...usesOf(task, row, date));
  }
  for (const row of input.doneTasks) {
    if (seen.has(row.taskId) || row.litres === null) continue;
    const [, stepId = '', number = ''] = TASK_END.exec(row.taskId) ?? [];
    uses.push(...usesOf({ id: row.taskId, stepId, number: Number(number) }, row, dateOf(row)));
  }
  return uses;

  function usesOf(task: KnownTask, row: DoneTask | undefined, date: string): readonly CoatUse[] {
    const step = steps.get(task.stepId);
    const recipe = recipes.find(({ coats }) => coats.some(({ stepId }) => stepId === task.stepId));
    const coat = recipe?.coats.find(({ stepId, number }) => stepId === task.stepId && number === task.number);
    if (step === undefined) return [];
    const areaM2 = task.areaM2 ?? null;
    const total = recipe?.areaM2.value ?? null;
    const share = areaM2 === null || total === null || total <= 0 ? null : areaM2 / total;
    const litres = row?.litres ?? null;
    return amountsOf(step, coat, share, litres).map(({ productId, planned, used }) => ({
      taskId: task.id,
      doneTaskId: row?.id ?? null,
      stepId: task.stepId,
      productId,
      date,
      areaM2,
      planned,
      used,
      measured: litres !== null,
    }));
  }

  function amountsOf(
    step: RecipeStep,
    coat: CoatPlan | undefined,
    share: number | null,
    litres: number | null,
  ): readonly { readonly productId: string; readonly planned: number | null; readonly used: number }[] {
    if (coat === undefined || coat.method === null) {
      const pieces = coat?.pieces.value ?? null;
      if (pieces === null || share === null || step.productId === '') return [];
      return [{ productId: step.productId, planned: pieces * share, used: pieces * share }];
    }
    const whole = coat.litres.value;
    const reckoned = coat.shares.filter((one) => one.litres.value !== null);
    if (whole === null || whole <= 0 || reckoned.length === 0) {
      const { laid } = stepProducts(step, input);
      const [only] = laid;
      if (litres === null || only === undefined || laid.length > 1) return [];
      return [{ productId: only.id, planned: null, used: litres }];
    }
    return reckoned.flatMap(({ id, litres: { value } }) => {
      const ofProduct = value ?? 0;
      const planned = share === null ? null : ofProduct * share;
      const used = litres === null ? planned : (ofProduct / whole) * litres;
      return used === null ? [] : [{ productId: id, planned, used }];
    });
  }
}

type KnownTask = Pick<CalendarTaskPlan, 'id' | 'stepId' | 'number'> & { readonly areaM2?: number };

/** Ids of tasks end in the step and the number of the coat. */
const TASK_END = /:([^:]+)-(\d+)$/;

function dateOf(row: DoneTask | undefined): string {
  const date = row?.end.trim().slice(0, 'YYYY-MM-DD'.length) ?? '';
  return isDate(date) ? date : '';
}
