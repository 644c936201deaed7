import type { Catalogue } from '../../../server/planning/product.ts';
import type { Choice } from '../../fields/choice-input.ts';

/** The suppliers that are offered, and the one chosen even when it is retired. */
export function supplierChoices({ suppliers }: Catalogue, chosen = ''): readonly Choice[] {
  const offered = suppliers.filter(({ id, retired }) => !retired || id === chosen);
  return [{ value: '', text: 'not chosen' }, ...offered.map(({ id, name }) => ({ value: id, text: name }))];
}
