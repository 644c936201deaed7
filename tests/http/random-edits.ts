import fc from 'fast-check';
import type { Change } from '../../db/change.ts';
import type { RowTable } from '../../db/project-rows.ts';

/** Random edits that a plan feels: rows, moves, settings, named sizes, recipes and their steps. */

const length = fc.constantFrom('600', '=depth', '=depth/2 + 20', '12 1/2"', '21 13/1', '', '880 mm');
export const anyEdit = fc.record({
  kind: fc.constantFrom(
    'part',
    'part',
    'add',
    'delete',
    'move',
    'settings',
    'size',
    'recipe',
    'step',
    'paste',
  ),
  row: fc.nat(9),
  text: length,
  number: fc.integer({ min: 1, max: 12 }),
});
export type RandomEdit = typeof anyEdit extends fc.Arbitrary<infer Value> ? Value : never;

/** The changes that an edit makes of a project with these rows; none when there is no row for it. */
export function changesOf(
  idsOf: (table: RowTable) => readonly string[],
  { kind, row, text, number }: RandomEdit,
): Change[] {
  const idOf = (table: RowTable, at = row): string | undefined => {
    const ids = idsOf(table);
    return ids[at % Math.max(ids.length, 1)];
  };
  const update = (table: RowTable, values: Record<string, string | number | null>): Change[] => {
    const id = idOf(table);
    return id === undefined ? [] : [{ op: 'update', table, id, values }];
  };
  switch (kind) {
    case 'part':
      return update('parts', {
        width: text,
        quantity: String(number),
        edgeFront: number % 2 ? 'bare' : 'hidden',
      });
    case 'add':
      return [
        {
          op: 'insert',
          table: 'parts',
          before: idOf('parts') ?? null,
          values: { name: `New ${number}`, length: text, width: '100', materialId: 'birch-ply-18' },
        },
      ];
    case 'delete': {
      const table = (['parts', 'recipes', 'steps', 'sizes', 'extras'] as const)[number % 5] ?? 'parts';
      const id = idOf(table);
      return id === undefined ? [] : [{ op: 'delete', table, id }];
    }
    case 'move': {
      const id = idOf('parts');
      return id === undefined
        ? []
        : [{ op: 'move', table: 'parts', id, before: idOf('parts', number) ?? null }];
    }
    case 'settings':
      return [
        { op: 'settings', values: number % 2 ? { kerfMm: number } : { units: row % 2 ? 'us' : 'metric' } },
      ];
    case 'size':
      return row % 2
        ? update('sizes', { value: String(100 * number) })
        : [{ op: 'insert', table: 'sizes', before: null, values: { name: `size_${number}`, value: text } }];
    case 'recipe':
      return [{ op: 'insert', table: 'recipes', before: null, values: { name: `Recipe ${number}` } }];
    case 'step':
      return update('steps', { coats: 1 + (number % 4), thinning: number / 100 });
    case 'paste':
      return [
        ...update('parts', { length: text, note: `pasted ${number}` }),
        ...update('sizes', { note: text }),
      ];
  }
}
