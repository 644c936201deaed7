import type { CuttingLayout, PlanView } from '../../../server/http/contract.ts';
import { layoutDrawing } from '../../drawing/layout-drawing.ts';
import { type SheetPiece, sheetPieces } from '../../drawing/sheet-pieces.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { type CutLine, cutLines } from './cut-lines.ts';
import { cutsOfLayout, cuttingListOf } from './cutting-list.ts';
import { type NumberedPart, partNumbers } from './part-numbers.ts';

export type Material = PlanView['materials'][number];
export type Layout = Material['layouts'][number];

/** One layout with all that the screen and the paper show of it. */
export interface LayoutView {
  readonly book: ScreenBook;
  readonly material: Material;
  readonly layout: Layout;
  readonly pieces: readonly SheetPiece[];
  readonly parts: readonly NumberedPart[];
  /** Part ids in the order of the tree; a tick names a piece by its place here. */
  readonly partIds: readonly string[];
  readonly nameOf: (partId: string) => string;
  /** The name, with the section where another part of the layout is called the same. */
  readonly fullNameOf: (partId: string) => string;
  /** Null until the server has said them. */
  readonly cuts: CuttingLayout | null;
  readonly lines: readonly CutLine[];
}

export function layoutView(book: ScreenBook, material: Material, layout: Layout): LayoutView {
  const pieces = sheetPieces(layout, book.settings.kerfMm);
  const partIds = pieces.flatMap(({ partId }) => (partId === null ? [] : [partId]));
  const names = new Map(
    book.project.rows.parts.map(({ id, name }) => [id, name === '' ? 'part without a name' : name]),
  );
  const nameOf = (partId: string): string => names.get(partId) ?? partId;
  const parts = partNumbers(pieces);
  const sections = new Map(book.project.rows.parts.map(({ id, section }) => [id, section]));
  const fullNameOf = (partId: string): string => {
    const name = nameOf(partId);
    const section = sections.get(partId) ?? '';
    const alone = parts.every((part) => part.partId === partId || nameOf(part.partId) !== name);
    return alone || section === '' ? name : `${name}, ${section}`;
  };
  const cuts = cutsOfLayout(cuttingListOf(book.project), material.id, layout.id, partIds);
  return {
    book,
    material,
    layout,
    pieces,
    parts,
    partIds,
    nameOf,
    fullNameOf,
    cuts,
    lines: cutLines(cuts?.cuts ?? [], book.formats, fullNameOf),
  };
}

export interface LayoutLook {
  readonly width: number;
  readonly upright: boolean;
  readonly done: (piece: number) => boolean;
}

/** The drawing of a layout at the given width. */
export function drawLayout(view: LayoutView, look: LayoutLook) {
  const { book, material, layout, parts, nameOf, cuts } = view;
  const { formats, settings, project } = book;
  const size = (lengthMm: number, widthMm: number): string =>
    material.kind === 'board'
      ? formats.length(lengthMm)
      : `${formats.length(lengthMm)} × ${formats.length(widthMm)}`;
  const free = new Set(project.rows.parts.filter(({ grain }) => grain === 'free').map(({ id }) => id));
  const numbers = new Map(parts.map((part) => [part.partId, part]));
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  return layoutDrawing({
    layout,
    kind: material.kind,
    kerfMm: settings.kerfMm,
    cuts: cuts?.cuts ?? [],
    ...look,
    words: ({ partId, lengthMm, widthMm }) => {
      const part = partId === null ? undefined : numbers.get(partId);
      return part === undefined
        ? { number: '', name: 'offcut', size: size(lengthMm, widthMm) }
        : {
            number: String(part.number),
            name: nameOf(part.partId),
            size: size(part.lengthMm, part.widthMm),
          };
    },
    grained: ({ partId }) => partId !== null && !free.has(partId),
    description: `${material.name}, ${layout.label}: ${count} parts. ${parts.map((part) => `${part.count} ${nameOf(part.partId)}`).join(', ')}.`,
  });
}
