import type { Supplier } from '../../../server/planning/product.ts';
import type { OnHand, ProjectInput, ProjectSettings } from '../../../server/planning/project-input.ts';

/** The ledger's part of a project for tests of other questions: nothing ordered, nothing paid. */

export const LEDGER_SETTINGS = {
  contingencyPercent: 0,
  rateMinorPerHour: null,
  readyMadeMinor: null,
} as const satisfies Partial<ProjectSettings>;

export const NO_LEDGER_ROWS = {
  budgets: [],
  orders: [],
  orderLines: [],
  receipts: [],
  stockUses: [],
  payments: [],
  substitutes: [],
  workHours: [],
  quotes: [],
} as const satisfies Partial<ProjectInput>;

export const NO_TERMS = {
  currency: '',
  deliveryMinor: null,
  freeDeliveryFromMinor: null,
  minimumOrderMinor: null,
  surchargeMinor: null,
  workingDays: [0, 1, 2, 3, 4],
  retired: false,
} as const satisfies Partial<Supplier>;

export const PLAIN_STOCK = {
  place: '',
  batch: '',
  openedOn: '',
  bestBefore: '',
  keptFrom: '',
} as const satisfies Partial<OnHand>;
