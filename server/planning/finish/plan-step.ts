import { COAT_STEPS, type RecipeStep } from '../project-input.ts';
import { planCoatStep } from './plan-coat-step.ts';
import { planDryStep } from './plan-dry-step.ts';
import type { StepContext, StepPlan } from './step-context.ts';

/**
 * The coats or passes of one recipe step. Curing, and dusting off without a cloth, use nothing and give none.
 *
 * Source: `planCoat`, `planDryPass`. A step whose number of coats cannot be used gives one coat without figures, so
 * that the need says it is incomplete rather than looking like less.
 */
export function planStep(step: RecipeStep, context: StepContext): StepPlan {
  if (isCoatStep(step)) return planCoatStep(step, context);
  if (step.kind === 'cure' || (step.kind === 'dust' && step.productId === ''))
    return { coats: [], problems: [] };
  return planDryStep(step, context);
}

function isCoatStep({ kind }: RecipeStep): boolean {
  return COAT_STEPS.some((coat) => coat === kind);
}
