import type { Problem, ProblemCode, Severity } from '../problem.ts';
import type { RecipeStep } from '../project-input.ts';
import {
  DOUBTFUL_THINNING,
  MAX_COATS,
  MAX_SESSION_LOSS_L,
  MAX_THINNING,
  MIN_TRANSFER_EFFICIENCY,
} from './constants.ts';

/**
 * What is there to say about the numbers entered in a step?
 *
 * @param label the step in words
 * @param fits which of its numbers can be used
 * @returns a problem for each that cannot, and a warning for more thinner than product
 *
 * No source: the limits are the project document's and ours (`constants.ts`).
 */
export function stepValueProblems(
  step: RecipeStep,
  label: string,
  fits: {
    readonly coatsFit: boolean;
    readonly thinningFits: boolean;
    readonly efficiencyFits: boolean;
    readonly lossFits: boolean;
  },
): readonly Problem[] {
  const { id, coats, thinning, transferEfficiency, sessionLossL } = step;
  const found: Problem[] = [];
  const say = (
    field: string,
    message: string,
    wayOut: string,
    code: ProblemCode = 'step-value-invalid',
    severity: Severity = 'error',
  ): number =>
    found.push({ code, severity, at: { table: 'steps', id, field }, message: `${label} ${message}`, wayOut });
  if (!fits.coatsFit)
    say(
      'coats',
      `has ${coats} coats, which is not a whole number from 1 to ${MAX_COATS}.`,
      `Enter how many coats to lay, from 1 to ${MAX_COATS}.`,
    );
  if (!fits.thinningFits)
    say(
      'thinning',
      `is thinned by ${thinning}, which is not a share from 0 to ${MAX_THINNING}.`,
      'Enter 0.1 for 10 % of the volume.',
    );
  else if (thinning > DOUBTFUL_THINNING)
    say(
      'thinning',
      `is thinned by ${thinning}, which is more thinner than product.`,
      'Keep it for a washcoat; enter 0.1 if 10 % is meant.',
      'step-value-invalid',
      'warning',
    );
  if (!fits.efficiencyFits)
    say(
      'transferEfficiency',
      `has a transfer efficiency of ${transferEfficiency}, which is not from ${MIN_TRANSFER_EFFICIENCY} to 1.`,
      "Enter the share that ends on the work, such as 0.65, or clear it to take the method's figure.",
      'transfer-efficiency-invalid',
    );
  if (!fits.lossFits)
    say(
      'sessionLossL',
      `leaves ${sessionLossL} L in brush, tray or gun, which is not from 0 to ${MAX_SESSION_LOSS_L} L.`,
      "Enter the litres that stay behind, or clear it to take the method's figure.",
    );
  return found;
}
