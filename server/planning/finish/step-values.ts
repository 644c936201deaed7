import type { Problem } from '../problem.ts';
import type { RecipeStep } from '../project-input.ts';
import {
  MAX_COATS,
  MAX_SESSION_LOSS_L,
  MAX_THINNING,
  MIN_TRANSFER_EFFICIENCY,
  SESSION_LOSS_L,
  TRANSFER_EFFICIENCY,
} from './constants.ts';
import type { Reading } from './read-figure.ts';
import { stepValueProblems } from './step-value-problems.ts';

/** The numbers of a step, each null where what was entered cannot be used. */
export interface StepValues {
  readonly coats: number | null;
  readonly transferEfficiency: Reading;
  readonly sessionLossL: Reading;
  readonly thinning: number | null;
  readonly problems: readonly Problem[];
}

/**
 * Which numbers does a step go by, and which of those entered cannot be used?
 *
 * @param step coats 1 to 20 in whole numbers; transfer efficiency 0.01 to 1, session loss 0 to 1000 L, thinning 0
 *   to 10 as a share of the product's volume
 * @param label the step in words
 * @returns each number with its source; what is left open takes the method's figure
 *
 * Source: `TRANSFER_EFFICIENCY` names one per method; session losses are common practice, no source.
 */
export function stepValues(step: RecipeStep, label: string): StepValues {
  const { coats, thinning, transferEfficiency, sessionLossL } = step;
  const coatsFit = Number.isInteger(coats) && coats >= 1 && coats <= MAX_COATS;
  const thinningFits = thinning >= 0 && thinning <= MAX_THINNING;
  const efficiencyFits =
    transferEfficiency === null || (transferEfficiency >= MIN_TRANSFER_EFFICIENCY && transferEfficiency <= 1);
  const lossFits = sessionLossL === null || (sessionLossL >= 0 && sessionLossL <= MAX_SESSION_LOSS_L);
  return {
    coats: coatsFit ? coats : null,
    thinning: thinningFits ? thinning : null,
    transferEfficiency: efficiencyFits ? efficiencyReading(step) : unusable(transferEfficiency),
    sessionLossL: lossFits ? lossReading(step) : unusable(sessionLossL),
    problems: stepValueProblems(step, label, { coatsFit, thinningFits, efficiencyFits, lossFits }),
  };
}

function efficiencyReading({ method, transferEfficiency }: RecipeStep): Reading {
  const { share, source } = TRANSFER_EFFICIENCY[method];
  return transferEfficiency === null
    ? { value: share, source: `${method}: ${source}`, notes: [] }
    : { value: transferEfficiency, source: 'entered in the step', notes: [] };
}

function lossReading({ method, sessionLossL }: RecipeStep): Reading {
  return sessionLossL === null
    ? { value: SESSION_LOSS_L[method], source: `${method}: common practice, no source`, notes: [] }
    : { value: sessionLossL, source: 'entered in the step', notes: [] };
}

function unusable(entered: number | null): Reading {
  return { value: null, source: `entered in the step as ${entered}, which cannot be used`, notes: [] };
}
