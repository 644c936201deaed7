import type { ImportPreview } from '../../server/http/contract.ts';

export type ImportColumn = ImportPreview['columns'][number];
type Field = ImportColumn['field'];

/**
 * The columns after one of them was said to be `field`. A field belongs to one column: the one that had it takes what
 * the other had when it is the length or the width that change places, and is left out otherwise.
 */
export function setColumnField(
  columns: readonly ImportColumn[],
  index: number,
  field: Field,
): readonly ImportColumn[] {
  const before = columns[index]?.field ?? 'ignore';
  const isAxis = (one: Field): boolean => one === 'length' || one === 'width';
  return columns.map((column, at) => {
    if (at === index) return { ...column, field };
    if (field === 'ignore' || column.field !== field) return column;
    return { ...column, field: isAxis(field) && isAxis(before) ? before : 'ignore' };
  });
}
