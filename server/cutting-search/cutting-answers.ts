import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import {
  putCuttingAnswer,
  readCuttingAnswers,
  removeCuttingAnswer,
  type StoredCuttingAnswer,
} from '../../db/cutting-answers.repository.ts';
import type { CuttingAdvice } from '../planning/cutting/advice/cutting-advice.ts';
import { stableHash } from '../planning/cutting/found/stable-hash.ts';
import type { FoundCut, FoundLayout, FoundSheet } from '../planning/project-input.ts';

/** So many answers are kept for a project; going back by undo finds the latest ones. */
const ANSWERS_KEPT = 40;
/** So many projects' answers are kept in memory. */
const PROJECTS_KEPT = 16;

export interface CuttingAnswer extends FoundLayout {
  readonly runs: number;
  readonly searchedMs: number;
  readonly complete: boolean;
  /** `of`: what it was worked out from, see adviceName. */
  readonly advice: { readonly of: string; readonly items: readonly CuttingAdvice[] } | null;
}

/** What longer searches have found, on disk and in memory. */
export interface CuttingAnswers {
  readonly found: (projectId: number) => readonly FoundLayout[];
  readonly get: (projectId: number, question: string) => CuttingAnswer | undefined;
  /** Rises with every answer that may change the project's plan; 0 when the program starts. */
  readonly version: (projectId: number) => number;
  /** Says that the project's plan may be another for a reason beside its edits: a piece was ticked as cut. */
  readonly touch: (projectId: number) => void;
  /** Stores an answer; `changesPlan`: the plan of the project as it stands may be better with it. */
  readonly put: (
    projectId: number,
    answer: CuttingAnswer,
    more: { readonly changesPlan: boolean; readonly current: ReadonlySet<string>; readonly at: string },
  ) => void;
}

/** Names what advice is worked out from: the subject's hash and the cost of the plan it is measured against. */
export function adviceName(subjectHash: string, cost: number): string {
  return `${subjectHash} ${cost}`;
}

const foundCut: z.ZodType<FoundCut> = z.lazy(() =>
  z.union([
    z.strictObject({ piece: z.int().min(0), turned: z.boolean() }),
    z.strictObject({ along: z.enum(['length', 'width']), cuts: z.array(foundCut).min(1) }),
  ]),
);
const foundSheets: z.ZodType<FoundSheet[]> = z.array(
  z.strictObject({ stock: z.int().min(0), count: z.int().min(1), cut: foundCut }),
);
const outcome = z.strictObject({ stocks: z.int().min(0), costMinor: z.number().nullable() });
const partId = z.string();
const advice: z.ZodType<CuttingAdvice[]> = z.array(
  z.strictObject({
    change: z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('smaller'),
        partId,
        side: z.enum(['length', 'width']),
        byMm: z.number(),
      }),
      z.strictObject({ kind: z.literal('fewer'), partId }),
      z.strictObject({ kind: z.literal('kerf'), kerfMm: z.number() }),
      z.strictObject({ kind: z.literal('grain'), partIds: z.array(partId).min(1) }),
      z.strictObject({ kind: z.literal('size'), packId: z.string() }),
    ]),
    before: outcome,
    after: outcome,
  }),
);

export function cuttingAnswers(db: Database): CuttingAnswers {
  const projects = new Map<number, Map<string, CuttingAnswer>>();
  const versions = new Map<number, number>();

  function ofProject(projectId: number): Map<string, CuttingAnswer> {
    const known = projects.get(projectId) ?? read(projectId);
    projects.delete(projectId);
    projects.set(projectId, known);
    for (const oldest of projects.keys()) {
      if (projects.size <= PROJECTS_KEPT) break;
      projects.delete(oldest);
    }
    return known;
  }

  function raise(projectId: number): void {
    versions.set(projectId, (versions.get(projectId) ?? 0) + 1);
  }

  function read(projectId: number): Map<string, CuttingAnswer> {
    const answers = new Map<string, CuttingAnswer>();
    for (const row of readCuttingAnswers(db, projectId)) {
      const answer = fromStored(row);
      if (answer === null) removeCuttingAnswer(db, projectId, row.question);
      else answers.set(row.question, answer);
    }
    return answers;
  }

  return {
    found: (projectId) => [...ofProject(projectId).values()],
    get: (projectId, question) => ofProject(projectId).get(question),
    version: (projectId) => versions.get(projectId) ?? 0,
    touch: raise,
    put(projectId, answer, { changesPlan, current, at }) {
      putCuttingAnswer(db, projectId, toStored(answer), at);
      const answers = ofProject(projectId);
      answers.delete(answer.question);
      answers.set(answer.question, answer);
      for (const question of answers.keys()) {
        if (answers.size <= ANSWERS_KEPT) break;
        if (question === answer.question || current.has(question)) continue;
        answers.delete(question);
        removeCuttingAnswer(db, projectId, question);
      }
      if (changesPlan) raise(projectId);
    },
  };
}

function toStored({ advice: told, sheets, ...answer }: CuttingAnswer): StoredCuttingAnswer {
  const row = {
    ...answer,
    sheets: JSON.stringify(sheets),
    adviceFor: told?.of ?? null,
    advice: told === null ? null : JSON.stringify(told.items),
  };
  return { ...row, checkText: checkOf(row) };
}

/** Null when the row is damaged, or written by a program that knew other answers. */
function fromStored(row: StoredCuttingAnswer): CuttingAnswer | null {
  if (row.checkText !== checkOf(row)) return null;
  const { question, boundCost, boundStocks, runs, searchedMs, complete } = row;
  const sheets = foundSheets.safeParse(parsed(row.sheets));
  const items = advice.safeParse(row.advice === null ? [] : parsed(row.advice));
  if (!sheets.success || !items.success) return null;
  return {
    question,
    sheets: sheets.data,
    boundCost,
    boundStocks,
    runs,
    searchedMs,
    complete,
    advice: row.adviceFor === null ? null : { of: row.adviceFor, items: items.data },
  };
}

function checkOf(row: Omit<StoredCuttingAnswer, 'checkText'>): string {
  const { question, sheets, boundCost, boundStocks, adviceFor, advice: told } = row;
  return stableHash(JSON.stringify([question, sheets, boundCost, boundStocks, adviceFor, told]));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
