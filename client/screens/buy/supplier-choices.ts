import type { Catalogue } from '../../../server/planning/product.ts';
import type { Choice } from '../../fields/choice-input.ts';

export function supplierChoices({ suppliers }: Catalogue): readonly Choice[] {
  return [{ value: '', text: 'not chosen' }, ...suppliers.map(({ id, name }) => ({ value: id, text: name }))];
}
