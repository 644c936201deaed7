/**
 * What travels between the server and a screen. Types only: the client imports nothing else from the server.
 * The zod schemas in `schemas.ts` are checked against these types, and the OpenAPI document is made from them.
 */
import type { Values } from '../planning/figure.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { Problem } from '../planning/problem.ts';
import type {
  Blend,
  BlendComponent,
  ExtraLine,
  Measurement,
  NamedSize,
  OnHand,
  PartInput,
  ProjectSettings,
  Recipe,
  RecipeStep,
  UsageRule,
} from '../planning/project-input.ts';

/** Rows as stored: flat, with their parent's id and their place in the list. */
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
] as const satisfies readonly RowTable[];

export interface ProjectSummary {
  readonly id: string;
  readonly name: string;
  readonly units: ProjectSettings['units'];
  readonly currency: string;
  readonly revision: number;
  readonly updatedAt: string;
}

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

export type Scalar = string | number | boolean | null;
export type RowValues = Readonly<Record<string, Scalar>>;

/** One step of a change. Everything in one request is one transaction and one undo step. */
export type Change =
  /** `tempId` lets later steps of the same request, and the answer, refer to the new row. `before`: id of the row it goes in front of; absent or null: at the end. */
  | {
      readonly op: 'insert';
      readonly table: RowTable;
      readonly tempId?: string;
      readonly before?: string | null;
      readonly values: RowValues;
    }
  | { readonly op: 'update'; readonly table: RowTable; readonly id: string; readonly values: RowValues }
  | { readonly op: 'move'; readonly table: RowTable; readonly id: string; readonly before: string | null }
  | { readonly op: 'delete'; readonly table: RowTable; readonly id: string }
  | {
      readonly op: 'settings';
      readonly values: RowValues | Readonly<Record<string, Scalar | readonly string[]>>;
    };

/** POST /api/projects/:id/changes */
export interface ChangeRequest {
  /** The revision the sender last saw; a newer one on the server answers 409. */
  readonly revision: number;
  /** Words for the undo menu; the server makes them up when absent. */
  readonly label?: string;
  readonly changes: readonly Change[];
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
  readonly removedPartPlans: readonly string[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

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
  | 'not-allowed'
  | 'internal';
