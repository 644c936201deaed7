import type { ProductChoices, ProductKind } from '../../../server/planning/product.ts';

type Plain = Exclude<keyof ProductChoices, 'hardenerId' | 'mixBase' | 'mixHardener'>;

export interface ChoiceTerm {
  readonly words: string;
  readonly kinds: readonly ProductKind[];
  /** Values to choose from; absent for free text and numbers. */
  readonly values?: Readonly<Record<string, string>>;
  readonly number?: true;
}

/** The properties of a product that are not figures, as the forms name them. */
export const CHOICE_TERMS: Readonly<Record<Plain, ChoiceTerm>> = {
  species: { words: 'Species', kinds: ['sheet', 'board', 'banding'] },
  colour: { words: 'Colour', kinds: ['sheet', 'banding', 'finish', 'filler'] },
  nominal: { words: 'Sold as', kinds: ['board'] },
  bandMaterial: {
    words: 'Made of',
    kinds: ['banding'],
    values: { veneer: 'veneer', solid: 'solid wood', plastic: 'plastic' },
  },
  deducted: {
    words: 'Comes off the cut size',
    kinds: ['banding'],
    values: { auto: 'from 1 mm thickness up', yes: 'always', no: 'never' },
  },
  role: {
    words: 'Used as',
    kinds: ['finish'],
    values: {
      conditioner: 'conditioner',
      stain: 'stain',
      sealer: 'sealer',
      topcoat: 'topcoat',
      primer: 'primer',
      paint: 'paint',
      oil: 'oil',
      hardener: 'hardener',
    },
  },
  carrier: {
    words: 'Thinned and cleaned with',
    kinds: ['finish'],
    values: { oil: 'oil solvent', water: 'water', alcohol: 'alcohol', 'lacquer-solvent': 'lacquer thinner' },
  },
  rags: {
    words: 'Used rags',
    kinds: ['finish', 'thinner'],
    values: { 'self-heating': 'can heat up and ignite', no: 'do not heat up', unknown: 'not known' },
  },
  grit: { words: 'Grit', kinds: ['abrasive'], number: true },
};

export function choicesOfKind(kind: ProductKind): readonly Plain[] {
  return (Object.keys(CHOICE_TERMS) as Plain[]).filter((name) => CHOICE_TERMS[name].kinds.includes(kind));
}
