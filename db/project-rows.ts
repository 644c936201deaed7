import type {
  Arrival,
  Blend,
  BlendComponent,
  Budget,
  ClimateRow as ClimateInput,
  DayOff,
  DoneTask,
  ExtraLine,
  Measurement,
  NamedSize,
  OnHand,
  Order,
  OrderLine,
  PartInput,
  Payment,
  PinnedTask,
  ProjectSettings,
  Quote,
  Receipt,
  Recipe,
  RecipeStep,
  ShopHours,
  StockUse,
  Substitute,
  UsageRule,
  WorkHours,
} from '../server/planning/project-input.ts';

/**
 * One project as it is stored and as it travels: flat lists of rows, each with its place in its list, steps and
 * components with the id of the row they belong to. Ids are strings of digits.
 */
type Placed<T> = T & { readonly position: number };
export type PartRow = Placed<PartInput>;
export type RecipeRow = Placed<Omit<Recipe, 'steps'>>;
export type StepRow = Placed<RecipeStep & { readonly recipeId: string }>;
export type BlendRow = Placed<Omit<Blend, 'components'>>;
export type ComponentRow = Placed<BlendComponent & { readonly blendId: string }>;
export type RuleRow = Placed<UsageRule>;
export type ExtraRow = Placed<ExtraLine>;
export type OnHandRow = Placed<OnHand>;
export type MeasurementRow = Placed<Measurement>;
export type SizeRow = Placed<NamedSize>;
export type ShopHoursRow = Placed<ShopHours>;
export type DayOffRow = Placed<DayOff>;
export type ClimateRow = Placed<ClimateInput>;
export type PinRow = Placed<PinnedTask>;
export type DoneTaskRow = Placed<DoneTask>;
export type ArrivalRow = Placed<Arrival>;
export type BudgetRow = Placed<Budget>;
export type OrderRow = Placed<Order>;
export type OrderLineRow = Placed<OrderLine>;
export type ReceiptRow = Placed<Receipt>;
export type StockUseRow = Placed<StockUse>;
export type PaymentRow = Placed<Payment>;
export type SubstituteRow = Placed<Substitute>;
export type WorkHoursRow = Placed<WorkHours>;
export type QuoteRow = Placed<Quote>;

export interface ProjectRows {
  readonly parts: readonly PartRow[];
  readonly recipes: readonly RecipeRow[];
  readonly steps: readonly StepRow[];
  readonly blends: readonly BlendRow[];
  readonly components: readonly ComponentRow[];
  readonly rules: readonly RuleRow[];
  readonly extras: readonly ExtraRow[];
  readonly onHand: readonly OnHandRow[];
  readonly measurements: readonly MeasurementRow[];
  readonly sizes: readonly SizeRow[];
  readonly shopHours: readonly ShopHoursRow[];
  readonly daysOff: readonly DayOffRow[];
  readonly climateRows: readonly ClimateRow[];
  readonly pins: readonly PinRow[];
  readonly doneTasks: readonly DoneTaskRow[];
  readonly arrivals: readonly ArrivalRow[];
  readonly budgets: readonly BudgetRow[];
  readonly orders: readonly OrderRow[];
  readonly orderLines: readonly OrderLineRow[];
  readonly receipts: readonly ReceiptRow[];
  readonly stockUses: readonly StockUseRow[];
  readonly payments: readonly PaymentRow[];
  readonly substitutes: readonly SubstituteRow[];
  readonly workHours: readonly WorkHoursRow[];
  readonly quotes: readonly QuoteRow[];
}
export type RowTable = keyof ProjectRows;
export const ROW_TABLES = [
  'parts',
  'recipes',
  'steps',
  'blends',
  'components',
  'rules',
  'extras',
  'onHand',
  'measurements',
  'sizes',
  'shopHours',
  'daysOff',
  'climateRows',
  'pins',
  'doneTasks',
  'arrivals',
  'budgets',
  'orders',
  'orderLines',
  'receipts',
  'stockUses',
  'payments',
  'substitutes',
  'workHours',
  'quotes',
] as const satisfies readonly RowTable[];

export interface ProjectSummary {
  readonly id: string;
  readonly name: string;
  readonly units: ProjectSettings['units'];
  readonly currency: string;
  readonly revision: number;
  readonly updatedAt: string;
}

/** A project that was deleted and can still be brought back. */
export interface DeletedProject {
  readonly id: string;
  readonly name: string;
  readonly deletedAt: string;
}

/** What is stored of one project, read in one go. */
export interface StoredProject {
  readonly id: string;
  readonly revision: number;
  readonly settings: ProjectSettings;
  readonly rows: ProjectRows;
}
