import type { StoredProject } from '../../db/project-rows.ts';
import type { Catalogue } from '../planning/product.ts';
import type { ProjectInput } from '../planning/project-input.ts';

/**
 * A stored project as the planner takes it: steps within their recipes, components within their blends. Rows are
 * passed on as they are; the planner has no eye for their positions.
 */
export function projectInput({ settings, rows }: StoredProject, catalogue: Catalogue): ProjectInput {
  const { recipes, steps, blends, components, ...lists } = rows;
  return {
    ...lists,
    settings,
    recipes: recipes.map((recipe) => ({
      ...recipe,
      steps: steps.filter((step) => step.recipeId === recipe.id),
    })),
    blends: blends.map((blend) => ({
      ...blend,
      components: components.filter((component) => component.blendId === blend.id),
    })),
    catalogue,
  };
}

/** The same without what only the database needs: places in lists, and ids of the rows that rows belong to. */
export function bareInput(input: ProjectInput): ProjectInput {
  const bare = <Row extends object>(row: Row): Row => without(row, ['position']);
  return {
    ...input,
    sizes: input.sizes.map(bare),
    parts: input.parts.map(bare),
    recipes: input.recipes.map((recipe) => ({
      ...bare(recipe),
      steps: recipe.steps.map((step) => without(step, ['position', 'recipeId'])),
    })),
    blends: input.blends.map((blend) => ({
      ...bare(blend),
      components: blend.components.map((component) => without(component, ['position', 'blendId'])),
    })),
    rules: input.rules.map(bare),
    extras: input.extras.map(bare),
    onHand: input.onHand.map(bare),
    measurements: input.measurements.map(bare),
    shopHours: input.shopHours.map(bare),
    daysOff: input.daysOff.map(bare),
    climateRows: input.climateRows.map(bare),
    pins: input.pins.map(bare),
    doneTasks: input.doneTasks.map(bare),
    arrivals: input.arrivals.map(bare),
    budgets: input.budgets.map(bare),
    orders: input.orders.map(bare),
    orderLines: input.orderLines.map(bare),
    receipts: input.receipts.map(bare),
    stockUses: input.stockUses.map(bare),
    payments: input.payments.map(bare),
    substitutes: input.substitutes.map(bare),
    workHours: input.workHours.map(bare),
    quotes: input.quotes.map(bare),
  };
}

function without<Row extends object>(row: Row, names: readonly string[]): Row {
  return Object.fromEntries(Object.entries(row).filter(([name]) => !names.includes(name))) as Row;
}
