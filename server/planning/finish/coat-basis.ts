import type { Figure } from '../figure.ts';
import type { ApplicationMethod } from '../project-input.ts';
import type { Reading } from './read-figure.ts';
import type { StepValues } from './step-values.ts';

/** What the figures of one coat are made from. */
export interface CoatBasis {
  /** Path of the coat: `recipes/3/coats/7-1`. */
  readonly path: string;
  readonly recipePath: string;
  readonly area: Figure;
  readonly method: ApplicationMethod;
  readonly values: StepValues;
  /** 1 but for the first coat on bare wood. */
  readonly firstCoatFactor: Reading;
  /** Null when the setting cannot be used. */
  readonly lossShare: number | null;
}
