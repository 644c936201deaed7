import type {
  ApplicationMethod,
  Recipe,
  StepKind,
  UsageRule,
} from '../../../server/planning/project-input.ts';
import type { Choice } from '../../fields/choice-input.ts';

/** Kinds of steps as they are listed and offered, in the order they usually come. */
export const STEP_WORDS: Readonly<Record<StepKind, string>> = {
  sand: 'Sand',
  dust: 'Dust off',
  condition: 'Condition',
  stain: 'Stain',
  seal: 'Seal',
  topcoat: 'Topcoat',
  scuff: 'Scuff-sand',
  cure: 'Cure',
};

export const METHOD_WORDS: Readonly<Record<ApplicationMethod, string>> = {
  brush: 'brush',
  roller: 'roller',
  wipe: 'wipe on',
  'spray-hvlp': 'spray, HVLP',
  'spray-airless': 'spray, airless',
  'spray-air': 'spray, compressed air',
};

export const FACES_WORDS: Readonly<Record<Recipe['faces'], string>> = {
  flip: 'one face, turn when dry to handle, then the other',
  points: 'both faces at once, on points',
};

export const PER_WORDS: Readonly<Record<UsageRule['per'], string>> = {
  'finish-area': 'finished area, once',
  'coat-area': 'area of every coat',
  'banding-metre': 'metre of banding',
  part: 'piece',
  project: 'project',
};

export function choicesFrom<Key extends string>(words: Readonly<Record<Key, string>>): readonly Choice[] {
  return (Object.keys(words) as Key[]).map((value) => ({ value, text: words[value] }));
}

/** Steps that lay a liquid, and steps that use an abrasive; the rest is waiting and dusting. */
export const LIQUID_STEPS: readonly StepKind[] = ['condition', 'stain', 'seal', 'topcoat'];
export const ABRASIVE_STEPS: readonly StepKind[] = ['sand', 'scuff'];
