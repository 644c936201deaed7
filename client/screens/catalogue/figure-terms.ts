import type { PRODUCT_FIGURES, ProductFigureName, ProductKind } from '../../../server/planning/product.ts';

type Table = typeof PRODUCT_FIGURES;
interface Term<Name extends ProductFigureName> {
  readonly words: string;
  readonly unit: Table[Name]['unit'];
  readonly kinds: Table[Name]['kinds'];
}

/** Catalogue figures as the forms name them. Units and kinds are held to the planner's own table by their types. */
export const FIGURE_TERMS: { readonly [Name in ProductFigureName]: Term<Name> } = {
  thicknessNominal: { words: 'Thickness, nominal', unit: 'mm', kinds: ['sheet', 'board'] },
  thicknessActual: { words: 'Thickness, actual', unit: 'mm', kinds: ['sheet', 'board', 'banding'] },
  width: { words: 'Width', unit: 'mm', kinds: ['board', 'banding'] },
  coverage: { words: 'Coverage per coat', unit: 'm2/L', kinds: ['finish'] },
  solidsByVolume: { words: 'Solids by volume', unit: 'percent', kinds: ['finish'] },
  dryFilm: { words: 'Dry film per coat', unit: 'um', kinds: ['finish'] },
  firstCoatFactor: { words: 'First coat on bare wood takes', unit: 'ratio', kinds: ['finish'] },
  touchDry: { words: 'Touch dry', unit: 'min', kinds: ['finish'] },
  handleDry: { words: 'Dry to handle', unit: 'min', kinds: ['finish'] },
  cure: { words: 'Cured', unit: 'min', kinds: ['finish'] },
  workingTime: { words: 'Working time', unit: 'min', kinds: ['finish', 'glue', 'filler'] },
  potLife: { words: 'Pot life', unit: 'min', kinds: ['finish', 'glue'] },
  voc: { words: 'Solvent that evaporates (VOC)', unit: 'g/L', kinds: ['finish', 'thinner'] },
  density: { words: 'Density', unit: 'g/L', kinds: ['finish', 'thinner', 'glue', 'filler'] },
  flashPoint: { words: 'Flash point', unit: 'C', kinds: ['finish', 'thinner'] },
  minTemperature: { words: 'Work from', unit: 'C', kinds: ['finish', 'glue'] },
  maxTemperature: { words: 'Work up to', unit: 'C', kinds: ['finish', 'glue'] },
  maxHumidity: { words: 'Humidity up to', unit: 'percent', kinds: ['finish'] },
  shelfLifeUnopened: {
    words: 'Keeps unopened',
    unit: 'months',
    kinds: ['finish', 'thinner', 'glue', 'filler'],
  },
  shelfLifeOpened: {
    words: 'Keeps once opened',
    unit: 'months',
    kinds: ['finish', 'thinner', 'glue', 'filler'],
  },
  areaPerPiece: { words: 'One piece serves', unit: 'm2', kinds: ['abrasive', 'consumable'] },
  usePerMetre: { words: 'Use per metre', unit: 'unit/m', kinds: ['glue'] },
  usePerArea: { words: 'Use per area', unit: 'unit/m2', kinds: ['filler', 'glue', 'consumable'] },
};

/** The figures a kind of product can have, in the order they are listed. */
export function figuresOfKind(kind: ProductKind): readonly ProductFigureName[] {
  return (Object.keys(FIGURE_TERMS) as ProductFigureName[]).filter((name) =>
    (FIGURE_TERMS[name].kinds as readonly ProductKind[]).includes(kind),
  );
}
