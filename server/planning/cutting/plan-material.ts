import { figure } from '../figure.ts';
import type { MaterialPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { type Blank, laidSize } from './blank.ts';
import { fitProblem, fitsOffer } from './fit-problem.ts';
import { fullWidthBlanks } from './full-width-blanks.ts';
import type { MaterialBlanks } from './material-blanks.ts';
import { materialFigures } from './material-figures.ts';
import { layBlanks } from './sheet-2d/lay-blanks.ts';
import { layBars } from './stock-1d/lay-bars.ts';
import { stockOffers } from './stock-offers.ts';

/**
 * The cutting plan of one sheet or board product: layouts, how many to buy, the bound, the cost.
 *
 * `material`: the blanks, mm. `input`: settings, stock on hand. `effort`: share of an edit's work; null when kerf or trim
 * cannot be used, which leaves the plan open. Result: the plan, and the problems of parts and stock.
 */
export function planMaterial(
  material: MaterialBlanks,
  input: ProjectInput,
  effort: number | null,
): { plan: MaterialPlan; problems: Problem[] } {
  const { product } = material;
  const { kerfMm } = input.settings;
  const figures = materialFigures(material, input);
  const common = {
    id: product.id,
    kind: product.kind === 'board' ? ('board' as const) : ('sheet' as const),
    name: product.name,
    thicknessMm: figures.thicknessMm,
    netM2: figures.netM2,
    netM: figures.netM,
  };
  const open = (why: string): MaterialPlan => ({
    ...common,
    stocks: figure(null, 'pcs', {
      rule: 'sheets or boards the cutting plan needs',
      inputs: [],
      notes: [why],
    }),
    boundStocks: figure(null, 'pcs', { rule: 'fewest any plan can need', inputs: [], notes: [why] }),
    proven: false,
    costMinor: figure(null, 'minor', {
      rule: 'sum of the prices of what is bought',
      inputs: [],
      notes: [why],
    }),
    layouts: [],
  });
  if (effort === null)
    return { plan: open('The saw kerf or the sheet trim in the settings cannot be used.'), problems: [] };

  const { offers, problems } = stockOffers(product, input);
  const toBuy = offers.filter((offer) => offer.packId !== null);
  const [first] = toBuy;
  if (first === undefined) return { plan: open('No size of this material is known.'), problems };
  const blanks = product.kind === 'board' ? fullWidthBlanks(material.blanks, first.widthMm) : material.blanks;
  const fitting: Blank[] = [];
  for (const blank of blanks) {
    if (toBuy.some((offer) => fitsOffer(blank, offer))) fitting.push(blank);
    else problems.push(fitProblem(blank, product, toBuy, input.settings));
  }

  // Without prices, or when stock is free, the plan saves area instead of money.
  const unpriced = toBuy.some((offer) => offer.priceMinor === null);
  const byArea = unpriced || toBuy.every((offer) => offer.priceMinor === 0);
  const costs = offers.map((offer) => {
    if (offer.packId === null) return 0;
    return byArea ? Math.round(offer.lengthMm * offer.widthMm) : (offer.priceMinor ?? 0);
  });
  const toLengthOnly =
    product.kind === 'board' && fitting.every((blank) => laidSize(blank).widthMm === first.widthMm);
  const lay = toLengthOnly ? layBars : layBlanks;
  const laid = lay(fitting, offers, costs, { kerfMm, effort });
  return {
    plan: {
      ...common,
      ...figures.ofPlan(laid, { offers, byArea, unpriced, leftOut: blanks.length - fitting.length }),
    },
    problems,
  };
}
