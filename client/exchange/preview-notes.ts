import type { PreviewCell, PreviewRow } from '../../server/http/contract.ts';

/** The columns of a preview, in the order they stand. */
export const PREVIEW_FIELDS = [
  'name',
  'section',
  'quantity',
  'length',
  'width',
  'shape',
  'frontLeft',
  'frontRight',
  'backLeft',
  'backRight',
  'material',
  'grain',
  'front',
  'back',
  'left',
  'right',
  'showFace',
  'backFace',
  'note',
] as const;
export type PreviewField = (typeof PREVIEW_FIELDS)[number];

export const FIELD_NAMES: Readonly<Record<PreviewField, string>> = {
  name: 'Part',
  section: 'Section',
  quantity: 'Qty',
  length: 'Length',
  width: 'Width',
  shape: 'Shape',
  frontLeft: 'Corner front left',
  frontRight: 'Corner front right',
  backLeft: 'Corner back left',
  backRight: 'Corner back right',
  material: 'Material',
  grain: 'Grain',
  front: 'Front',
  back: 'Back',
  left: 'Left',
  right: 'Right',
  showFace: 'Show face',
  backFace: 'Back face',
  note: 'Note',
};

export function cellOf(row: PreviewRow, field: PreviewField): PreviewCell {
  switch (field) {
    case 'front':
    case 'back':
    case 'left':
    case 'right':
      return row.edges[field];
    case 'frontLeft':
    case 'frontRight':
    case 'backLeft':
    case 'backRight':
      return row.corners[field];
    default:
      return row[field];
  }
}

export function isMarked(row: PreviewRow): boolean {
  return PREVIEW_FIELDS.some((field) => cellOf(row, field).reason !== null);
}

/** True when the row gives neither length nor width, as titles and lines of hardware do. */
export function hasNoSize(row: PreviewRow): boolean {
  return row.length.text === '' && row.width.text === '';
}

/** One thing to know about one or several cells of a row. */
export interface RowNote {
  readonly fields: readonly PreviewField[];
  readonly state: PreviewCell['state'];
  readonly reason: string;
}

/** The reasons of a row's marked cells; one that several cells share is said once. */
export function rowNotes(row: PreviewRow): readonly RowNote[] {
  const notes = new Map<string, RowNote>();
  for (const field of PREVIEW_FIELDS) {
    const { state, reason } = cellOf(row, field);
    if (reason === null) continue;
    const known = notes.get(reason);
    notes.set(reason, { fields: [...(known?.fields ?? []), field], state, reason });
  }
  return [...notes.values()];
}

/** A note that many rows share, with the values it names left out. */
export interface SharedNote {
  readonly key: string;
  readonly fields: readonly PreviewField[];
  readonly state: PreviewCell['state'];
  readonly reason: string;
  readonly rows: number;
}

/** From this many rows on, a note is said once for all of them instead of below each. */
const SHARED_FROM = 4;

/** What notes of different rows have in common: the reason without the values it names. */
export function noteKey({ reason }: Pick<RowNote, 'reason'>): string {
  return reason.replace(/«[^»]*»/g, '«…»');
}

/** The notes that so many rows share that they are said above the table, most rows first. */
export function sharedNotes(rows: readonly PreviewRow[]): readonly SharedNote[] {
  const notes = new Map<string, SharedNote>();
  for (const row of rows)
    for (const note of rowNotes(row)) {
      const key = noteKey(note);
      const known = notes.get(key);
      const fields = new Set([...(known?.fields ?? []), ...note.fields]);
      notes.set(key, {
        key,
        fields: PREVIEW_FIELDS.filter((field) => fields.has(field)),
        state: note.state,
        // Rows that say the same of the same value keep it.
        reason: known === undefined || known.reason === note.reason ? note.reason : key,
        rows: (known?.rows ?? 0) + 1,
      });
    }
  return [...notes.values()]
    .filter(({ rows: count }) => count >= SHARED_FROM)
    .sort((a, b) => b.rows - a.rows);
}
