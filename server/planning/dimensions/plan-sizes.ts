import { figure } from '../figure.ts';
import type { SizePlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { NamedSize, ProjectInput } from '../project-input.ts';
import { nameKey } from './name-key.ts';
import { parseExpression } from './parse-expression.ts';
import { type CellReading, type CellScope, readLengthCell } from './read-cell.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';
import { sizeNameFault, sizeNameTaken } from './size-name-fault.ts';
import { sizeOrder } from './size-order.ts';

/** Names of a loop repeated in a message. */
const MOST_NAMES_SHOWN = 5;

export interface SizesPlan {
  /** In the order of the rows. */
  readonly sizes: readonly SizePlan[];
  /** Values that are known, mm, under their `nameKey`. */
  readonly values: ReadonlyMap<string, number>;
  readonly problems: readonly Problem[];
}

/**
 * What does each named size of the project come to?
 *
 * `input`: the rows, whose values are lengths or calculations over one another. Result: mm per row, worked out in
 * the order in which they depend on each other, whatever the order of the rows; zero is allowed. Rows that depend on
 * themselves, unknown names, unusable names and negative results are problems on their own cell; a row that only
 * uses such a row is null without a problem of its own. No source: a definition.
 *
 * Example: with `ply` = 18 mm, the size `=2*ply` is 36 mm.
 */
export function planSizes(input: ProjectInput): SizesPlan {
  const problems: Problem[] = [];
  const named = namedSizes(input.sizes, problems);
  const usesOf = (row: NamedSize): readonly string[] => {
    const parsed = row.value.trim().startsWith('=') ? parseExpression(row.value) : null;
    return parsed?.ok ? parsed.names.map(nameKey) : [];
  };
  const { order, cycles } = sizeOrder(input.sizes, named, usesOf);

  const values = new Map<string, number>();
  const readings = new Map<NamedSize, CellReading>();
  const scope: CellScope = { units: input.settings.units, values, named };
  for (const row of order) {
    const reading = readLengthCell(row.value, scope, true);
    readings.set(row, reading);
    if (reading.value !== null && named.get(nameKey(row.name)) === row)
      values.set(nameKey(row.name), reading.value);
  }
  for (const row of input.sizes) {
    const loop = cycles.get(row);
    const refusal = loop === undefined ? (readings.get(row)?.refusal ?? null) : cycleRefusal(row, loop);
    if (refusal !== null) problems.push(sizeProblem(row, 'value', refusal));
  }
  const sizes = input.sizes.map((row): SizePlan => {
    const reading = readings.get(row) ?? readLengthCell(row.value, scope, true);
    return { id: row.id, name: row.name, valueMm: figure(reading.value, 'mm', reading.working) };
  });
  return { sizes, values, problems };
}

/** Rows by key of their name; a name that cannot be used in a calculation, or is taken, is a problem. */
function namedSizes(rows: readonly NamedSize[], problems: Problem[]): Map<string, NamedSize> {
  const named = new Map<string, NamedSize>();
  for (const row of rows) {
    const fault = sizeNameFault(row.name) ?? (named.has(nameKey(row.name)) ? sizeNameTaken(row.name) : null);
    if (fault === null) named.set(nameKey(row.name), row);
    else problems.push(sizeProblem(row, 'name', fault));
  }
  return named;
}

function cycleRefusal(row: NamedSize, loop: readonly NamedSize[]): Refusal {
  const names = loop.map(({ name }) => name);
  const shown = names.length > MOST_NAMES_SHOWN ? [...names.slice(0, MOST_NAMES_SHOWN), '…'] : names;
  const path = [...shown, row.name].join(' uses ');
  return refuse(
    'expression-cycle',
    loop.length === 1
      ? `${quoted(row.name)} uses itself.`
      : `${quoted(row.name)} depends on itself: ${path}.`,
    'Give one of these sizes a value of its own.',
  );
}

function sizeProblem(row: NamedSize, field: 'name' | 'value', refusal: Refusal): Problem {
  const { code, message, wayOut } = refusal;
  return { code, severity: 'error', at: { table: 'sizes', id: row.id, field }, message, wayOut };
}
