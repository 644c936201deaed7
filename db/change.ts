import type { RowTable } from './project-rows.ts';

export type Scalar = string | number | boolean | null;
export type RowValues = Readonly<Record<string, Scalar>>;

/** One step of a change. Everything in one request is one transaction and one undo step. */
export type Change =
  /** `tempId` lets later steps of the same request, and the answer, refer to the new row. `before`: id of the row it goes in front of; absent or null: at the end. */
  | {
      readonly op: 'insert';
      readonly table: RowTable;
      readonly tempId?: string;
      readonly before?: string | null;
      readonly values: RowValues;
    }
  | { readonly op: 'update'; readonly table: RowTable; readonly id: string; readonly values: RowValues }
  | { readonly op: 'move'; readonly table: RowTable; readonly id: string; readonly before: string | null }
  | { readonly op: 'delete'; readonly table: RowTable; readonly id: string }
  | {
      readonly op: 'settings';
      readonly values: RowValues | Readonly<Record<string, Scalar | readonly string[]>>;
    };

/** POST /api/projects/:id/changes */
export interface ChangeRequest {
  /** The revision the sender last saw; a newer one on the server answers 409. */
  readonly revision: number;
  /** Words for the undo menu; the server makes them up when absent. */
  readonly label?: string;
  readonly changes: readonly Change[];
}
