import { readLength } from '../../planning/dimensions/read-length.ts';
import { readQuantity } from '../../planning/dimensions/read-quantity.ts';
import { readSizeSet } from '../../planning/dimensions/read-size-set.ts';
import type { Product } from '../../planning/product.ts';
import type { EdgeName, Recipe, UnitSystem } from '../../planning/project-input.ts';
import type { ColumnGuess, ImportUnit } from './guess-mapping.ts';
import { type CornerName, noCorners, outlineCells, UNSAID_SHAPE } from './outline-cells.ts';
import type { CellTable } from './read-cells.ts';
import { joinSplitLines, readLooseLine } from './read-loose-line.ts';

/** `read`: clear. `doubt`: taken, but look at it. `refused`: kept as typed and becomes a problem on its cell. */
export type CellState = 'read' | 'doubt' | 'refused' | 'empty';

export interface PreviewCell {
  /** What will be written into the part list. */
  readonly text: string;
  readonly state: CellState;
  /** Why a cell is doubtful or refused, with what to do; null when it is clear. */
  readonly reason: string | null;
}

export interface PreviewRow {
  /** 1-based row of the source the part begins on. */
  readonly line: number;
  readonly name: PreviewCell;
  readonly section: PreviewCell;
  readonly quantity: PreviewCell;
  readonly length: PreviewCell;
  readonly width: PreviewCell;
  /** Text is a product id. */
  readonly material: PreviewCell;
  readonly grain: PreviewCell;
  readonly edges: Readonly<Record<EdgeName, PreviewCell>>;
  /** Texts are recipe ids; empty is no finish. */
  readonly showFace: PreviewCell;
  readonly backFace: PreviewCell;
  readonly note: PreviewCell;
  /** Text is `rectangle` or `round`. */
  readonly shape: PreviewCell;
  /** Radii; empty is a square corner. */
  readonly corners: Readonly<Record<CornerName, PreviewCell>>;
}

export interface ImportChoices {
  readonly units: UnitSystem;
  readonly headingRow: number | null;
  readonly columns: readonly ColumnGuess[];
  /** Order of the sizes where they stand together in one cell. */
  readonly sizeOrder: 'length-width' | 'width-length';
  /** Unit of bare numbers in columns whose heading names none; null takes the project's. */
  readonly bareUnit: ImportUnit;
  /** Banding for edges that are ticked, or banded with what the catalogue lacks; empty leaves them bare or hidden. */
  readonly bandingId: string;
  /** Material for rows that name none; empty leaves them open. */
  readonly materialId: string;
  /** Finish for faces that name none; empty leaves them raw. */
  readonly recipeId: string;
  readonly products: readonly Product[];
  readonly recipes: readonly Pick<Recipe, 'id' | 'name'>[];
}

/**
 * What would importing this list write, row by row? Every cell is read the way the part list itself reads it; one
 * that cannot be read is carried over as it stands and marked, with the reason, so that nothing is lost and nothing
 * is guessed in silence.
 */
export function previewPartList(table: CellTable, choices: ImportChoices): readonly PreviewRow[] {
  if (table.split === 'lines') {
    return joinSplitLines(
      table.rows.map((row) => row[0] ?? ''),
      table.lines,
    ).map(({ text, line }) => rowOfLine(text, line, choices));
  }
  return table.rows.flatMap((row, index) =>
    choices.headingRow !== null && index <= choices.headingRow
      ? []
      : [rowOfCells(row, table.lines[index] ?? index + 1, choices)],
  );
}

