import type { Severity } from '../../server/planning/problem.ts';
import type { TypingHelp } from './typing-help.ts';

/**
 * A sheet's columns as data. The sheet knows nothing of parts or products: a column says how a row's cell looks,
 * what its editor starts with, and what text stands for its content on the clipboard.
 */

/** Every row has a key that stays the same while it is shown, also before the server has given it an id. */
export interface SheetRow {
  readonly key: string;
  /** The row that waits at the end for a new entry. */
  readonly isBlank?: boolean;
  /** A line over a group of rows: nothing is typed in it, and edits pass it over. */
  readonly isHeading?: boolean;
}

export interface CellView {
  readonly text: string;
  /**
   * absent: nothing there, and that is meant (a thin dash). quiet: a small mark. raw: shown as typed, not
   * understood. waiting: typed, and the server has not answered yet. prompt: an invitation to type.
   */
  readonly tone?: 'plain' | 'absent' | 'quiet' | 'raw' | 'waiting' | 'prompt';
  /** The full name where the text is a short one; shown on hover. */
  readonly title?: string;
  /** A CSS background for a small square in front of the text. */
  readonly swatch?: string;
  /** Path of the figure shown, which a click opens. */
  readonly figureAt?: string;
  /** Shown with a small triangle that opens and closes what the row stands over; says whether it is open. */
  readonly open?: boolean;
  /** A word more after the text, fainter. */
  readonly detail?: string;
  readonly severity?: Severity;
  /** Shown beside the cell while it has the focus or the pointer: what is wrong and what to do. */
  readonly message?: string;
}

export interface Choice {
  /** What the row stores. */
  readonly value: string;
  /** What the cell shows and typing finds. */
  readonly text: string;
  /** The longer name, smaller; typing finds it too. */
  readonly detail?: string;
  /** What the choice means, where its name does not say; typing does not look at it. */
  readonly hint?: string;
  readonly swatch?: string;
}

export interface SheetColumn<Row extends SheetRow> {
  /** Also the name of the field a problem names. */
  readonly id: string;
  /** A function where it depends on something outside the column, such as the unit in use. */
  readonly header: string | (() => string);
  /** The header's tooltip, and its name for screen readers where the header is short. */
  readonly describe: string;
  /** Columns with the same group stand under one heading. */
  readonly group?: string;
  readonly width: number;
  /** When other rows are first shown, the column is made as wide as its content, within these bounds. */
  readonly fit?: { readonly min: number; readonly max: number };
  /** On a narrow window: its width there, or not shown at all. */
  readonly narrow?: number | 'hidden';
  readonly pinned?: boolean;
  readonly numeric?: boolean;
  readonly hidden?: boolean;
  /** What the rows are sorted by in this column, in either direction; null stands last. Not sorted without it. */
  order?(row: Row): number | string | null;
  /** The header offers to show only some of the values. */
  readonly filters?: boolean;
  /** computed: tinted ground, never edited. ordinal: the row's number. */
  readonly kind: 'typed' | 'computed' | 'ordinal';
  view(row: Row): CellView;
  /** What the cell holds, as it may be pasted back. */
  raw(row: Row): string;
  /** What other programs get when the cell is copied, where that is not the text shown. */
  copyText?(row: Row): string;
  /** What its editor starts with. */
  editText?(row: Row): string;
  /** For columns that hold one of a list. */
  choices?(): readonly Choice[];
  /** What is said of a text while it is typed, for cells that are read. */
  readonly typing?: TypingHelp;
  /** What Delete leaves behind; empty text unless said. */
  readonly cleared?: string;
}

/** One cell given new content, as text. */
export interface CellEdit {
  readonly key: string;
  readonly columnId: string;
  readonly text: string;
}

export function isEditable<Row extends SheetRow>(column: SheetColumn<Row>): boolean {
  return column.kind === 'typed';
}

/** The column's name within a sentence: "finished length". */
export function columnName({ describe }: { readonly describe: string }): string {
  const name = describe.split(',')[0] ?? describe;
  return name.charAt(0).toLowerCase() + name.slice(1);
}
