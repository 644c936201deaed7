import type { Catalogue, Product } from '../../product.ts';
import type { AirSolvent } from '../air-check-input.ts';
import { airSubstance } from '../air-substance.ts';

export interface ProductVapour {
  /** High end of what evaporates per litre, g/L; null when not known. */
  readonly vocGPerL: number | null;
  readonly vocSource: string;
  readonly solvents: readonly AirSolvent[];
}

/** How figures of a product's own sheet are printed as a source. */
const OWN_SHEET = 'safety data sheet of the product, as entered';

/**
 * What evaporates from a product?
 *
 * @param product a finish or thinner; VOC in g/L, shares 0 to 1
 * @param catalogue with the list of solvents
 * @returns grams per litre at the high end of its range, and the vapours with their limits; null and empty where unknown
 *
 * Source: the catalogue's figures. Valid range: any product. Departures: where a range is given, its high end is taken, a
 * cautious rule of ours; figures of the product's own safety data sheet stand in place of the list's. Example: 350 to
 * 450 g/L of mineral spirits: 450.
 */
export function productVapour(product: Product, catalogue: Catalogue): ProductVapour {
  const { voc } = product.figures;
  const solvents = (product.solvents ?? []).map((line): AirSolvent => {
    const listed = catalogue.solvents?.find(({ id }) => id === line.solventId);
    const known = listed === undefined ? nothingKnown(line.solventId) : airSubstance(listed);
    const own = [line.molarMassGPerMol, line.lelPercent, line.limitMgPerM3].some((value) => value !== null);
    return {
      shareOfVoc: line.share,
      substance: {
        ...known,
        ...(own ? { id: `${known.id}@${product.id}` } : {}),
        ...(line.molarMassGPerMol === null ? {} : { molarMassGPerMol: line.molarMassGPerMol }),
        ...(line.lelPercent === null
          ? {}
          : { lelPercent: line.lelPercent, lelSource: OWN_SHEET, lelCautious: null }),
        ...(line.limitMgPerM3 === null ? {} : { limitMgPerM3: line.limitMgPerM3, limitSource: OWN_SHEET }),
      },
    };
  });
  const basis = voc === undefined ? '' : voc.source || voc.basis;
  return { vocGPerL: voc?.high ?? voc?.typical ?? null, vocSource: basis, solvents };
}

function nothingKnown(id: string): AirSolvent['substance'] {
  return {
    id,
    name: id,
    molarMassGPerMol: null,
    lelPercent: null,
    lelSource: null,
    lelCautious: null,
    limitMgPerM3: null,
    limitSource: null,
    shortTermMgPerM3: null,
    ceilingMgPerM3: null,
  };
}
