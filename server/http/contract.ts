/**
 * What travels between the server and a screen. Types only: the client imports nothing else from the server.
 * The zod schemas in `schemas.ts` are checked against these types, and the OpenAPI document is made from them.
 */
import type { Attachment } from '../../db/attachments.repository.ts';
import type { Change, ChangeRequest, RowValues, Scalar } from '../../db/change.ts';
import type {
  ArrivalRow,
  BlendRow,
  BudgetRow,
  ClimateRow,
  ComponentRow,
  DayOffRow,
  DeletedProject,
  DoneTaskRow,
  ExtraRow,
  MeasurementRow,
  OnHandRow,
  OrderLineRow,
  OrderRow,
  PartRow,
  PaymentRow,
  PinRow,
  ProjectRows,
  ProjectSummary,
  QuoteRow,
  ReceiptRow,
  RecipeRow,
  RowTable,
  RuleRow,
  ShopHoursRow,
  SizeRow,
  StepRow,
  StockUseRow,
  SubstituteRow,
  WorkHoursRow,
} from '../../db/project-rows.ts';
import type { ImportAnswers, ImportPreview } from '../exchange/import/preview-import.ts';
import type { PreviewCell, PreviewRow } from '../exchange/part-list/preview-part-list.ts';
import type { AirPlan } from '../planning/air/project/air-plan.ts';
import type { BuyingPlan } from '../planning/buying/buying-plan.ts';
import type { CalendarPlan } from '../planning/calendar/calendar-plan.ts';
import type { ClockShift } from '../planning/calendar/clock-shift.ts';
import type { SawCut } from '../planning/cutting/cut-order.ts';
import type { Values } from '../planning/figure.ts';
import type { CustomerSheet, LedgerPlan, QuotePlan } from '../planning/ledger/ledger-plan.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { Problem, ProblemCode } from '../planning/problem.ts';
import type { ProjectSettings } from '../planning/project-input.ts';

export type { StarterRecipe } from '../../db/catalogue/read-starter-recipes.ts';

/** Rows travel as they are stored: flat, with their parent's id and their place in the list. */
export { ROW_TABLES } from '../../db/project-rows.ts';
export type {
  ArrivalRow,
  Attachment,
  BlendRow,
  BudgetRow,
  Change,
  ChangeRequest,
  ClimateRow,
  ComponentRow,
  DayOffRow,
  DeletedProject,
  DoneTaskRow,
  ExtraRow,
  MeasurementRow,
  OnHandRow,
  OrderLineRow,
  OrderRow,
  PartRow,
  PaymentRow,
  PinRow,
  ProjectRows,
  ProjectSummary,
  QuoteRow,
  ReceiptRow,
  RecipeRow,
  RowTable,
  RowValues,
  RuleRow,
  Scalar,
  ShopHoursRow,
  SizeRow,
  StepRow,
  StockUseRow,
  SubstituteRow,
  WorkHoursRow,
};

export type PlanView = Values<Omit<Plan, 'problems'>> & { readonly problems: readonly Problem[] };
export type PartPlanView = PlanView['parts'][number];

