import { tableTitle } from '../../planning/display/table-words.ts';
import type { ProblemPlace, ProblemTable } from '../../planning/problem.ts';

/** Where a value of a document sits: its place for a problem, and the row's name for a sentence. */
export interface DocumentPlace {
  readonly at: ProblemPlace;
  /** "Part 4" or "Recipe 1, step 3"; "The document" outside the rows. */
  readonly row: string;
}

/** What the settings are called in a sentence: they are many. */
export const SETTINGS_ROW = 'The settings';

type Path = readonly PropertyKey[];

/** The tables that stand at the top of a document. */
const TOP_TABLES = [
  'sizes',
  'shopHours',
  'daysOff',
  'climateRows',
  'pins',
  'doneTasks',
  'arrivals',
  'budgets',
  'orders',
  'orderLines',
  'receipts',
  'stockUses',
  'payments',
  'substitutes',
  'workHours',
  'quotes',
  'parts',
  'recipes',
  'blends',
  'rules',
  'extras',
  'onHand',
  'measurements',
  'products',
] as const satisfies readonly ProblemTable[];
type TopTable = (typeof TOP_TABLES)[number];

/** Where one row of a table is called otherwise than the table in a sentence. */
const ROW_NAMES: Readonly<Partial<Record<TopTable, string>>> = {
  recipes: 'Recipe',
  onHand: 'On-hand row',
  measurements: 'Measurement',
  products: 'Product',
};

const NESTED = {
  recipes: { key: 'steps', table: 'steps', name: 'step' },
  blends: { key: 'components', table: 'components', name: 'component' },
} as const;

/**
 * Where does a path of a document lead?
 *
 * `path`: keys and positions from the top, as the schema reports them. `json`: the document as given; ids are looked
 * up in it, and a row without a readable id is called by its 1-based position.
 * Example: `['recipes', 0, 'steps', 2, 'coats']` is the field `coats` of step "3".
 */
export function documentPlace(path: Path, json: unknown): DocumentPlace {
  const [table, position] = path;
  if (table === 'settings' && path.length > 1)
    return { at: { table, id: null, field: field(path.slice(1)) }, row: SETTINGS_ROW };
  if (!isRowTable(table) || typeof position !== 'number')
    return { at: { table: 'document', id: null, field: field(path) }, row: 'The document' };

  const row = `${ROW_NAMES[table] ?? tableTitle(table)} ${position + 1}`;
  const nested = table === 'recipes' || table === 'blends' ? NESTED[table] : null;
  const inner = path[3];
  if (nested !== null && path[2] === nested.key && typeof inner === 'number')
    return {
      at: { table: nested.table, id: rowIdAt(json, path.slice(0, 4)), field: field(path.slice(4)) },
      row: `${row}, ${nested.name} ${inner + 1}`,
    };
  return { at: { table, id: rowIdAt(json, path.slice(0, 2)), field: field(path.slice(2)) }, row };
}

/** What the document has at a path; undefined where the path leads nowhere. */
export function valueAt(json: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    json,
  );
}

function isRowTable(table: unknown): table is TopTable {
  return TOP_TABLES.some((one) => one === table);
}

function rowIdAt(json: unknown, path: Path): string {
  const id = valueAt(json, [...path, 'id']);
  return typeof id === 'string' || typeof id === 'number' ? String(id) : String(Number(path.at(-1)) + 1);
}

function field(path: Path): string | null {
  return path.length === 0 ? null : path.map(String).join('.');
}
