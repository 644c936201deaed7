import type { ApplicationMethod, StepKind } from '../../../planning/project-input.ts';

/** Steps of a recipe and ways to lay a coat, as tables name them. */

export const KIND_WORDS: Readonly<Record<StepKind, string>> = {
  sand: 'sand',
  dust: 'dust off',
  condition: 'condition',
  stain: 'stain',
  seal: 'seal',
  topcoat: 'topcoat',
  scuff: 'scuff-sand',
  cure: 'cure',
};

export const METHOD_WORDS: Readonly<Record<ApplicationMethod, string>> = {
  brush: 'brush',
  roller: 'roller',
  wipe: 'wipe',
  'spray-hvlp': 'spray, HVLP',
  'spray-airless': 'spray, airless',
  'spray-air': 'spray, air',
};
