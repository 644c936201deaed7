/**
 * A problem is something the user's data makes impossible or doubtful. It is a value, never an exception, so that
 * one bad row never blanks the rest of the plan. Codes are stable: scripts and help pages refer to them.
 */

/** error: a figure cannot be computed. warning: computed, but doubtful. note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

export type ProblemCode =
  // cells
  | 'dimension-missing'
  | 'dimension-unreadable'
  | 'dimension-ambiguous'
  | 'dimension-truncated'
  | 'dimension-not-positive'
  | 'dimension-too-large'
  | 'dimension-too-long'
  | 'expression-invalid'
  | 'expression-unknown-name'
  | 'expression-cycle'
  | 'quantity-unreadable'
  | 'quantity-not-whole'
  | 'quantity-too-large'
  // parts and geometry
  | 'material-missing'
  | 'material-unknown'
  | 'product-unknown'
  | 'product-retired'
  | 'product-wrong-kind'
  | 'corner-too-large'
  | 'corner-band-mismatch'
  | 'round-not-square'
  | 'cut-size-not-positive'
  | 'thickness-unknown'
  | 'faces-unbalanced'
  // banding
  | 'band-too-narrow'
  | 'band-width-unknown'
  | 'band-thickness-unknown'
  | 'strip-longer-than-roll'
  | 'roll-length-unknown'
  // sheets and boards
  | 'part-larger-than-sheet'
  | 'part-larger-than-board'
  | 'grain-match-too-large'
  | 'grain-match-alone'
  | 'sheet-size-unknown'
  | 'kerf-invalid'
  | 'part-narrower-than-kerf'
  // finish
  | 'recipe-unknown'
  | 'recipe-empty'
  | 'recipe-unused'
  | 'coverage-missing'
  | 'step-product-missing'
  | 'step-value-invalid'
  | 'transfer-efficiency-invalid'
  | 'hardener-missing'
  | 'pot-life-unknown'
  | 'blend-empty'
  | 'blend-unknown'
  | 'usage-rate-missing'
  | 'usage-rate-invalid'
  // packs, buying, money
  | 'pack-missing'
  | 'pack-size-invalid'
  | 'price-missing'
  | 'price-currency-missing'
  | 'extra-invalid'
  | 'on-hand-invalid'
  | 'amount-too-large'
  | 'returned-too-many'
  | 'order-overpaid'
  | 'payment-order-unknown'
  | 'payment-tax-too-large'
  | 'budget-twice'
  | 'ledger-date-missing'
  | 'ledger-date-unreadable'
  | 'attachment-missing'
  | 'quote-rate-missing'
  | 'quote-price-missing'
  | 'quote-dates-backwards'
  | 'quote-expired'
  | 'receipt-returned-too-many'
  | 'receipt-more-than-ordered'
  | 'receipt-before-order'
  | 'receipt-in-future'
  | 'price-doubtful'
  | 'price-too-large'
  | 'order-overdue'
  | 'supplier-unknown'
  | 'supplier-retired'
  | 'supplier-other-currency'
  | 'supplier-never-works'
  | 'substitute-invalid'
  | 'stock-use-invalid'
  | 'stock-missing'
  | 'on-hand-expired'
  | 'litres-doubtful'
  // calendar
  | 'drying-time-missing'
  | 'recoat-unknown'
  | 'cure-unknown'
  | 'batch-too-large'
  | 'calendar-task-unknown'
  | 'calendar-done-out-of-order'
  | 'calendar-does-not-fit'
  | 'calendar-time-unreadable'
  | 'calendar-date-unreadable'
  | 'calendar-date-out-of-reach'
  | 'calendar-hours-backwards'
  | 'calendar-no-hours'
  | 'calendar-row-twice'
  | 'calendar-pins-contradict'
  | 'calendar-pin-kept-from'
  | 'climate-invalid'
  | 'climate-unknown'
  | 'recoat-backwards'
  | 'calendar-part-left-out'
  // air
  | 'air-cannot-tell'
  | 'air-over-limit'
  // whole document
  | 'setting-invalid'
  | 'document-unreadable';

/** Which table of the project (or the catalogue) a problem sits in. */
export type ProblemTable =
  | 'parts'
  | 'recipes'
  | 'steps'
  | 'blends'
  | 'components'
  | 'rules'
  | 'extras'
  | 'onHand'
  | 'measurements'
  | 'sizes'
  | 'shopHours'
  | 'daysOff'
  | 'climateRows'
  | 'pins'
  | 'doneTasks'
  | 'arrivals'
  | 'budgets'
  | 'orders'
  | 'orderLines'
  | 'receipts'
  | 'stockUses'
  | 'payments'
  | 'substitutes'
  | 'workHours'
  | 'quotes'
  | 'suppliers'
  | 'settings'
  | 'products'
  | 'document';

export interface ProblemPlace {
  readonly table: ProblemTable;
  /** Row id within the table; null for the table as a whole (and for settings). */
  readonly id: string | null;
  /** Field of the row, named as in the project document; null for the row as a whole. */
  readonly field: string | null;
}

export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly at: ProblemPlace;
  /** One sentence: what is wrong, with the offending value. */
  readonly message: string;
  /** One sentence: what the user can do about it. */
  readonly wayOut: string;
}
