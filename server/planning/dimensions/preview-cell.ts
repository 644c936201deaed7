import type { NamedSize, ProjectInput } from '../project-input.ts';
import { nameKey } from './name-key.ts';
import { parseExpression } from './parse-expression.ts';
import { planSizes, type SizesPlan } from './plan-sizes.ts';
import { type CellScope, readLengthCell, readQuantityCell } from './read-cell.ts';
import type { Refusal } from './refusal.ts';

export type PreviewField = 'length' | 'width' | 'radius' | 'quantity' | 'size';

export interface TypedCell {
  readonly field: PreviewField;
  readonly text: string;
  /** The named size whose value is typed; null for a new one and for every other field. */
  readonly sizeId: string | null;
}

export interface UsedName {
  /** As typed. */
  readonly name: string;
  /** Null when there is no size of this name. */
  readonly id: string | null;
  readonly valueMm: number | null;
}

export interface CellPreview {
  /** mm, or pieces for a quantity; null when the cell cannot be read or waits for a size without a value. */
  readonly value: number | null;
  /** The cell's own fault; null when it is sound, even if it waits for another. */
  readonly refusal: Pick<Refusal, 'code' | 'message' | 'wayOut'> | null;
  /** Each once, in the order of their first use. */
  readonly names: readonly UsedName[];
}

/**
 * What would a cell come to if it were left as it is typed now?
 *
 * `input`: the project. `typed`: the field and its text. Result: mm or pieces, or the fault it would have, with the
 * named sizes it uses. A named size is worked out in its place, so that one which would depend on itself says so; an
 * empty radius is a square corner. Range as for `readLengthCell` and `readQuantityCell`. No source: a definition.
 *
 * Example: `=seat_depth - 36` in a metric project with a seat_depth of 450 mm is 414 mm.
 */
export function previewCell(input: ProjectInput, typed: TypedCell): CellPreview {
  const { field, text } = typed;
  const own = field === 'size' ? input.sizes.findIndex(({ id }) => id === typed.sizeId) : -1;
  const sizes = input.sizes.map((row, index) => (index === own ? { ...row, value: text } : row));
  const plan = planSizes({ ...input, sizes });
  // Of two sizes with one name the first counts, as in planSizes: a later entry of a Map would win.
  const named = new Map(sizes.toReversed().map((row) => [nameKey(row.name), row]));
  const names = usedNames(text, named, plan);
  const row = sizes[own];
  if (row !== undefined) {
    const value = plan.sizes.find(({ id }) => id === row.id)?.valueMm.value ?? null;
    const refusal = plan.problems.find(({ at }) => at.id === row.id && at.field === 'value') ?? null;
    return { value, refusal, names };
  }
  if (field === 'radius' && text.trim() === '') return { value: 0, refusal: null, names };
  const scope: CellScope = { units: input.settings.units, values: plan.values, named };
  const { value, refusal } =
    field === 'quantity'
      ? readQuantityCell(text, scope)
      : readLengthCell(text, scope, field === 'radius' || field === 'size');
  return { value, refusal, names };
}

function usedNames(
  text: string,
  named: ReadonlyMap<string, NamedSize>,
  { values }: SizesPlan,
): readonly UsedName[] {
  const parsed = text.trimStart().startsWith('=') ? parseExpression(text) : null;
  if (!parsed?.ok) return [];
  const used = new Map<string, UsedName>();
  for (const name of parsed.names) {
    const key = nameKey(name);
    if (!used.has(key))
      used.set(key, { name, id: named.get(key)?.id ?? null, valueMm: values.get(key) ?? null });
  }
  return [...used.values()];
}
