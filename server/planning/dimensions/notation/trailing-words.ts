import { MATERIAL_WORDS, ROLE_WORDS, type SizeRole } from '../constants.ts';
import type { Token } from './split-tokens.ts';

/**
 * Which words after a size can be passed over, and what do they say the size is?
 *
 * `from`: index of the first token after the size. Result: the role (`wide`, `long`, `thick` ...) or null, and the
 * index of the first token that is not such a word. No units. A rule of ours.
 *
 * Example: after `.714"` the word `wide` gives the role width.
 */
export function trailingWords(
  tokens: readonly Token[],
  from: number,
): { readonly role: SizeRole | null; readonly next: number } {
  let at = from;
  let role: SizeRole | null = null;
  for (let token = tokens[at]; token?.type === 'word'; token = tokens[++at]) {
    const word = token.text.toLowerCase();
    const named = ROLE_WORDS.get(word);
    if (named === undefined && !MATERIAL_WORDS.has(word)) break;
    role = role ?? named ?? null;
  }
  return { role, next: at };
}