function rowOfLine(text: string, line: number, choices: ImportChoices): PreviewRow {
  const loose = readLooseLine(text);
  const name = loose.name ?? '';
  const odd = /\d\s*(?:mm|cm|in\b|inch|"|”|″)/iu.test(name);
  return {
    ...emptyRow(line, choices),
    name: odd
      ? doubt(name, 'The name still holds what looks like a size: check the row.')
      : name === ''
        ? doubt('', 'No name was found.')
        : clear(name),
    quantity:
      loose.quantity === null
        ? doubt('1', 'The line gives no quantity; one piece is taken.')
        : quantityCell(loose.quantity),
    ...sizeCells(loose.size ?? '', choices, null),
  };
}

function rowOfCells(row: readonly string[], line: number, choices: ImportChoices): PreviewRow {
  const at = (
    field: ColumnGuess['field'],
  ): { readonly text: string; readonly column: ColumnGuess | null } => {
    const index = choices.columns.findIndex((column) => column.field === field);
    return { text: index < 0 ? '' : (row[index] ?? ''), column: choices.columns[index] ?? null };
  };
  const nameCell = at('name').text;
  const named = readLooseLine(nameCell);
  const counted = at('quantity').text;
  const takesCount = counted === '' && at('quantity').column === null && named.quantity !== null;
  const size = at('size');
  const sizes =
    size.column === null
      ? { length: lengthCell(at('length'), choices), width: lengthCell(at('width'), choices) }
      : sizeCells(size.text, choices, size.column);
  const base = emptyRow(line, choices);
  return {
    ...base,
    name: takesCount
      ? doubt(named.name ?? nameCell, `The quantity ${named.quantity} was taken out of «${nameCell}».`)
      : nameCell === ''
        ? doubt('', 'The row has no name.')
        : clear(nameCell),
    section: optional(at('section').text),
    quantity: takesCount
      ? quantityCell(named.quantity ?? '')
      : counted === ''
        ? doubt('1', 'The row gives no quantity; one piece is taken.')
        : quantityCell(counted),
    ...outlineCells(at, sizes, (cell) => lengthCell(cell, choices)),
    material: materialCell(at('material').text, at('thickness'), choices),
    grain: grainCell(at('grain').text),
    edges: edgeCells(at, choices),
    showFace: finishCell(at('showFace').text || at('finish').text, choices),
    backFace: finishCell(at('backFace').text || at('finish').text, choices),
    note: optional(at('note').text),
  };
}

function emptyRow(line: number, choices: ImportChoices): PreviewRow {
  const hidden = clear('hidden');
  return {
    line,
    name: empty(),
    section: empty(),
    quantity: clear('1'),
    length: empty(),
    width: empty(),
    material: choices.materialId === '' ? empty() : clear(choices.materialId),
    grain: clear('along'),
    edges: { front: hidden, back: hidden, left: hidden, right: hidden },
    showFace: finishCell('', choices),
    backFace: finishCell('', choices),
    note: empty(),
    shape: UNSAID_SHAPE,
    corners: noCorners(),
  };
}

const clear = (text: string): PreviewCell => ({ text, state: 'read', reason: null });
const empty = (): PreviewCell => ({ text: '', state: 'empty', reason: null });
const doubt = (text: string, reason: string): PreviewCell => ({ text, state: 'doubt', reason });
const refused = (text: string, reason: string): PreviewCell => ({ text, state: 'refused', reason });
const optional = (text: string): PreviewCell => (text === '' ? empty() : clear(text));

function quantityCell(text: string): PreviewCell {
  const reading = readQuantity(text);
  return reading.ok ? clear(reading.normalised) : refused(text, `${reading.message} ${reading.wayOut}`);
}

/** "1.800": read as it stands, a part of less than ten millimetres; more likely a length with its thousands marked. */
const THOUSANDS_LIKE = /^[1-9]\.\d{3}$/;

/** Gives a bare number the unit of its heading, and a decimal comma its point where the column is known to use one. */
function lengthCell(
  { text, column }: { readonly text: string; readonly column: ColumnGuess | null },
  choices: ImportChoices,
): PreviewCell {
  if (text === '') return refused('', 'The row has no such size: type one after the import.');
  const bare = /^[\d\s.,/⁄¼½¾⅛⅜⅝⅞⅓⅔-]+$/u.test(text);
  const unit = column?.unit ?? choices.bareUnit;
  const decimal = column?.decimalComma === true ? text.replace(/(\d),(\d+)/, '$1.$2') : text;
  const reading = readLength(bare && unit !== null ? `${decimal} ${unit}` : decimal, choices.units);
  if (!reading.ok) return refused(text, `${reading.message} ${reading.wayOut}`);
  if (THOUSANDS_LIKE.test(decimal) && (unit ?? (choices.units === 'metric' ? 'mm' : 'in')) === 'mm') {
    return doubt(
      reading.normalised,
      `«${text}» is read with a decimal point, as ${reading.mm} mm: write it without the point if that marks the thousands.`,
    );
  }
  if (decimal !== text && /,\d{3}(?!\d)/.test(text)) {
    return doubt(reading.normalised, `«${text}» is read with a decimal comma, like the rest of its column.`);
  }
  return clear(reading.normalised);
}

function sizeCells(
  text: string,
  choices: ImportChoices,
  column: ColumnGuess | null,
): Pick<PreviewRow, 'length' | 'width'> {
  if (text === '') {
    const none = refused('', 'The row has no size: type one after the import.');
    return { length: none, width: none };
  }
  const unit = column?.unit ?? choices.bareUnit;
  const bare = /^[\d\s.,/⁄x×*¼½¾⅛⅜⅝⅞⅓⅔-]+$/iu.test(text);
  const reading = readSizeSet(bare && unit !== null ? `${text} ${unit}` : text, choices.units);
  if (!reading.ok) {
    const cell = refused(text, `${reading.message} ${reading.wayOut}`);
    return { length: cell, width: cell };
  }
  const [first, second, third] = reading.sizes;
  if (first === undefined || second === undefined) {
    return {
      length: clear(first?.normalised ?? ''),
      width: refused('', 'Only one size is given: type the other.'),
    };
  }
  const swap = choices.sizeOrder === 'width-length';
  const cells = [swap ? second : first, swap ? first : second].map((size) =>
    third === undefined
      ? clear(size.normalised)
      : doubt(
          size.normalised,
          `«${text}» has three sizes; the third is taken as the thickness and left out.`,
        ),
  );
  return { length: cells[0] ?? empty(), width: cells[1] ?? empty() };
}

function materialCell(
  text: string,
  thickness: { readonly text: string; readonly column: ColumnGuess | null },
  choices: ImportChoices,
): PreviewCell {
  const exact = productCalled(text, ['sheet', 'board'], choices.products);
  if (exact !== undefined) return clear(exact.id);
  const said = [text, thickness.text].filter((part) => part !== '').join(', ');
  if (choices.materialId !== '') {
    return said === ''
      ? clear(choices.materialId)
      : doubt(choices.materialId, `The list says «${said}»; the material chosen for this import is taken.`);
  }
  return said === ''
    ? empty()
    : doubt(
        '',
        `No material in the catalogue is called «${said}»: choose one for the whole import, or per part afterwards.`,
      );
}

function grainCell(text: string): PreviewCell {
  const word = text.trim().toLowerCase();
  if (word === '') return clear('along');
  if (['along', 'length', 'l', 'lengthwise', 'long', 'yes', 'y'].includes(word)) return clear('along');
  if (['across', 'width', 'w', 'crosswise', 'short', 'cross'].includes(word)) return clear('across');
  if (['free', 'none', 'any', 'no', 'n', 'n/a', '-', 'either'].includes(word)) return clear('free');
  return doubt('along', `«${text}» is not a grain direction; along the length is taken.`);
}

function edgeCells(
  at: (field: ColumnGuess['field']) => { readonly text: string; readonly column: ColumnGuess | null },
  choices: ImportChoices,
): PreviewRow['edges'] {
  const all = at('edges').text.trim().toLowerCase();
  const listed = edgesListed(all);
  const one = (field: 'edgeFront' | 'edgeBack' | 'edgeLeft' | 'edgeRight', edge: EdgeName): PreviewCell => {
    const own = at(field).text.trim();
    if (own === '' && all !== '' && listed === null)
      return doubt('hidden', `«${all}» does not say which edges are banded: set them after the import.`);
    return edgeCell(own === '' && listed?.includes(edge) === true ? 'yes' : own, choices);
  };
  return {
    front: one('edgeFront', 'front'),
    back: one('edgeBack', 'back'),
    left: one('edgeLeft', 'left'),
    right: one('edgeRight', 'right'),
  };
}

/** "all", "front, left", "none" -> edges; null when the words do not name edges. */
function edgesListed(text: string): readonly EdgeName[] | null {
  if (text === '' || ['none', 'no', '0', '-'].includes(text)) return [];
  if (['all', '4', 'all four', 'all round'].includes(text)) return ['front', 'back', 'left', 'right'];
  const words = text.split(/[\s,;+&/]+/).filter((word) => word !== '' && word !== 'and');
  const edges = words.filter((word): word is EdgeName => ['front', 'back', 'left', 'right'].includes(word));
  return edges.length === words.length ? edges : null;
}

function edgeCell(text: string, choices: ImportChoices): PreviewCell {
  const word = text.toLowerCase();
  if (['', '0', 'no', 'n', 'n/a', '-', '–', '—', 'none', 'hidden'].includes(word)) return clear('hidden');
  if (word === 'bare') return clear('bare');
  if (['1', 'x', 'y', 'yes', 'true', '✓', '✔'].includes(word)) {
    return choices.bandingId === ''
      ? doubt('bare', 'The edge is ticked, but no banding is chosen for this import: it is left bare.')
      : clear(choices.bandingId);
  }
  const product = productCalled(text, ['banding'], choices.products);
  if (product !== undefined) return clear(product.id);
  return choices.bandingId === ''
    ? doubt('hidden', `No banding in the catalogue is called «${text}»: the edge is left hidden.`)
    : doubt(choices.bandingId, `The list says «${text}»; the banding chosen for this import is taken.`);
}

function finishCell(text: string, { recipes, recipeId }: ImportChoices): PreviewCell {
  const word = text.trim().toLowerCase();
  if (word === '') return optional(recipeId);
  const recipe = recipes.find(({ name }) => name.trim().toLowerCase() === word);
  if (recipe !== undefined) return clear(recipe.id);
  if (['none', 'no', 'n', 'raw', 'no finish', 'n/a', '-', '–', '—', '0'].includes(word)) return clear('');
  return doubt(
    recipeId,
    recipeId === ''
      ? `No finish of this project is called «${text}»: the face is left raw.`
      : `The list says «${text}»; the finish chosen for this import is taken.`,
  );
}

/** Names in lower case to products still offered, kept per catalogue: an import asks thousands of times. */
const namesOf = new WeakMap<readonly Product[], ReadonlyMap<string, readonly Product[]>>();

/** The product of one of these kinds whose id, short name or name this is, capitals aside. */
function productCalled(
  text: string,
  kinds: readonly Product['kind'][],
  products: readonly Product[],
): Product | undefined {
  const names = namesOf.get(products) ?? productNames(products);
  namesOf.set(products, names);
  return names.get(text.toLowerCase())?.find(({ kind }) => kinds.includes(kind));
}

function productNames(products: readonly Product[]): ReadonlyMap<string, readonly Product[]> {
  const names = new Map<string, Product[]>();
  for (const product of products) {
    if (product.retired) continue;
    for (const name of new Set([product.id, product.shortName, product.name].map((one) => one.toLowerCase())))
      names.set(name, [...(names.get(name) ?? []), product]);
  }
  return names;
}
