import type { CalendarTaskPlan } from '../../calendar/calendar-plan.ts';
import { stepProducts } from '../../calendar/project/step-products.ts';
import type { CoatPlan, RecipePlan } from '../../plan-output.ts';
import type { Product } from '../../product.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { AirCoat } from '../air-check-input.ts';
import type { Emission } from '../emission-phases.ts';
import { productVapour } from './product-vapour.ts';

/** What of a task of the calendar the air check goes by. */
export type AirTask = Pick<
  CalendarTaskPlan,
  'id' | 'recipeId' | 'stepId' | 'number' | 'name' | 'areaM2' | 'layFromMinute' | 'touchDryMinute'
>;

type AirRecipe = Pick<RecipePlan, 'id' | 'areaM2' | 'coats'>;

/** One liquid of one coat of the calendar, as the air check takes it. */
export interface AirCoatOfTask extends AirCoat {
  readonly task: AirTask;
  /** Null where the step does not say what is laid. */
  readonly product: Product | null;
  readonly stepId: string;
  readonly vocSource: string;
  /** Of this liquid over the whole recipe; null where not known. */
  readonly wholeLitres: number | null;
  readonly wholeAreaM2: number | null;
}

/**
 * Which vapours does each coat of the calendar give off, and when?
 *
 * @param input the project, for products and solvents
 * @param plan its plan, for the litres of each coat
 * @param tasks of its calendar; minutes, m2 of each batch
 * @returns one entry per coat and liquid in it, thinner and hardener included; litres, g/L and minutes
 *
 * Source: a rule of ours: litres are shared out over batches by area, and what is laid together evaporates together; the
 * shortest touch-dry time on the labels counts, as it puts most vapour into the air. Valid range: any plan. Departures:
 * the cold slows drying and lowers the peak; it is left out. What was measured for a coat that is done stands in place
 * of what was planned. Example: half of a coat of 0.8 L: 0.4 L.
 */
export function airCoats(
  input: ProjectInput,
  plan: { readonly recipes: readonly AirRecipe[] },
  tasks: readonly AirTask[],
): AirCoatOfTask[] {
  const used = new Map(input.doneTasks.map(({ taskId, litres }) => [taskId, litres]));
  return tasks.flatMap((task): AirCoatOfTask[] => {
    if (task.layFromMinute === null) return [];
    const recipe = plan.recipes.find(({ id }) => id === task.recipeId);
    const coat = recipe?.coats.find(({ stepId, number }) => stepId === task.stepId && number === task.number);
    const step = input.recipes
      .find(({ id }) => id === task.recipeId)
      ?.steps.find(({ id }) => id === task.stepId);
    const share = areaShare(task, recipe);
    const base = {
      task,
      stepId: task.stepId,
      wholeLitres: null,
      wholeAreaM2: recipe?.areaM2.value ?? null,
      startMinute: task.layFromMinute,
      emission: emissionOf(step === undefined ? [] : stepProducts(step, input).laid),
    };
    if (coat === undefined || coat.shares.length === 0) return [{ ...base, ...unknownLiquid(task) }];
    const measured = measuredFactor(used.get(task.id) ?? null, coat, share);
    return coat.shares.map((liquid) => {
      const product = input.catalogue.products.find(({ id }) => id === liquid.id) ?? null;
      const vapour = product === null ? null : productVapour(product, input.catalogue);
      const litres = liquid.litres.value;
      return {
        ...base,
        id: `${task.id}~${liquid.id}`,
        name: `${liquid.name}, coat ${task.number}`,
        wholeLitres: litres,
        litres: litres === null || share === null ? null : litres * share * measured,
        vocGPerL: vapour?.vocGPerL ?? null,
        vocSource: vapour?.vocSource ?? '',
        solvents: vapour?.solvents ?? [],
        product,
      };
    });
  });
}

/** What of a coat falls on one batch; null where the area of the recipe is not known. */
function areaShare({ areaM2 }: AirTask, recipe: AirRecipe | undefined): number | null {
  const whole = recipe?.areaM2.value ?? null;
  return whole === null || whole <= 0 ? null : areaM2 / whole;
}

function measuredFactor(usedL: number | null, coat: CoatPlan, share: number | null): number {
  const planned = coat.litres.value;
  return usedL === null || planned === null || share === null || planned * share <= 0
    ? 1
    : usedL / (planned * share);
}

function unknownLiquid(task: AirTask) {
  return {
    id: task.id,
    name: `${task.name === '' ? 'a coat without a product' : task.name}, coat ${task.number}`,
    litres: null,
    vocGPerL: null,
    vocSource: '',
    solvents: [],
    product: null,
  };
}

/** Unknown where any product's time is unknown: then all at once, which is never too little. */
function emissionOf(products: readonly Product[]): Emission {
  const times = products.map(
    ({ figures: { touchDry } }) => touchDry?.low ?? touchDry?.typical ?? touchDry?.high ?? null,
  );
  const known = times.filter((time) => time !== null && time > 0);
  return times.length === 0 || known.length < times.length
    ? { kind: 'all-at-once' }
    : { kind: 'touch-dry', touchDryMin: Math.min(...(known as number[])) };
}
