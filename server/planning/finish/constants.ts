import type { ApplicationMethod } from '../project-input.ts';

/**
 * Spreading-rate constant: m2/L = 10 x solids by volume in percent / dry film in um. Exact: one litre is 1e15 um3,
 * a square metre is 1e12 um2, and a percent is a hundredth.
 */
export const M2_UM_PER_LITRE_PERCENT = 10;

/**
 * Area in square feet that one US gallon of pure solids covers at 1 mil dry film. 231 in3 / 0.001 in / 144 = 1604.17;
 * printed as 1604 in trade coverage charts (finishing Q&A, paintcenter.org, December 2007).
 */
export const FT2_MIL_PER_GALLON_SOLIDS = 1604;

/** Exact: one mil is 0.001 in = 25.4 um. */
export const UM_PER_MIL = 25.4;

export interface SourcedShare {
  readonly share: number;
  readonly source: string;
}

/**
 * Share of the liquid that ends on the work. Brush: brushing loses almost nothing. Sprays: the least figures of the
 * ranges named; trays, rails and open frames do worse than flat panels. The regulatory table gives 0.25 for airless
 * too, but for metal furniture; the wood-furniture case is followed there.
 */
export const TRANSFER_EFFICIENCY: Readonly<Record<ApplicationMethod, SourcedShare>> = {
  brush: { share: 1, source: "published finisher's Q&A, 2009: brushing loses almost nothing" },
  roller: { share: 1, source: "taken as brushing: published finisher's Q&A, 2009" },
  wipe: { share: 1, source: "taken as brushing: published finisher's Q&A, 2009" },
  'spray-hvlp': {
    share: 0.65,
    source: 'South Coast AQMD, spray equipment transfer efficiency: 65 % is the least accepted for HVLP',
  },
  'spray-airless': {
    share: 0.5,
    source: 'Colorado wood-furniture waste-reduction case study: airless 50-60 %, lower end',
  },
  'spray-air': {
    share: 0.25,
    source: 'Wis. Admin. Code NR 440.48 Table 1: air-atomised spray 0.25 (metal furniture)',
  },
};

/** Litres that stay in brush, tray, cloth, or gun and hose after one coat. Common practice, no source. */
export const SESSION_LOSS_L: Readonly<Record<ApplicationMethod, number>> = {
  brush: 0.02,
  roller: 0.06,
  wipe: 0.01,
  'spray-hvlp': 0.05,
  'spray-airless': 0.3,
  'spray-air': 0.05,
};

/** Area one person coats in a minute on furniture parts, m2/min. Common practice, no source. */
export const APPLICATION_RATE_M2_PER_MIN: Readonly<Record<ApplicationMethod, number>> = {
  brush: 0.15,
  roller: 0.3,
  wipe: 0.25,
  'spray-hvlp': 0.5,
  'spray-airless': 1,
  'spray-air': 0.5,
};

/** What workings print beside the two tables above and other rules of thumb. */
export const PRACTICE_SOURCE = 'common practice, no source';

/** Most coats one step may ask for (the project document's limit). */
export const MAX_COATS = 20;

/** Most thinner, as a share of the product's volume (the project document's limit). */
export const MAX_THINNING = 10;

/** More thinner than product is right for a washcoat and a slip otherwise, so it is reckoned with a warning. */
export const DOUBTFUL_THINNING = 1;

/** Least share that may end on the work; below it the entry is a slip of the finger. */
export const MIN_TRANSFER_EFFICIENCY = 0.01;

/** Most litres one coat may leave in brush, tray or gun. */
export const MAX_SESSION_LOSS_L = 1000;

/** Most of the finish that may be lost, as a share of what is laid. */
export const MAX_LOSS_SHARE = 1;

/** Most of anything one rule or line may ask for, in the product's unit. */
export const MAX_AMOUNT = 1_000_000;

/** A catalogue figure outside these is a slip of the finger and counts as not known. Any unit. */
export const LEAST_FIGURE = 1e-6;
export const MOST_FIGURE = 1e9;

/** Rows a working lists by name before the smaller ones are gathered into one. */
export const WORKING_ROWS_SHOWN = 24;

/** A ratio this little above a whole number is the whole number: floating-point dust, not another mix. */
export const WHOLE_NUMBER_DUST = 1e-9;
