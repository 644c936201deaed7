import { type Figure, figure, type WorkingInput } from '../figure.ts';
import type { MaterialPlan, StockLayout } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import type { Blank } from './blank.ts';
import type { LaidBlanks } from './laid-blanks.ts';
import type { MaterialBlanks } from './material-blanks.ts';
import type { StockOffer } from './stock-offer.ts';

const MM_PER_METRE = 1000;
const MM2_PER_M2 = 1_000_000;
/** A working lists so many rows; the rest are summed. */
const ROWS_LISTED = 20;

interface Planned {
  readonly offers: readonly StockOffer[];
  readonly unpriced: boolean;
  /** Costs are areas, since no stock has a price above 0. */
  readonly byArea: boolean;
  /** Rows that fit no stock. */
  readonly leftOut: number;
}

/**
 * The figures of one material with their workings.
 *
 * `material`: blanks, mm. Result: thickness (mm), net area (m2), net length (m), and `ofPlan`, which adds the stock
 * count, its bound and the cost (minor units) of a cutting plan. No source: sums only.
 */
export function materialFigures(
  material: MaterialBlanks,
  input: ProjectInput,
): {
  thicknessMm: Figure;
  netM2: Figure;
  netM: Figure;
  ofPlan(
    laid: LaidBlanks,
    planned: Planned,
  ): Pick<MaterialPlan, 'stocks' | 'boundStocks' | 'proven' | 'costMinor' | 'layouts'>;
} {
  const board = material.product.kind === 'board';
  const unknown =
    material.unknownRows > 0
      ? [`${material.unknownRows} rows without a known cut size or quantity are left out.`]
      : [];
  const areaM2 = (blank: Blank): number => (blank.lengthMm * blank.widthMm * blank.count) / MM2_PER_M2;
  const lengthM = (blank: Blank): number => (blank.lengthMm * blank.count) / MM_PER_METRE;
  const net = (unit: 'm2' | 'm', rule: string, of: (blank: Blank) => number): Figure =>
    figure(
      material.blanks.reduce((sum, blank) => sum + of(blank), 0),
      unit,
      {
        rule,
        inputs: rowInputs(material.blanks, unit, of),
        ...(unknown.length > 0 ? { notes: unknown } : {}),
      },
    );
  return {
    thicknessMm: thickness(material, input),
    netM2: net('m2', 'net area = sum of cut length x cut width x quantity', areaM2),
    netM: board
      ? net('m', 'net length = sum of cut length x quantity', lengthM)
      : figure(null, 'm', { rule: 'net length', inputs: [], notes: ['Sheets are reckoned by area.'] }),
    ofPlan: (laid, planned) => planFigures(laid, planned, material, input, unknown),
  };
}

function rowInputs(blanks: readonly Blank[], unit: 'm2' | 'm', of: (blank: Blank) => number): WorkingInput[] {
  const listed: WorkingInput[] = blanks.slice(0, ROWS_LISTED).map((blank) => ({
    name: `${blank.name}, ${blank.count} pcs`,
    value: of(blank),
    unit,
    from: `parts/${blank.partId}/cutLengthMm`,
  }));
  const rest = blanks.slice(ROWS_LISTED);
  if (rest.length === 0) return listed;
  const sum = rest.reduce((total, blank) => total + of(blank), 0);
  return [...listed, { name: `${rest.length} more rows`, value: sum, unit }];
}

function thickness(material: MaterialBlanks, input: ProjectInput): Figure {
  const measured = input.measurements.find((measurement) => measurement.productId === material.product.id);
  if (measured !== undefined)
    return figure(measured.thicknessMm, 'mm', {
      rule: 'thickness = as measured in this project',
      inputs: [{ name: 'measured thickness', value: measured.thicknessMm, unit: 'mm' }],
    });
  const { thicknessActual, thicknessNominal } = material.product.figures;
  const typical = thicknessActual?.typical ?? thicknessNominal?.typical ?? null;
  if (typical === null)
    return figure(null, 'mm', {
      rule: 'thickness from the catalogue',
      inputs: [],
      notes: [`The catalogue has no thickness for ${material.product.name}.`],
    });
  const from = thicknessActual?.typical === typical ? thicknessActual : thicknessNominal;
  return figure(typical, 'mm', {
    rule: 'thickness = typical figure of the catalogue',
    inputs: [
      { name: 'thickness', value: typical, unit: 'mm', source: from?.source || (from?.basis ?? 'catalogue') },
    ],
  });
}

