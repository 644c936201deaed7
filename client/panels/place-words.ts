import type { RowTable } from '../../server/http/contract.ts';
import { tableTitle } from '../../server/planning/display/table-words.ts';
import type { ProblemPlace, ProblemTable } from '../../server/planning/problem.ts';
import type { AppState } from '../state/store.ts';

/** As the shared words, but a component is shown with its blend. */
function wordsOf(table: ProblemTable): string {
  return tableTitle(table === 'components' ? 'blends' : table);
}

/** Words for field names that do not read as words themselves. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  materialId: 'material',
  productId: 'product',
  blendId: 'blend',
  thinnerId: 'thinner',
  supplierId: 'supplier',
  showRecipeId: 'show face',
  backRecipeId: 'back face',
};

/** Where a problem sits, as a reader says it: "Plinth, length". */
export function placeWords(state: AppState, place: ProblemPlace): string {
  const field = place.field === null ? '' : fieldWords(place.field);
  return [nameOf(state, place), field].filter((word) => word !== '').join(', ');
}

function nameOf(state: AppState, { table, id }: ProblemPlace): string {
  if (id === null) return wordsOf(table);
  if (table === 'products') return state.catalogue?.products.find((product) => product.id === id)?.name ?? id;
  if (table === 'suppliers')
    return state.catalogue?.suppliers.find((supplier) => supplier.id === id)?.name ?? id;
  if (table === 'settings' || table === 'document') return wordsOf(table);
  const rows: readonly { readonly id: string; readonly name?: string }[] =
    state.project?.rows[table satisfies RowTable] ?? [];
  const index = rows.findIndex((row) => row.id === id);
  const name = rows[index]?.name;
  if (name !== undefined && name !== '') return name;
  return index < 0 ? wordsOf(table) : `${wordsOf(table)} ${index + 1}`;
}

/** A field's name as a reader says it: "edgeFront" is "edge front". */
export function fieldWords(field: string): string {
  return (
    FIELD_WORDS[field] ?? field.replace(/Id$/, '').replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
  );
}
