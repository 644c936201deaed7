import type { Change, ChangeAnswer, RowTable, RowValues } from '../../server/http/contract.ts';
import { actions, getState } from '../state/store.ts';
import type { Refusal } from './faults.ts';

/** Stores a value; null when it was taken, else why not. */
export type Save<Value> = (value: Value) => Promise<Refusal | null>;

/** Sends changes as one undo step and says why they were refused, if they were. */
export async function saveChanges(changes: readonly Change[], label?: string): Promise<Refusal | null> {
  const answer = await actions.change(changes, label);
  return answer === null ? lastRefusal() : null;
}

/** Saves one field of one row. */
export function saveField<Value extends string | number | boolean | null>(
  table: RowTable,
  id: string,
  field: string,
): Save<Value> {
  return (value) => saveChanges([{ op: 'update', table, id, values: { [field]: value } }]);
}

export function saveSetting<Value extends string | number | boolean | null | readonly string[]>(
  field: string,
): Save<Value> {
  return (value) => saveChanges([{ op: 'settings', values: { [field]: value } }]);
}

/** Adds a row at the end of its list and answers its id; null when it was refused. */
export async function addRow(table: RowTable, values: RowValues, label: string): Promise<string | null> {
  const tempId = 'new';
  const answer: ChangeAnswer | null = await actions.change([{ op: 'insert', table, tempId, values }], label);
  return answer?.inserted[tempId] ?? null;
}

function lastRefusal(): Refusal {
  const notice = getState().notice;
  return {
    message: notice?.text ?? 'The change was not taken.',
    wayOut: notice?.wayOut ?? '',
  };
}