/** GET /api/projects/:id */
export interface ProjectState {
  readonly id: string;
  readonly revision: number;
  readonly settings: ProjectSettings;
  readonly rows: ProjectRows;
  readonly plan: PlanView;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** What undo and redo would do, in words: "change width of 3 parts". */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

/** The answer to every edit, undo and redo. */
export interface ChangeAnswer {
  readonly revision: number;
  readonly settings: ProjectSettings;
  readonly changed: { readonly [Table in RowTable]?: ProjectRows[Table] };
  readonly removed: { readonly [Table in RowTable]?: readonly string[] };
  /** tempId -> id */
  readonly inserted: Readonly<Record<string, string>>;
  /** As PlanView, but `parts` holds only the part plans whose figures changed. */
  readonly plan: PlanView;
  /** The list is long: layouts of sheets and cuts of rolls are left out of `plan`; GET /api/projects/:id/plan has them. */
  readonly layoutsLeftOut: boolean;
  readonly removedPartPlans: readonly string[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

/** POST /api/projects/:id/import/preview: either a text or a workbook, with the answers given so far. */
export interface ImportRequest extends ImportAnswers {
  readonly text?: string;
  readonly workbookBase64?: string;
}
export type { ImportPreview, PreviewCell, PreviewRow };

/** The answer to POST /api/projects/:id/reading: what a cell would be read as if it were left as typed. */
export type ReadingAnswer =
  | {
      readonly ok: true;
      /** Null for a quantity. */
      readonly mm: number | null;
      /** Pieces; null for a length. */
      readonly quantity: number | null;
      readonly display: {
        /** As the project prints it: `≈23 5/8"`, `564 mm`, `4 pieces`. */
        readonly project: string;
        /** In millimetres with every digit that counts, where that says more. */
        readonly exact: string | null;
      };
      readonly names: readonly ReadingName[];
    }
  | {
      readonly ok: false;
      /** The problem the cell would have; null when it only waits for a named size without a value. */
      readonly code: ProblemCode | null;
      readonly message: string;
      readonly wayOut: string;
      readonly names: readonly ReadingName[];
    };

/** A name that a calculation uses, as typed; `id` is null when no named size is called so. */
export interface ReadingName {
  readonly name: string;
  readonly id: string | null;
  readonly mm: number | null;
}

/** GET /api/projects/:id/cutting: how every layout of the plan is sawn, and what of it is done. */
export interface CuttingAnswer {
  /** Of the plan whose layouts these are. */
  readonly revision: number;
  readonly layouts: readonly CuttingLayout[];
  /** Pieces ticked on layouts that the plan no longer has. */
  readonly elsewhere: number;
}
export interface CuttingLayout {
  readonly materialId: string;
  readonly layoutId: string;
  /** Names the layout by what is cut and how; ticks belong to it. */
  readonly key: string;
  /** How many stocks are cut like this. */
  readonly sheets: number;
  /** Part ids in the order of the tree of cuts. */
  readonly parts: readonly string[];
  readonly cuts: readonly SawCut[];
  readonly done: readonly CutPlace[];
  /** What is worth keeping of each of the equal sheets, largest first. */
  readonly offcuts: readonly LayoutOffcut[];
}
export interface LayoutOffcut {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** So many of this size on each sheet. */
  readonly count: number;
  /** The sheets, from 0, whose offcuts of this size are on hand already. */
  readonly kept: readonly number[];
}
/** One piece: which of the equal sheets and which of its parts, both from 0. */
export interface CutPlace {
  readonly sheet: number;
  readonly piece: number;
}
export type { SawCut };

/** GET /api/projects/:id/cutting/search, and the data of `event: cutting`: how the searches for better cutting stand. */
export interface CuttingSearchAnswer {
  /**
   * Rises with every answer since the server's start. An answer to a request and an event travel apart and may arrive
   * the wrong way round: a window keeps the later one.
   */
  readonly sequence: number;
  readonly revision: number;
  /** Another than before: the plan of this revision has become better, and is worth reading again. */
  readonly planVersion: number;
  readonly materials: readonly MaterialSearch[];
}
export interface MaterialSearch {
  readonly id: string;
  /**
   * running: being searched; waiting: for its turn; idle: searched as long as it was to be, or not to be searched; kept:
   * not searched, since pieces of its plan are ticked as cut; proven: no plan costs less; failed: the search has broken
   * down, and is tried again when it is asked for.
   */
  readonly state: 'running' | 'waiting' | 'idle' | 'kept' | 'proven' | 'failed';
  /** Since when it is in this state. */
  readonly since: string;
  /** How long this search may take in all, ms; 0 unless running. */
  readonly budgetMs: number;
  /** How long the same question has been searched before, ms. */
  readonly searchedMs: number;
  /** Nothing is left to try: searching longer finds nothing more. */
  readonly complete: boolean;
  readonly stocks: number | null;
  readonly boundStocks: number | null;
  readonly costMinor: number | null;
  /** No plan costs less; null where prices or the bound are not known. */
  readonly boundCostMinor: number | null;
  /** Null while it has not been worked out for the plan as it is. */
  readonly advice: readonly AdviceView[] | null;
}
/** A small change and what it would save, recomputed. */
export interface AdviceView {
  readonly kind: 'smaller' | 'fewer' | 'kerf' | 'grain' | 'size';
  /** The parts it is about. */
  readonly partIds: readonly string[];
  readonly sentence: string;
  readonly before: AdviceOutcome;
  readonly after: AdviceOutcome;
}
export interface AdviceOutcome {
  readonly stocks: number;
  readonly costMinor: number | null;
}

/** The data of `event: calendar`: the calendar of a project has changed, and is worth reading again. */
export type CalendarNotice = Pick<CalendarAnswer, 'revision' | 'state' | 'stale'>;

/**
 * GET /api/projects/:id/calendar: the coat calendar as last worked out.
 *
 * Minutes are real minutes gone by since midnight at the start of `firstDate`, so that drying is never an hour off. The
 * clock on the wall shows `minute + aheadMin` of the last entry of `clockShifts` at or before it (none: the minute
 * itself); `clockMinute` of `server/planning/display/` does that.
 */
export interface CalendarAnswer {
  /** Of the project when this was answered. */
  readonly revision: number;
  /** working: a new plan is being worked out; failed: that went wrong, and is tried again after the next change. */
  readonly state: 'ready' | 'working' | 'failed';
  /** The plan is of an earlier state of the project, or from an earlier day. */
  readonly stale: boolean;
  /** Null before the first one is there. */
  readonly plan: CalendarPlan | null;
  /** Date of day 0 of this answer, YYYY-MM-DD. */
  readonly firstDate: string;
  readonly timeZone: string;
  /** Now, when this was answered. */
  readonly nowMinute: number;
  /** Nothing new is planned before this minute; it moves on with a new day, or when a new plan from now is asked for. */
  readonly plannedFromMinute: number;
  /** In order of time; empty when the clocks are not changed within the shown span. */
  readonly clockShifts: readonly ClockShift[];
  /** The shown span: from day 0 to some days after the end of the plan. */
  readonly days: readonly CalendarDay[];
  /** The air the plan reckons with, over the shown span, one value per hour. */
  readonly climate: readonly CalendarAir[];
  readonly names: {
    /** Recipe id to name. */
    readonly recipes: Readonly<Record<string, string>>;
    /** Part id to name. */
    readonly parts: Readonly<Record<string, string>>;
  };
  /** Litres of each coat task by task id; null where the plan cannot tell. */
  readonly coatLitres: Readonly<Record<string, number | null>>;
  /** The first minute at which each product is needed, by product id. */
  readonly neededBy: Readonly<Record<string, number>>;
  /** Per block of the plan and way out of it: the changes that make it real; empty where no setting does. */
  readonly wayOutChanges: readonly (readonly (readonly Change[])[])[];
  /** Everything the calendar has to say: unreadable cells, unknown figures, what does not fit. */
  readonly problems: readonly Problem[];
  /** Path under which a calendar program may subscribe, with its secret part: /api/projects/7/calendar.ics?key=… */
  readonly feedPath: string;
}
export interface CalendarDay {
  /** YYYY-MM-DD */
  readonly date: string;
  /** 0 is Monday. */
  readonly weekday: number;
  readonly fromMinute: number;
  readonly toMinute: number;
  /** When there are hands in the shop, joined where they touch; empty on a day without. */
  readonly windows: readonly { readonly fromMinute: number; readonly toMinute: number }[];
  /** A day off of the project, whatever the weekday. */
  readonly off: boolean;
  readonly note: string;
}
export interface CalendarAir {
  readonly minute: number;
  readonly temperatureC: number;
  readonly humidityPercent: number;
  /** The wood is less than 3 C above the dew point: no coat may be laid. */
  readonly nearDew: boolean;
}
export type { CalendarPlan, ClockShift };

/**
 * GET /api/projects/:id/air: what the coats of the calendar as last worked out do to the air of the shop. Minutes are those
 * of CalendarAnswer. Each figure of `air` has its working at GET /api/projects/:id/working?at=air/..., e.g.
 * `air/health/needed`. Read it again after a `calendar` event.
 */
export interface AirAnswer
  extends Pick<CalendarAnswer, 'revision' | 'state' | 'stale' | 'firstDate' | 'timeZone' | 'clockShifts'> {
  readonly air: Values<AirPlan>;
}
export type { AirPlan };

/**
 * Buying, stock, ledger and quotes.
 *
 * What is typed are rows like all others, changed through `changes` (one undo step per request), with `tempId`s where a
 * row refers to one of the same request: `budgets`, `orders` with `orderLines` (parent: an order) with `receipts`
 * (parent: an order line; part deliveries are several rows, goods sent back are kind `returned`), `stockUses`,
 * `payments` (refunds are kind `refund`), `substitutes`, `workHours`, `quotes`; `onHand` has place, batch, openedOn and
 * bestBefore. Settings: contingencyPercent, rateMinorPerHour, readyMadeMinor. Deliveries are stock by themselves: do
 * not add an `onHand` row for them. A coat takes from stock by its row of `doneTasks` (its litres, or the planned ones
 * where none were measured).
 *
 * An order line is counted for the line of the buy list whose product it names, or whose product its product may stand in
 * for; one without a product for the line whose id is its `packId` (`extra-7`), else for the one of its name. So an order
 * made from `BuyingLine.packs` takes over packId, productId (empty for null), count, amount as packAmount, and price.
 *
 * Suppliers are of the catalogue: PATCH /api/suppliers/:id also takes currency, deliveryMinor, freeDeliveryFromMinor,
 * minimumOrderMinor, surchargeMinor and workingDays (0 is Monday); POST /api/suppliers/:id/retire and /restore; DELETE
 * is refused with `in-use` while a product or a project names the supplier.
 *
 * What follows from it, on today's date in the project's time zone, is read from
 * - GET /api/projects/:id/buying -> BuyingAnswer
 * - GET /api/projects/:id/ledger -> LedgerAnswer
 * - GET /api/projects/:id/quotes/:quoteId -> QuoteAnswer
 * - GET /api/projects/:id/quotes/:quoteId/sheet -> CustomerSheetAnswer (nothing inner travels)
 *   A quote's `sender` stands at the head of its sheet; `shown` is `price`, or `work` for materials and hours on it as well.
 *   Its figures also open by path: GET /api/projects/:id/working?at=quotes/3/net.
 * - GET /api/projects/:id/supplier-message?supplier=:id&prices=no|yes -> SupplierMessage (empty id: no supplier named)
 * - GET /api/projects/:id/export/order-list.csv and .xlsx, export/ledger.csv and .xlsx
 * Figures in these answers carry their workings, so that they open without asking again.
 *
 * Attachments: PUT /api/projects/:id/attachments?name=receipt.jpg with the bytes as the body (JPEG, PNG, WebP or PDF, told
 * by what they hold; 8 MB) -> Attachment, whose id goes into `payments.attachmentId`; GET
 * /api/projects/:id/attachments lists them, GET .../attachments/:id answers one.
 */
export interface BuyingAnswer extends BuyingPlan {
  readonly revision: number;
}
export interface LedgerAnswer extends LedgerPlan {
  readonly revision: number;
  readonly today: string;
  /** ISO 4217 code, and how many decimals it has. */
  readonly currency: string;
  readonly currencyDigits: number;
}
export interface QuoteAnswer extends QuotePlan {
  readonly revision: number;
  readonly currency: string;
}
/** GET /api/projects/:id/quotes/:quoteId/sheet: what the customer may see, and nothing else. */
export interface CustomerSheetAnswer extends CustomerSheet {
  readonly currency: string;
}
/** A text ready to paste, and its parts. */
export interface SupplierMessage {
  readonly supplierId: string;
  readonly subject: string;
  readonly text: string;
}
export type { BuyingPlan, LedgerPlan, QuotePlan };

/** The one error shape. */
export interface ErrorAnswer {
  readonly error: {
    readonly code: ErrorCode;
    readonly message: string;
    readonly wayOut: string;
    /** Path of the offending value in the request, e.g. `changes.0.values.width`; null when there is none. */
    readonly field: string | null;
    /** For `revision-stale`: the revision now current. */
    readonly revision?: number;
    /** All located faults when there are several. */
    readonly faults?: readonly { readonly field: string; readonly message: string }[];
  };
}

export type ErrorCode =
  | 'bad-request'
  | 'not-found'
  | 'unknown-route'
  | 'revision-stale'
  | 'nothing-to-undo'
  | 'nothing-to-redo'
  | 'in-use'
  | 'name-taken'
  | 'too-large'
  | 'type-not-allowed'
  | 'not-allowed'
  | 'internal';
