/** What the figures of the plan are called, by the last step of their path. Others are called as their field reads. */
const WORDS: Readonly<Record<string, string>> = {
  quantity: 'Quantity',
  lengthMm: 'Finished length',
  widthMm: 'Finished width',
  thicknessMm: 'Thickness',
  cutLengthMm: 'Cut length',
  cutWidthMm: 'Cut width',
  outlineMm: 'Edge length',
  runMm: 'Length to cover',
  stripMm: 'Strip to cut',
  totalBandedM: 'Banded edge, all pieces',
  showFaceM2: 'Show face',
  backFaceM2: 'Back face',
  seenEdgeM2: 'Seen edges',
  totalFinishM2: 'Finished area, all pieces',
  valueMm: 'Size',
  netM2: 'Net area',
  netM: 'Net length',
  stocks: 'To buy',
  boundStocks: 'Fewest any plan can need',
  costMinor: 'Cost',
  strips: 'Strips',
  edgeM: 'Banded edge',
  neededM: 'Needed',
  boughtM: 'Bought',
  wastedM: 'Wasted',
  rollsToBuy: 'Rolls to buy',
  showM2: 'Show faces',
  backM2: 'Back faces',
  edgeM2: 'Edges',
  areaM2: 'Area of one coat',
  litres: 'Liquid',
  litresAtLowCoverage: 'Liquid at low coverage',
  litresAtTypicalCoverage: 'Liquid at typical coverage',
  litresAtHighCoverage: 'Liquid at high coverage',
  thinnerLitres: 'Thinner',
  mixes: 'Mixes',
  pieces: 'Pieces',
  need: 'Need',
  needAtLowCoverage: 'Need at low coverage',
  needAtTypicalCoverage: 'Need at typical coverage',
  needAtHighCoverage: 'Need at high coverage',
  onHand: 'On hand',
  toBuy: 'To buy',
  boughtAmount: 'Bought',
  leftover: 'Left over',
  cost: 'Cost',
  fewestPacksCost: 'Cost with the fewest packs',
  netMinor: 'Before tax',
  taxMinor: 'Tax',
  totalMinor: 'Total',
  unpricedLines: 'Lines without a price',
  planned: 'Planned cost',
  parts: 'Part rows',
  bandedM: 'Banded edge',
  finishM2: 'Finished area',
  sheets: 'Sheets',
  toOrder: 'Still to order',
  open: 'Ordered, not yet paid',
  left: 'Left of the budget',
  forecast: 'Forecast at the end',
  forecastWithLabour: 'Forecast with own hours',
  labour: 'Own hours',
  readyMade: 'Ready made',
  saved: 'Saved by building it',
  savedWithLabour: 'Saved, own hours counted',
  perFinishM2: 'Cost of a finished square metre',
  perM2: 'Cost of a square metre',
  own: 'Borne by this project',
  priceChange: 'Charged above what was agreed',
  bound: 'Least any choice can cost',
  lineByLine: 'Each line where it is cheapest',
  now: 'In stock now',
  got: 'Coverage you got',
};

/** "cutLengthMm" is "Cut length"; a field nobody named reads as "Some other field". */
export function figureWords(field: string): string {
  const known = WORDS[field];
  if (known !== undefined) return known;
  const words = field.replaceAll(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The figures of a quote, in the words of its screen. */
const QUOTE_WORDS: Readonly<Record<string, string>> = {
  materials: 'Materials',
  markup: 'Markup on materials',
  labour: 'Work',
  net: 'Price before tax',
  tax: 'Tax',
  total: 'Total',
};

export function quoteFigureWords(field: string): string {
  return QUOTE_WORDS[field] ?? figureWords(field);
}
