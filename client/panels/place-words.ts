import type { RowTable } from '../../server/http/contract.ts';
import type { ProblemPlace, ProblemTable } from '../../server/planning/problem.ts';
import type { AppState } from '../state/store.ts';

const TABLE_WORDS: Record<ProblemTable, string> = {
  parts: 'Part',
  recipes: 'Finish',
  steps: 'Finish step',
  blends: 'Blend',
  components: 'Blend',
  rules: 'Usage rule',
  extras: 'Extra line',
  onHand: 'On hand',
  measurements: 'Measured thickness',
  sizes: 'Named size',
  shopHours: 'Working window',
  daysOff: 'Day off',
  climateRows: 'Climate row',
  pins: 'Pinned task',
  doneTasks: 'Done task',
  arrivals: 'Arrival',
  budgets: 'Budget',
  orders: 'Order',
  orderLines: 'Order line',
  receipts: 'Delivery',
  stockUses: 'Stock use',
  payments: 'Payment',
  substitutes: 'Substitute',
  workHours: 'Hours',
  quotes: 'Quote',
  suppliers: 'Supplier',
  settings: 'Settings',
  products: 'Catalogue',
  document: 'Project',
};

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
  if (id === null) return TABLE_WORDS[table];
  if (table === 'products') return state.catalogue?.products.find((product) => product.id === id)?.name ?? id;
  if (table === 'suppliers')
    return state.catalogue?.suppliers.find((supplier) => supplier.id === id)?.name ?? id;
  if (table === 'settings' || table === 'document') return TABLE_WORDS[table];
  const rows: readonly { readonly id: string; readonly name?: string }[] =
    state.project?.rows[table satisfies RowTable] ?? [];
  const index = rows.findIndex((row) => row.id === id);
  const name = rows[index]?.name;
  if (name !== undefined && name !== '') return name;
  return index < 0 ? TABLE_WORDS[table] : `${TABLE_WORDS[table]} ${index + 1}`;
}

/** A field's name as a reader says it: "edgeFront" is "edge front". */
export function fieldWords(field: string): string {
  return (
    FIELD_WORDS[field] ?? field.replace(/Id$/, '').replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
  );
}
