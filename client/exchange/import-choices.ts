import type { Choice } from '../fields/choice-input.ts';
import { productChoices } from '../fields/products-of.ts';
import { getState } from '../state/store.ts';
import type { ImportColumn } from './set-column.ts';

type Field = ImportColumn['field'];
type Unit = Exclude<ImportColumn['unit'], null>;

/** What a column can be said to be. */
const FIELD_CHOICES: readonly (readonly [Field, string])[] = [
  ['ignore', 'leave out'],
  ['name', 'part name'],
  ['section', 'section'],
  ['quantity', 'quantity'],
  ['length', 'length, along the grain'],
  ['width', 'width, across the grain'],
  ['size', 'length and width together'],
  ['thickness', 'thickness'],
  ['material', 'material'],
  ['grain', 'grain direction'],
  ['edges', 'banded edges'],
  ['edgeFront', 'front edge'],
  ['edgeBack', 'back edge'],
  ['edgeLeft', 'left edge'],
  ['edgeRight', 'right edge'],
  ['finish', 'finish of both faces'],
  ['showFace', 'finish of the show face'],
  ['backFace', 'finish of the back face'],
  ['note', 'note'],
  ['shape', 'shape: rectangle or round'],
  ['diameter', 'diameter of a round part'],
  ['radius', 'radius of all four corners'],
  ['cornerFrontLeft', 'radius, front left'],
  ['cornerFrontRight', 'radius, front right'],
  ['cornerBackLeft', 'radius, back left'],
  ['cornerBackRight', 'radius, back right'],
];

export function fieldChoices(): readonly Choice[] {
  return FIELD_CHOICES.map(([value, text]) => ({ value, text }));
}

const UNIT_WORDS: Readonly<Record<Unit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
  ft: 'feet',
};

/** Units of plain numbers; empty is `otherwise`. */
export function unitChoices(otherwise: string): readonly Choice[] {
  return [
    { value: '', text: otherwise },
    ...Object.entries(UNIT_WORDS).map(([value, text]) => ({ value, text })),
  ];
}

export function projectUnitWords(): string {
  return getState().project?.settings.units === 'us' ? 'inches' : 'millimetres';
}

export function materialChoices(chosen: string): readonly Choice[] {
  const { catalogue } = getState();
  return catalogue === null ? [] : productChoices(catalogue, ['sheet', 'board'], chosen, 'leave it open');
}

export function bandingChoices(chosen: string): readonly Choice[] {
  const { catalogue } = getState();
  return catalogue === null
    ? []
    : productChoices(catalogue, ['banding'], chosen, 'leave them without banding');
}

/** Short names of products, as the part list shows them. */
export function productWords(id: string): string {
  return getState().catalogue?.products.find((product) => product.id === id)?.shortName ?? id;
}

export function finishChoices(): readonly Choice[] {
  const recipes = getState().project?.rows.recipes ?? [];
  return [{ value: '', text: 'leave it raw' }, ...recipes.map(({ id, name }) => ({ value: id, text: name }))];
}

export function finishWords(id: string): string {
  return getState().project?.rows.recipes.find((recipe) => recipe.id === id)?.name ?? id;
}