function planFigures(
  laid: LaidBlanks,
  { offers, unpriced, byArea, leftOut }: Planned,
  material: MaterialBlanks,
  input: ProjectInput,
  unknown: readonly string[],
): Pick<MaterialPlan, 'stocks' | 'boundStocks' | 'proven' | 'costMinor' | 'layouts'> {
  const { id, kind } = material.product;
  const word = kind === 'board' ? 'boards' : 'sheets';
  const bought = laid.layouts.filter((layout) => layout.packId !== null);
  const used = laid.layouts.filter((layout) => layout.packId === null);
  const stocks = countOf(bought);
  const left = leftOut > 0 ? [`${leftOut} rows fit no ${word} and are left out.`] : [];
  const byPack = packCounts(bought, offers);
  // With one size to buy, fewest is cheapest whatever it costs.
  const oneSize = offers.filter((offer) => offer.packId !== null).length === 1;
  const proven = byArea ? oneSize && stocks <= laid.boundStocks : laid.cost <= laid.boundCost;
  const costMinor = byPack.reduce((sum, { offer, count }) => sum + count * (offer.priceMinor ?? 0), 0);
  const counted = byPack.map(
    ({ offer, count }): WorkingInput => ({ name: offer.label, value: count, unit: 'pcs' }),
  );
  const settings: WorkingInput[] = [
    { name: 'saw kerf', value: input.settings.kerfMm, unit: 'mm' },
    ...(kind === 'sheet'
      ? [{ name: 'trim per side of a full sheet', value: input.settings.sheetTrimMm, unit: 'mm' as const }]
      : []),
  ];
  return {
    stocks: figure(stocks, 'pcs', {
      rule: `${word} to buy = ${word} of the cutting plan that are not on hand`,
      inputs: [
        ...counted,
        ...settings,
        { name: 'net area', value: laid.netM2, unit: 'm2', from: `materials/${id}/netM2` },
      ],
      notes: [
        proven
          ? 'No plan can cost less: the plan meets its lower bound.'
          : `The best plan found; no plan can need fewer than ${laid.boundStocks}.`,
        ...(laid.begunStocks === undefined
          ? []
          : [`${laid.begunStocks} ${word} of them are being cut and stay as they are.`]),
        ...(used.length > 0 ? [`${countOf(used)} pieces on hand are used too.`] : []),
        ...wasteNote(bought, laid.netM2, used.length > 0),
        ...left,
        ...unknown,
      ],
    }),
    boundStocks: figure(laid.boundStocks, 'pcs', {
      rule: 'fewest any plan can need = pieces weighed so that those which cannot share a stock count as whole ones, divided by the weight of one stock, rounded up',
      inputs: [
        { name: 'net area', value: laid.netM2, unit: 'm2', from: `materials/${id}/netM2` },
        ...settings,
        {
          name: 'bound',
          value: laid.boundStocks,
          unit: 'pcs',
          source: 'S. P. Fekete and J. Schepers, Mathematical Programming 91 (2001): dual feasible functions',
        },
      ],
      notes: [
        'Stock on hand is taken off first.',
        ...(laid.boundRaised === true
          ? ['A longer search has raised the bounds: it tried out all plans of a small job, or weighed more.']
          : []),
        ...left,
      ],
    }),
    proven,
    costMinor: figure(unpriced ? null : costMinor, 'minor', {
      rule: 'cost = sum of count x price, without tax',
      inputs: byPack.map(({ offer, count }) => ({
        name: `${count} x ${offer.label} at`,
        value: offer.priceMinor,
        unit: 'minor',
      })),
      notes: unpriced
        ? ['A price is not known.']
        : [
            `No plan can cost less than ${byArea ? 0 : Math.ceil(laid.boundCost)} in minor units.`,
            ...left,
            ...unknown,
          ],
    }),
    layouts: laid.layouts,
  };
}

function countOf(layouts: readonly StockLayout[]): number {
  return layouts.reduce((sum, layout) => sum + layout.count, 0);
}

function packCounts(
  bought: readonly StockLayout[],
  offers: readonly StockOffer[],
): { offer: StockOffer; count: number }[] {
  return offers
    .map((offer) => ({ offer, count: countOf(bought.filter((layout) => layout.packId === offer.packId)) }))
    .filter(({ offer, count }) => offer.packId !== null && count > 0);
}

/** The waste of the gross and what must be added to the net: two different percentages of one loss. */
function wasteNote(bought: readonly StockLayout[], netM2: number, usesOnHand: boolean): string[] {
  if (bought.length === 0 || usesOnHand) return [];
  const grossM2 = bought.reduce(
    (sum, { count, lengthMm, widthMm }) => sum + (count * lengthMm * widthMm) / MM2_PER_M2,
    0,
  );
  const ofGross = ((1 - netM2 / grossM2) * 100).toFixed(1);
  const onNet = ((grossM2 / netM2 - 1) * 100).toFixed(1);
  return [
    `Offcuts, saw cuts and trim are ${ofGross} % of what is bought, or ${onNet} % on top of the net area.`,
  ];
}
