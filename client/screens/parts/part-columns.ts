import { formatArea } from '../../../server/planning/display/format-area.ts';
import { formatMetres } from '../../../server/planning/display/format-metres.ts';
import { cellLength } from './cell-length.ts';
import { HIDDEN_EDGE, type PartBook } from './part-book.ts';
import { edgeView, nameView, plainView, productView, quantityView, recipeView } from './part-cell-views.ts';
import { GRAIN_CHOICES, SHAPE_CHOICES } from './part-choices.ts';
import { choice, computed, length, type PartColumn, text } from './part-column-kinds.ts';
import type { PartField } from './part-sheet-row.ts';
import { partTyping } from './part-typing.ts';

/** The part list's columns, in the order they stand. `id` is the part's field, as problems and changes name it. */

export const CORNER_FIELDS = [
  'radiusFrontLeft',
  'radiusFrontRight',
  'radiusBackLeft',
  'radiusBackRight',
] as const;

/** The columns; `book` gives the choices as they are when an editor opens. */
export function partColumns(book: () => PartBook): readonly PartColumn[] {
  const withUnit = (name: string) => (): string =>
    book().settings.units === 'metric' ? `${name}, mm` : name;
  const edge = (field: PartField, header: string): PartColumn =>
    choice(field, header, `${header} edge`, 116, () => book().edgeChoices, edgeView, {
      group: 'Edges',
      cleared: HIDDEN_EDGE,
      fit: { min: 76, max: 160 },
    });
  const corner = (
    field: (typeof CORNER_FIELDS)[number],
    header: PartColumn['header'],
    describe: string,
  ): PartColumn => ({
    ...length(field, header, describe, 84, (plan) => plan.cornersMm[CORNER_FIELDS.indexOf(field)] ?? null),
    group: 'Corner radii',
    hidden: true,
  });
  const finish = (field: PartField, header: PartColumn['header'], describe: string): PartColumn =>
    choice(field, header, describe, 116, () => book().recipeChoices, recipeView, {
      group: 'Finish',
      fit: { min: 96, max: 170 },
      filters: true,
    });
  return [
    {
      id: 'number',
      header: '#',
      describe: 'row number',
      width: 44,
      narrow: 'hidden',
      pinned: true,
      numeric: true,
      kind: 'ordinal',
      view: (row) => ({ text: row.kind === 'part' || row.kind === 'coming' ? String(row.number) : '' }),
      raw: () => '',
    },
    {
      ...text('name', 'Part', 'part name', 156),
      fit: { min: 132, max: 220 },
      narrow: 116,
      pinned: true,
      view: nameView,
    },
    {
      ...text('section', 'Section', 'section, a grouping of your own', 100),
      fit: { min: 80, max: 140 },
      filters: true,
    },
    {
      ...text('quantity', 'Qty', 'quantity', 54),
      numeric: true,
      typing: partTyping('quantity'),
      view: quantityView,
      order: (row) => row.plan?.quantity ?? null,
    },
    length('length', withUnit('Length'), 'finished length, along the grain', 96, (plan) => plan.lengthMm),
    length('width', withUnit('Width'), 'finished width', 92, (plan) => plan.widthMm),
    choice('materialId', 'Material', 'material', 112, () => book().materialChoices, productView, {
      fit: { min: 92, max: 150 },
      filters: true,
    }),
    choice('grain', 'Grain', 'grain direction', 70, () => GRAIN_CHOICES, plainView, { cleared: 'along' }),
    edge('edgeFront', 'Front'),
    edge('edgeBack', 'Back'),
    edge('edgeLeft', 'Left'),
    edge('edgeRight', 'Right'),
    corner('radiusFrontLeft', 'Front left', 'radius of the front left corner'),
    corner('radiusFrontRight', 'Front right', 'radius of the front right corner'),
    corner('radiusBackLeft', 'Back left', 'radius of the back left corner'),
    corner('radiusBackRight', 'Back right', 'radius of the back right corner'),
    choice('shape', 'Shape', 'shape', 92, () => SHAPE_CHOICES, plainView, { cleared: 'rectangle' }),
    finish('showRecipeId', 'Show face', 'finish of the show face'),
    finish('backRecipeId', 'Back face', 'finish of the back face'),
    computed('cutLengthMm', withUnit('Cut length'), 'cut length, worked out', 112, (value, row) =>
      cellLength(value, row.book.settings),
    ),
    computed('cutWidthMm', withUnit('Cut width'), 'cut width, worked out', 108, (value, row) =>
      cellLength(value, row.book.settings),
    ),
    computed(
      'totalBandedM',
      'Banded',
      'banded edge of all pieces, worked out',
      88,
      (value, row) => formatMetres(value, row.book.settings),
      'bandedM',
    ),
    computed(
      'totalFinishM2',
      'Finish',
      'finished area of all pieces, worked out',
      88,
      (value, row) => formatArea(value, row.book.settings),
      'finishM2',
    ),
    text('grainMatch', 'Match', 'grain match: parts of one name are cut side by side from one sheet', 90),
    text('note', 'Note', 'note', 220),
  ];
}
