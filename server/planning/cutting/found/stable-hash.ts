/** FNV-1a constants for 32 bits, exact; the second start is any other odd number. */
const PRIME = 0x01000193;
const FIRST_START = 0x811c9dc5;
const SECOND_START = 0x9747b28d;

/**
 * A short name for a text: equal texts have equal names on every machine, and different ones different names for all
 * that can happen by chance.
 *
 * `text`: any. Result: 16 hexadecimal digits. Not a secret: whoever wants two texts of one name can make them.
 * Source: G. Fowler, L. C. Noll and P. Vo, FNV-1a (IETF draft-eastlake-fnv), over the text's 16-bit units, twice with
 * different starts.
 * Example: stableHash('') is "811c9dc59747b28d", the two starts.
 */
export function stableHash(text: string): string {
  let first = FIRST_START;
  let second = SECOND_START;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    first = Math.imul(first ^ unit, PRIME);
    second = Math.imul(second ^ unit ^ (second >>> 15), PRIME);
  }
  return hex(first) + hex(second);
}

function hex(word: number): string {
  return (word >>> 0).toString(16).padStart(8, '0');
}
