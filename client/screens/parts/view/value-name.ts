import type { PartBook } from '../part-book.ts';
import type { FilterField } from './list-view.ts';

const NAMELESS: Record<FilterField, string> = {
  section: 'no section',
  materialId: 'no material',
  showRecipeId: 'no finish',
  backRecipeId: 'no finish',
};

/** What the list calls a value of a column that is filtered or grouped by; an id nobody knows stands as it is. */
export function valueName(field: FilterField, value: string, book: PartBook): string {
  if (value === '') return NAMELESS[field];
  switch (field) {
    case 'section':
      return value;
    case 'materialId':
      return book.products.get(value)?.shortName ?? value;
    case 'showRecipeId':
    case 'backRecipeId':
      return book.recipes.get(value)?.name ?? value;
  }
}
