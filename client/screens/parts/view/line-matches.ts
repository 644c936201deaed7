import { rawText } from '../part-cell-views.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import type { PartSheetRow } from '../part-sheet-row.ts';
import type { FilterField, ListView } from './list-view.ts';

/** The columns in which the search looks, as their cells show. */
const SEARCHED = ['name', 'section', 'length', 'width', 'materialId', 'note'] as const;

/** A line's searched text, worked out once per line and set of columns. */
const texts = new WeakMap<PartSheetRow, string>();

/**
 * Whether a line is shown by search and filters. Every word of the search has to be found in it, whatever the case;
 * a word that begins with a digit has to begin a number, so that 600 does not find 1600.
 */
export function lineMatches(
  { search, filters }: Pick<ListView, 'search' | 'filters'>,
  columns: ReadonlyMap<string, PartColumn>,
): (line: PartSheetRow) => boolean {
  const words = fold(search).split(/\s+/).filter(Boolean);
  const chosen = Object.entries(filters) as [FilterField, ReadonlySet<string>][];
  return (line) =>
    chosen.every(([field, values]) => values.has(rawText(line, field))) &&
    (words.length === 0 || words.every((word) => hasWord(searchedText(line, columns), word)));
}

function hasWord(text: string, word: string): boolean {
  if (!/^\d/.test(word)) return text.includes(word);
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1))
    if (!/[\d.,]/.test(text[at - 1] ?? '')) return true;
  return false;
}

function searchedText(line: PartSheetRow, columns: ReadonlyMap<string, PartColumn>): string {
  const known = texts.get(line);
  if (known !== undefined) return known;
  const shown = SEARCHED.map((id) => {
    const view = columns.get(id)?.view(line);
    return view === undefined ? '' : `${view.text} ${view.title ?? ''}`;
  });
  // A line break between cells, so that no match reaches from one into the next.
  const text = fold(shown.join('\n'));
  texts.set(line, text);
  return text;
}

function fold(text: string): string {
  return text.toLocaleLowerCase();
}
