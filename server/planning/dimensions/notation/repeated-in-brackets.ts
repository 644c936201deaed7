import type { UnitSystem } from '../../project-input.ts';
import { SAME_SIZE_WITHIN } from '../constants.ts';
import type { SizeSetReading } from '../read-size-set.ts';
import { quoted, type Refusal, refuse } from '../refusal.ts';
import type { Token } from './split-tokens.ts';

/**
 * Does what is left of the text only repeat the sizes in brackets, in another unit?
 *
 * `rest`: first token left over. `sizesMm`: what was read before it. `readSizes`: reads what the brackets hold. Result: null when the brackets hold as many
 * sizes, each within 2 % of its fellow (`203,2mm X 15m (8''x49')`), else a refusal. A rule of ours.
 *
 * Example: 19 mm with `(3/4")`, which is 19.05 mm, passes; 18 mm does not.
 */
export function repeatedInBrackets(
  text: string,
  rest: Token,
  sizesMm: readonly number[],
  readSizes: (text: string, units: UnitSystem) => SizeSetReading,
): Refusal | null {
  const inner =
    rest.type === 'open' ? /^[([]([^()[\]]*)[)\]]$/u.exec(text.slice(rest.start))?.[1] : undefined;
  if (inner === undefined)
    return refuse(
      'dimension-unreadable',
      `${quoted(text.slice(rest.start))} in ${quoted(text)} cannot be read.`,
      'Type only the size, such as 600 mm or 23 5/8".',
    );
  const again = readSizes(inner, 'us');
  const same =
    again.ok &&
    again.sizes.length === sizesMm.length &&
    again.sizes.every(({ mm }, place) => {
      const first = sizesMm[place] ?? 0;
      return Math.abs(mm - first) <= SAME_SIZE_WITHIN * first;
    });
  return same
    ? null
    : refuse(
        'dimension-ambiguous',
        `The brackets in ${quoted(text)} do not repeat the size before them.`,
        'Type the size once.',
      );
}
