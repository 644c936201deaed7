import type { CellEdit, Choice } from '../../grid/grid-column.ts';
import { matchChoice } from '../../grid/match-choice.ts';
import { HIDDEN_EDGE, type PartBook } from './part-book.ts';
import { GRAIN_CHOICES, SHAPE_CHOICES } from './part-choices.ts';
import type { PartField } from './part-sheet-row.ts';

export interface PartWrite {
  readonly key: string;
  readonly values: Readonly<Partial<Record<PartField, string>>>;
}

/** What people write in an edge cell when they mean that nothing is to be seen there. */
const NOTHING_SEEN = new Set(['', '-', '–', '—', 'no', 'none', 'x']);

/**
 * What cell texts mean for the rows they stand in: one write per row, in the order given. Product and recipe names
 * become ids; a name nobody knows is kept as typed, so that the plan can mark it. Only the grain and the shape are
 * closed lists: anything else there is refused, with a sentence for the reader.
 */
export function partWrites(
  edits: readonly CellEdit[],
  book: PartBook,
): { readonly writes: readonly PartWrite[]; readonly refused: readonly string[] } {
  const rows = new Map<string, Partial<Record<PartField, string>>>();
  const refused: string[] = [];
  for (const { key, columnId, text } of edits) {
    const field = columnId as PartField;
    const stored = storedText(field, text, book);
    if (stored === null) {
      refused.push(refusal(field, text));
      continue;
    }
    const values = rows.get(key) ?? {};
    rows.set(key, values);
    values[field] = stored;
  }
  return { writes: [...rows].map(([key, values]) => ({ key, values })), refused };
}

/** Null when the field takes one of a few words and this is none of them. */
function storedText(field: PartField, text: string, book: PartBook): string | null {
  const trimmed = text.trim();
  switch (field) {
    case 'materialId':
      return matchChoice(book.materialChoices, trimmed)?.value ?? trimmed;
    case 'showRecipeId':
    case 'backRecipeId':
      return matchChoice(book.recipeChoices, trimmed)?.value ?? trimmed;
    case 'edgeFront':
    case 'edgeBack':
    case 'edgeLeft':
    case 'edgeRight':
      if (NOTHING_SEEN.has(trimmed.toLowerCase())) return HIDDEN_EDGE;
      return matchChoice(book.edgeChoices, trimmed)?.value ?? trimmed;
    case 'grain':
      return matchChoice(GRAIN_CHOICES, trimmed)?.value ?? null;
    case 'shape':
      return matchChoice(SHAPE_CHOICES, trimmed)?.value ?? null;
    default:
      return trimmed;
  }
}

function refusal(field: PartField, text: string): string {
  const choices: readonly Choice[] = field === 'grain' ? GRAIN_CHOICES : SHAPE_CHOICES;
  const words = choices.map((choice) => `“${choice.text}”`).join(', ');
  return `“${text}” is not a ${field === 'grain' ? 'grain direction' : 'shape'}; the choices are ${words}.`;
}
