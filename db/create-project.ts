import type { Database } from 'better-sqlite3';
import type { ProjectInput } from '../server/planning/project-input.ts';
import { carryOutChanges } from './carry-out-changes.ts';
import type { Change, RowValues } from './change.ts';
import type { RowTable } from './project-rows.ts';
import { insertProject } from './projects.repository.ts';
import type { ReadLengthCell } from './row-columns.ts';
import { openRowJournal } from './row-journal.ts';
import { ROW_LAYOUTS } from './row-layouts.ts';

/** A project as a document holds it: its ids are its own and are replaced when it is stored. */
export type NewProject = Omit<ProjectInput, 'catalogue'>;

/** Stores a project under a new id, at revision 1 and with an empty edit log. Answers the id. */
export function createProject(
  db: Database,
  project: NewProject,
  given: { readonly readLengthCell: ReadLengthCell; readonly now: Date },
): number {
  return db
    .transaction(() => {
      const id = insertProject(db, project.settings, given.now.toISOString());
      carryOutChanges(db, id, insertsOf(project), openRowJournal(db, id), given);
      return id;
    })
    .immediate();
}

/** The rows of a project as inserts, those first that others refer to. */
function insertsOf(project: NewProject): Change[] {
  const recipeIds = new Set(project.recipes.map((recipe) => recipe.id));
  const orderIds = new Set(project.orders.map((order) => order.id));
  const blendIds = new Set(project.blends.map((blend) => blend.id));
  return [
    ...project.sizes.map((row) => insert('sizes', row)),
    ...project.blends.flatMap(({ components, ...blend }) => [
      insert('blends', blend),
      ...components.map((row) => insert('components', { ...row, blendId: tempId('blends', blend.id) })),
    ]),
    ...project.recipes.flatMap(({ steps, ...recipe }) => [
      insert('recipes', recipe),
      ...steps.map((row) =>
        insert('steps', {
          ...row,
          recipeId: tempId('recipes', recipe.id),
          blendId: mention('blends', row.blendId, blendIds),
        }),
      ),
    ]),
    ...project.parts.map((row) =>
      insert('parts', {
        ...row,
        showRecipeId: mention('recipes', row.showRecipeId, recipeIds),
        backRecipeId: mention('recipes', row.backRecipeId, recipeIds),
      }),
    ),
    ...project.rules.map((row) => insert('rules', row)),
    ...project.extras.map((row) => insert('extras', row)),
    // No sheet of a new project has been cut: an offcut is stock like any other.
    ...project.onHand.map((row) => insert('onHand', { ...row, keptFrom: '' })),
    ...project.measurements.map((row) => insert('measurements', row)),
    ...project.shopHours.map((row) => insert('shopHours', row)),
    ...project.daysOff.map((row) => insert('daysOff', row)),
    ...project.climateRows.map((row) => insert('climateRows', row)),
    ...project.pins.map((row) => insert('pins', row)),
    ...project.doneTasks.map((row) => insert('doneTasks', row)),
    ...project.arrivals.map((row) => insert('arrivals', row)),
    ...project.budgets.map((row) => insert('budgets', row)),
    ...project.orders.map((row) => insert('orders', row)),
    ...project.orderLines.map((row) =>
      insert('orderLines', { ...row, orderId: tempId('orders', row.orderId) }),
    ),
    ...project.receipts.map((row) =>
      insert('receipts', { ...row, orderLineId: tempId('orderLines', row.orderLineId) }),
    ),
    ...project.stockUses.map((row) => insert('stockUses', row)),
    ...project.payments.map((row) =>
      insert('payments', { ...row, orderId: mention('orders', row.orderId, orderIds) }),
    ),
    ...project.substitutes.map((row) => insert('substitutes', row)),
    ...project.workHours.map((row) => insert('workHours', row)),
    ...project.quotes.map((row) => insert('quotes', row)),
  ];
}

function insert<Row extends { readonly id: string }>(table: RowTable, row: Row): Change {
  const given = row as unknown as RowValues;
  const fields = ROW_LAYOUTS[table].fields.filter((field) => given[field.name] !== undefined);
  const values = Object.fromEntries(fields.map((field) => [field.name, given[field.name] ?? null]));
  const mentioned = MENTIONED.includes(table);
  return { op: 'insert', table, ...(mentioned ? { tempId: tempId(table, row.id) } : {}), values };
}

/** Lists whose rows others refer to. */
const MENTIONED: readonly RowTable[] = ['recipes', 'blends', 'orders', 'orderLines'];

function tempId(table: RowTable, id: string): string {
  return `${table} ${id}`;
}

/** A mention in the document's own ids. One of a row it does not have stays readable, but is no number any more. */
function mention(table: RowTable, id: string, known: ReadonlySet<string>): string {
  if (known.has(id)) return tempId(table, id);
  return /^\d+$/.test(id) ? `#${id}` : id;
}
