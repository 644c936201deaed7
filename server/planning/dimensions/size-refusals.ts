import { MAX_TEXT } from './constants.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

/** What is answered to a text beyond 200 characters, before it is looked at? No units. A rule of ours. */
export function tooLong(text: string): Refusal {
  return refuse(
    'dimension-too-long',
    `The text is ${text.length} characters long: ${quoted(text)}.`,
    `Type one size in at most ${MAX_TEXT} characters.`,
  );
}

/**
 * What is answered to `5/4 stock` and `2 x 4s`, names under which lumber is sold? No units. Source of the example:
 * American Softwood Lumber Standard PS 20, dry 2 x 4: 1-1/2 in by 3-1/2 in.
 */
export function nominal(text: string): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} is a nominal lumber name; the true size is smaller.`,
    'Type the measured size; a dressed 2 x 4, for one, is 1 1/2" by 3 1/2".',
  );
}

/** What is answered to a fraction without a unit in a metric project? No units. A rule of ours: ask. */
export function fractionOfMm(text: string): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} is a fraction without a unit, and this project is in millimetres.`,
    `Write ${text}" for inches, or ${text} mm.`,
  );
}

/** What is answered to two sizes in a cell for one? No units. Source of the example: PS 20, as above. */
export function severalSizes(text: string): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} holds more than one size, or is a lumber name.`,
    'Type one measured size; a dressed 2 x 4, for one, is 1 1/2" by 3 1/2".',
  );
}
