import { UNIT_WORDS } from './constants.ts';
import { FUNCTION_NAMES } from './expression-functions.ts';
import { nameKey } from './name-key.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

/**
 * Why can a named size not be called so? `name`: as typed. Result: null when calculations can use it; else the
 * refusal. Letters, digits and underscores make a name; units and functions have theirs already. No units, no source:
 * the grammar is ours.
 *
 * Example: "seat depth" and "mm" are refused, "seat_depth" and "mm_left" are not.
 */
export function sizeNameFault(name: string): Refusal | null {
  if (!/^[\p{L}_][\p{L}\p{N}_]*$/u.test(name))
    return refuse(
      'expression-invalid',
      name.trim() === '' ? 'A size needs a name.' : `${quoted(name)} cannot be the name of a size.`,
      'Use letters, digits and underscores, starting with a letter, such as seat_depth.',
    );
  return UNIT_WORDS.has(nameKey(name)) || FUNCTION_NAMES.includes(nameKey(name))
    ? refuse(
        'expression-invalid',
        `${quoted(name)} already means a unit or a function.`,
        'Choose another name.',
      )
    : null;
}

/** What is answered where two sizes are to have one name? No units, no source. */
export function sizeNameTaken(name: string): Refusal {
  return refuse(
    'expression-invalid',
    `The name ${quoted(name)} is given to two sizes.`,
    'Rename one of them.',
  );
}
