import type { Problem } from '../../planning/problem.ts';
import type { FullDocument } from '../document-schema.ts';
import { numberRows } from './number-rows.ts';

type Numbered<Row> = Omit<Row, 'id'> & { readonly id: string };
type NumberedRows<Rows extends readonly unknown[]> = readonly Numbered<Rows[number]>[];
type GivenRecipe = FullDocument['recipes'][number];
type GivenBlend = FullDocument['blends'][number];

/** The rows of a document, every one with an id of its own. */
export interface NumberedDocument {
  readonly sizes: NumberedRows<FullDocument['sizes']>;
  readonly parts: NumberedRows<FullDocument['parts']>;
  readonly recipes: readonly (Omit<Numbered<GivenRecipe>, 'steps'> & {
    readonly steps: NumberedRows<GivenRecipe['steps']>;
  })[];
  readonly blends: readonly (Omit<Numbered<GivenBlend>, 'components'> & {
    readonly components: NumberedRows<GivenBlend['components']>;
  })[];
  readonly rules: NumberedRows<FullDocument['rules']>;
  readonly extras: NumberedRows<FullDocument['extras']>;
  readonly onHand: NumberedRows<FullDocument['onHand']>;
  readonly measurements: NumberedRows<FullDocument['measurements']>;
  readonly shopHours: NumberedRows<FullDocument['shopHours']>;
  readonly daysOff: NumberedRows<FullDocument['daysOff']>;
  readonly climateRows: NumberedRows<FullDocument['climateRows']>;
  readonly pins: NumberedRows<FullDocument['pins']>;
  readonly doneTasks: NumberedRows<FullDocument['doneTasks']>;
  readonly arrivals: NumberedRows<FullDocument['arrivals']>;
  readonly budgets: NumberedRows<FullDocument['budgets']>;
  readonly orders: NumberedRows<FullDocument['orders']>;
  readonly orderLines: NumberedRows<FullDocument['orderLines']>;
  readonly receipts: NumberedRows<FullDocument['receipts']>;
  readonly stockUses: NumberedRows<FullDocument['stockUses']>;
  readonly payments: NumberedRows<FullDocument['payments']>;
  readonly substitutes: NumberedRows<FullDocument['substitutes']>;
  readonly workHours: NumberedRows<FullDocument['workHours']>;
  readonly quotes: NumberedRows<FullDocument['quotes']>;
}

/** Gives every row of a document its id, and reports the ids that two rows of a table have. See `numberRows`. */
export function numberDocument(given: FullDocument): {
  readonly rows: NumberedDocument;
  readonly problems: readonly Problem[];
} {
  const sizes = numberRows('sizes', given.sizes);
  const parts = numberRows('parts', given.parts);
  const recipes = numberRows('recipes', given.recipes);
  const steps = numberRows(
    'steps',
    given.recipes.flatMap((recipe) => recipe.steps),
  );
  const blends = numberRows('blends', given.blends);
  const components = numberRows(
    'components',
    given.blends.flatMap((blend) => blend.components),
  );
  const rules = numberRows('rules', given.rules);
  const extras = numberRows('extras', given.extras);
  const onHand = numberRows('onHand', given.onHand);
  const measurements = numberRows('measurements', given.measurements);
  const shopHours = numberRows('shopHours', given.shopHours);
  const daysOff = numberRows('daysOff', given.daysOff);
  const climateRows = numberRows('climateRows', given.climateRows);
  const pins = numberRows('pins', given.pins);
  const doneTasks = numberRows('doneTasks', given.doneTasks);
  const arrivals = numberRows('arrivals', given.arrivals);
  const budgets = numberRows('budgets', given.budgets);
  const orders = numberRows('orders', given.orders);
  const orderLines = numberRows('orderLines', given.orderLines);
  const receipts = numberRows('receipts', given.receipts);
  const stockUses = numberRows('stockUses', given.stockUses);
  const payments = numberRows('payments', given.payments);
  const substitutes = numberRows('substitutes', given.substitutes);
  const workHours = numberRows('workHours', given.workHours);
  const quotes = numberRows('quotes', given.quotes);

  const stepsOf = dealer(steps.rows);
  const componentsOf = dealer(components.rows);
  return {
    rows: {
      sizes: sizes.rows,
      parts: parts.rows,
      recipes: recipes.rows.map((recipe) => ({ ...recipe, steps: stepsOf(recipe.steps.length) })),
      blends: blends.rows.map((blend) => ({
        ...blend,
        components: componentsOf(blend.components.length),
      })),
      rules: rules.rows,
      extras: extras.rows,
      onHand: onHand.rows,
      measurements: measurements.rows,
      shopHours: shopHours.rows,
      daysOff: daysOff.rows,
      climateRows: climateRows.rows,
      pins: pins.rows,
      doneTasks: doneTasks.rows,
      arrivals: arrivals.rows,
      budgets: budgets.rows,
      orders: orders.rows,
      orderLines: orderLines.rows,
      receipts: receipts.rows,
      stockUses: stockUses.rows,
      payments: payments.rows,
      substitutes: substitutes.rows,
      workHours: workHours.rows,
      quotes: quotes.rows,
    },
    problems: [
      sizes,
      parts,
      recipes,
      steps,
      blends,
      components,
      rules,
      extras,
      onHand,
      measurements,
      shopHours,
      daysOff,
      climateRows,
      pins,
      doneTasks,
      arrivals,
      budgets,
      orders,
      orderLines,
      receipts,
      stockUses,
      payments,
      substitutes,
      workHours,
      quotes,
    ].flatMap(({ problems }) => problems),
  };
}

/** Deals a list out in order: each call takes the next `count` rows. */
function dealer<Row>(rows: readonly Row[]): (count: number) => readonly Row[] {
  let dealt = 0;
  return (count) => {
    dealt += count;
    return rows.slice(dealt - count, dealt);
  };
}
