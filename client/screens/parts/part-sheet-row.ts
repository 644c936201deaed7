import type { PartPlanView, PartRow, ProjectState } from '../../../server/http/contract.ts';
import type { Values } from '../../../server/planning/figure.ts';
import type { GroupPlan, PlanTotals } from '../../../server/planning/plan-output.ts';
import type { Problem, Severity } from '../../../server/planning/problem.ts';
import type { SheetRow } from '../../grid/grid-column.ts';
import type { PartBook } from './part-book.ts';

/** A part's fields, as changes and problems name them. */
export type PartField = Exclude<keyof PartRow, 'id' | 'position'>;

/** The problem that matters most first. */
const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** What stands over a group of parts. */
export interface GroupHeading {
  readonly name: string;
  /** How many rows: `9`, or `3 of 9` while some are hidden. */
  readonly rows: string;
  readonly open: boolean;
  /** Path of the group's figures. */
  readonly at: string;
  /** Null while the server has not summed the group, and while only some of it is shown. */
  readonly sums: Values<GroupPlan> | null;
}

/** One line of the part list: a part, one still on its way to the server, the blank last line, a group's heading, or the totals. */
export interface PartSheetRow extends SheetRow {
  readonly kind: 'part' | 'coming' | 'blank' | 'heading' | 'totals';
  readonly number: number;
  readonly part: PartRow | null;
  readonly plan: PartPlanView | null;
  readonly totals: Values<PlanTotals> | null;
  /** What the totals are of, in words. */
  readonly totalsOf?: string;
  readonly heading?: GroupHeading;
  /** Worst problem per field; problems of the row as a whole stand at the name. */
  readonly problems: ReadonlyMap<string, Problem>;
  /** Typed and sent, not answered yet: field -> text. */
  readonly waiting: Readonly<Record<string, string>>;
  readonly book: PartBook;
}

const NO_PROBLEMS: ReadonlyMap<string, Problem> = new Map();
const NOTHING_WAITING: Readonly<Record<string, string>> = {};

/** Text still on its way to the server, by row key. */
export type Waiting = ReadonlyMap<string, Readonly<Record<string, string>>>;

/** The project's parts as lines; a line equal to the one before is the same object, so that it is not drawn again. */
export function partLines(
  project: ProjectState,
  book: PartBook,
  keyOf: (partId: string) => string,
  waiting: Waiting,
  before: ReadonlyMap<string, PartSheetRow>,
): PartSheetRow[] {
  const plans = new Map(project.plan.parts.map((plan) => [plan.id, plan]));
  const problems = problemsByPart(project.plan.problems);
  return project.rows.parts.map((part, index) => {
    const key = keyOf(part.id);
    const line: PartSheetRow = {
      key,
      kind: 'part',
      number: index + 1,
      part,
      plan: plans.get(part.id) ?? null,
      totals: null,
      problems: problems.get(part.id) ?? NO_PROBLEMS,
      waiting: waiting.get(key) ?? NOTHING_WAITING,
      book,
    };
    const old = before.get(key);
    return old !== undefined && sameLine(old, line) ? old : line;
  });
}

/** A part typed in the blank line that the server has not numbered yet. */
export function comingLine(
  key: string,
  number: number,
  waiting: Readonly<Record<string, string>>,
  book: PartBook,
): PartSheetRow {
  return {
    key,
    kind: 'coming',
    number,
    part: null,
    plan: null,
    totals: null,
    problems: NO_PROBLEMS,
    waiting,
    book,
  };
}

export function blankLine(key: string, number: number, book: PartBook): PartSheetRow {
  return { ...comingLine(key, number, NOTHING_WAITING, book), kind: 'blank', isBlank: true };
}

/** `of`: what the totals are of, in words. */
export function totalsLine(project: ProjectState, book: PartBook, of: string): PartSheetRow {
  const line = comingLine('totals', 0, NOTHING_WAITING, book);
  return { ...line, kind: 'totals', totals: project.plan.totals, totalsOf: of };
}

export function headingLine(key: string, heading: GroupHeading, book: PartBook): PartSheetRow {
  return { ...comingLine(key, 0, NOTHING_WAITING, book), kind: 'heading', isHeading: true, heading };
}

function problemsByPart(problems: readonly Problem[]): ReadonlyMap<string, ReadonlyMap<string, Problem>> {
  const byPart = new Map<string, Map<string, Problem>>();
  for (const problem of problems) {
    const { table, id, field } = problem.at;
    if (table !== 'parts' || id === null) continue;
    const fields = byPart.get(id) ?? new Map<string, Problem>();
    byPart.set(id, fields);
    const name = field ?? 'name';
    const standing = fields.get(name);
    if (standing === undefined || RANK[problem.severity] < RANK[standing.severity]) fields.set(name, problem);
  }
  return byPart;
}

function sameLine(a: PartSheetRow, b: PartSheetRow): boolean {
  return (
    a.kind === b.kind &&
    a.number === b.number &&
    a.part === b.part &&
    a.plan === b.plan &&
    a.waiting === b.waiting &&
    a.book === b.book &&
    a.problems.size === b.problems.size &&
    [...a.problems].every(([field, problem]) => sameProblem(problem, b.problems.get(field)))
  );
}

function sameProblem(a: Problem, b: Problem | undefined): boolean {
  return (
    b !== undefined &&
    a.code === b.code &&
    a.severity === b.severity &&
    a.message === b.message &&
    a.wayOut === b.wayOut
  );
}
