import type { ColumnGuess } from './guess-mapping.ts';
import type { PreviewCell, PreviewRow } from './preview-part-list.ts';

export const CORNER_NAMES = ['frontLeft', 'frontRight', 'backLeft', 'backRight'] as const;
export type CornerName = (typeof CORNER_NAMES)[number];

export interface ListedCell {
  readonly text: string;
  readonly column: ColumnGuess | null;
}

const CORNER_FIELDS = {
  frontLeft: 'cornerFrontLeft',
  frontRight: 'cornerFrontRight',
  backLeft: 'cornerBackLeft',
  backRight: 'cornerBackRight',
} as const satisfies Readonly<Record<CornerName, ColumnGuess['field']>>;

/** "⌀600", "Ø 24\"", "600 mm dia." */
const DIAMETER = /^(?:[⌀øØ]\s*(.+)|(.+?)\s*\bdia(?:m(?:eter)?)?\.?)$/iu;

/** The size in a text that marks it as a diameter; null when it does not. */
export function diameterIn(text: string): string | null {
  const found = DIAMETER.exec(text.trim());
  return found?.[1] ?? found?.[2] ?? null;
}

/** The shape of a part whose row does not name one. */
export const UNSAID_SHAPE: PreviewCell = { text: 'rectangle', state: 'empty', reason: null };

const ROUND = ['round', 'circle', 'circular', 'disc', 'disk'];
const STRAIGHT = ['rectangle', 'rectangular', 'rect', 'square', 'straight', 'panel', '-', 'no'];

/**
 * The outline of a listed part: length, width, shape and corner radii. A part with a diameter is round, and so is one
 * whose shape says so; a radius for the whole part is that of its four corners.
 *
 * `sizes`: what the columns of length and width, or of both together, hold. `read`: reads a size the way those do.
 */
export function outlineCells(
  at: (field: ColumnGuess['field']) => ListedCell,
  sizes: Pick<PreviewRow, 'length' | 'width'>,
  read: (cell: ListedCell) => PreviewCell,
): Pick<PreviewRow, 'length' | 'width' | 'shape' | 'corners'> {
  const shape = shapeCell(at('shape').text);
  const diameter = diameterOf(at);
  if (diameter !== null) {
    const size = read(diameter);
    const alsoLong = at('diameter').text !== '' && at('length').text !== '';
    return {
      length: size,
      width: size,
      shape: alsoLong
        ? {
            text: 'round',
            state: 'doubt',
            reason: 'The row gives a diameter and a length: the diameter is taken.',
          }
        : { text: 'round', state: 'read', reason: null },
      corners: noCorners(),
    };
  }
  if (shape.text === 'round') {
    const width = sizes.width.text === '' ? sizes.length : sizes.width;
    return { length: sizes.length, width, shape, corners: noCorners() };
  }
  const all = at('radius');
  const corner = (name: CornerName): PreviewCell => {
    const own = at(CORNER_FIELDS[name]);
    return radiusCell(own.text.trim() === '' ? all : own, read);
  };
  return {
    ...sizes,
    shape,
    corners: {
      frontLeft: corner('frontLeft'),
      frontRight: corner('frontRight'),
      backLeft: corner('backLeft'),
      backRight: corner('backRight'),
    },
  };
}

export function noCorners(): PreviewRow['corners'] {
  const none: PreviewCell = { text: '', state: 'empty', reason: null };
  return { frontLeft: none, frontRight: none, backLeft: none, backRight: none };
}

function diameterOf(at: (field: ColumnGuess['field']) => ListedCell): ListedCell | null {
  const own = at('diameter');
  if (own.text.trim() !== '') return { ...own, text: diameterIn(own.text) ?? own.text };
  for (const field of ['size', 'length'] as const) {
    const cell = at(field);
    const size = diameterIn(cell.text);
    if (size !== null) return { ...cell, text: size };
  }
  return null;
}

function shapeCell(text: string): PreviewCell {
  const word = text.trim().toLowerCase();
  if (ROUND.includes(word)) return { text: 'round', state: 'read', reason: null };
  if (word === '') return UNSAID_SHAPE;
  if (STRAIGHT.includes(word)) return { text: 'rectangle', state: 'read', reason: null };
  return {
    text: 'rectangle',
    state: 'doubt',
    reason: `«${text}» is not a shape this list knows: a rectangle is taken.`,
  };
}

function radiusCell(cell: ListedCell, read: (cell: ListedCell) => PreviewCell): PreviewCell {
  const text = cell.text.trim().replace(/^r\s*(?=[\d.¼½¾⅛⅜⅝⅞])/i, '');
  return ['', '0', '-', '–', '—', 'no', 'none', 'square'].includes(text.toLowerCase())
    ? { text: '', state: 'empty', reason: null }
    : read({ ...cell, text });
}
