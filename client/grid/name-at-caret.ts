import type { OfferedName } from './typing-help.ts';

/** Most names offered at once; typing one more letter brings up the others. */
const MOST_OFFERED = 8;

const NAME_PART = /[\p{L}\p{N}_]/u;
const NAME = /^[\p{L}_][\p{L}\p{N}_]*$/u;
/** Behind one of these, spaces aside, a calculation goes on with a size, a name or a bracket. */
const BEFORE_NAME = '=+-−*×·/÷(,;';

/** The name, or the empty place for one, in front of the caret of a text. */
export interface NamePlace {
  readonly start: number;
  readonly end: number;
  /** What of it stands in front of the caret. */
  readonly typed: string;
}

/**
 * Where in a calculation a name is being typed. Null in a text that is none, and where no name can stand: in a number
 * and in the unit behind it.
 */
export function nameAtCaret(text: string, caret: number): NamePlace | null {
  if (!text.slice(0, caret).trimStart().startsWith('=')) return null;
  let start = caret;
  while (start > 0 && NAME_PART.test(text[start - 1] ?? '')) start -= 1;
  let end = caret;
  while (end < text.length && NAME_PART.test(text[end] ?? '')) end += 1;
  const word = text.slice(start, end);
  if (word !== '' && !NAME.test(word)) return null;
  const before = text.slice(0, start).trimEnd().at(-1) ?? '';
  return BEFORE_NAME.includes(before) && before !== ''
    ? { start, end, typed: text.slice(start, caret) }
    : null;
}

export interface OfferedNames {
  readonly names: readonly OfferedName[];
  /** The one that Enter and Tab take, -1 for none: nothing is typed yet, or what is typed is a name by itself. */
  readonly marked: number;
}

/** The names that go on from what is typed: those that begin so, then those that hold it. */
export function offeredNames(all: readonly OfferedName[], typed: string): OfferedNames {
  const sought = key(typed);
  const usable = all.filter(({ name }) => NAME.test(name));
  const exact = usable.some(({ name }) => key(name) === sought);
  const others = usable.filter(({ name }) => key(name) !== sought);
  const names = [
    ...others.filter(({ name }) => key(name).startsWith(sought)),
    ...others.filter(({ name }) => !key(name).startsWith(sought) && key(name).includes(sought)),
  ].slice(0, MOST_OFFERED);
  return { names, marked: typed === '' || exact || names.length === 0 ? -1 : 0 };
}

/** As the server compares names: capitals do not count. */
function key(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
