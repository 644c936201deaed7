import type { Logger } from 'pino';
import { Refusal } from '../../db/refusal.ts';
import type { CuttingSearchAnswer, MaterialSearch } from '../http/contract.ts';
import type { ProjectEvents } from '../http/project-events.ts';
import type { PlannedProject, ProjectPlans } from '../http/project-plans.ts';
import type { AnytimePlan } from '../planning/cutting/anytime/cutting-search.ts';
import { foundFault } from '../planning/cutting/found/found-fault.ts';
import { foundFromLayouts } from '../planning/cutting/found/found-from-layouts.ts';
import type { MaterialPlan } from '../planning/plan-output.ts';
import type { FoundSheet } from '../planning/project-input.ts';
import { adviceName, type CuttingAnswer, type CuttingAnswers } from './cutting-answers.ts';
import { type CuttingSettings, LEAST_LONGER_MS, LONGER_FACTOR, OFFCUT_MS } from './cutting-settings.ts';
import { adviceNow, type MaterialLook, materialLooks } from './material-looks.ts';
import type { SearchReport } from './search-messages.ts';
import { searchState } from './search-state.ts';
import { searchThread } from './search-thread.ts';

/** Less time than this is not worth a search, ms. */
const LEAST_SEARCH_MS = 20;
/** Seeds of one question's searches lie this far apart: a search uses several. */
const SEEDS_APART = 100_000;

/** The searches for better cutting of all projects: which is on, which waits, and what they have found. */
export interface CuttingSearches {
  readonly state: (projectId: number) => CuttingSearchAnswer;
  /** Searches one material, or all, again and longer. False when the project has no such material. */
  readonly search: (projectId: number, materialId: string | null) => boolean;
  /** Ends what is searched or waits, until the question is another or a search is asked for. */
  readonly stop: (projectId: number) => void;
  /** Other sheets are being cut than before; windows are told where that makes the plan another. */
  readonly begun: (projectId: number, before: readonly MaterialPlan[]) => void;
  readonly close: () => void;
}

interface Given {
  readonly plans: ProjectPlans;
  readonly events: ProjectEvents;
  readonly answers: CuttingAnswers;
  readonly settings: CuttingSettings;
  readonly log: Logger;
  readonly now: () => Date;
  /** The module that the search thread runs, where it is another than the program's own. */
  readonly worker?: URL | undefined;
}

/** A material in the queue; `longer`: asked for by someone. */
interface Wanted {
  readonly projectId: number;
  readonly materialId: string;
  readonly longer: boolean;
}

interface Running extends Wanted {
  readonly id: number;
  readonly hash: string;
  readonly subjectHash: string;
  readonly start: readonly FoundSheet[];
  readonly budgetMs: number;
  /** How long the question had been searched before. */
  readonly earlierMs: number;
  readonly earlierRuns: number;
}

interface Need {
  readonly look: MaterialLook;
  readonly material: MaterialPlan;
  readonly answer: CuttingAnswer | undefined;
  readonly budgetMs: number;
  /** Cost of the plan that advice is there for; null where it is to be worked out. */
  readonly advisedCost: number | null;
}

export function cuttingSearches(given: Given): CuttingSearches {
  const { plans, events, answers, settings, log, now } = given;
  const thread = searchThread((report) => guarded(() => hear(report)), given.worker);
  const resting = new Map<number, NodeJS.Timeout>();
  const phases = new Map<string, Pick<MaterialSearch, 'state' | 'since'>>();
  /** Questions that are not searched by themselves: stopped by someone, or the search failed. By project. */
  const left = new Map<number, Set<string>>();
  /** Of these, the ones whose search has failed: said, until it is tried again. */
  const failed = new Map<number, Set<string>>();
  let queue: Wanted[] = [];
  let running: Running | null = null;
  let lastId = 0;
  let lastAnswer = 0;
  let closed = false;

  events.watch((projectId) =>
    guarded(() => {
      if (running?.projectId === projectId && !isAsked(running)) thread.stop(running.id);
      // Without searches there is something to tell only where one has been asked for.
      if (settings.searchMs <= 0 && answers.found(projectId).length === 0) return;
      clearTimeout(resting.get(projectId));
      const timer = setTimeout(() => {
        resting.delete(projectId);
        guarded(() => consider(projectId));
      }, settings.restMs);
      timer.unref();
      resting.set(projectId, timer);
    }),
  );

  /** A search is a help beside the work: where it fails, the program goes on without. */
  function guarded(work: () => void): void {
    if (closed) return;
    try {
      work();
    } catch (error) {
      log.error({ err: error }, 'searching for better cutting failed');
      if (running === null) return;
      thread.stop(running.id);
      fail(running.projectId, running.hash);
    }
  }

  /** Queues what a project has to search now, in the order of its part list, unproven materials first. */
  function consider(projectId: number): void {
    queue = queue.filter((wanted) => wanted.projectId !== projectId || wanted.longer);
    const entry = events.openProjects().has(projectId) ? planned(projectId) : null;
    if (entry === null) return;
    const ids = entry.plan.materials.map(({ id, proven }) => ({ id, proven }));
    for (const { id: materialId } of ids.sort((a, b) => Number(a.proven) - Number(b.proven))) {
      const wanted = { projectId, materialId, longer: false };
      if (running?.projectId === projectId && running.materialId === materialId && isAsked(running)) continue;
      if (queue.some((one) => one.projectId === projectId && one.materialId === materialId)) continue;
      if (settings.searchMs > 0 && needOf(wanted, entry) !== null) queue.push(wanted);
    }
    next();
    announce(projectId);
  }

  /** The plan of a project; null when it is gone. */
  function planned(projectId: number): PlannedProject | null {
    try {
      return plans.current(projectId);
    } catch (error) {
      if (error instanceof Refusal) return null;
      throw error;
    }
  }

  /** Whether the question of a search is still one of its project's, and open. */
  function isAsked({ projectId, materialId, hash }: Running): boolean {
    const entry = planned(projectId);
    const look = entry === null ? undefined : materialLooks(entry).get(materialId);
    return look !== undefined && !isKept(look) && look.asked.question.hash === hash;
  }

  /** What there is to do for a material; null for nothing. */
  function needOf({ projectId, materialId, longer }: Wanted, entry: PlannedProject): Need | null {
    const look = materialLooks(entry).get(materialId);
    const material = entry.plan.materials.find(({ id }) => id === materialId);
    if (look === undefined || material === undefined || isKept(look)) return null;
    const { hash } = look.asked.question;
    if (!longer && left.get(projectId)?.has(hash) === true) return null;
    const answer = answers.get(projectId, hash);
    const budgetMs = budgetOf(longer, material.proven, answer);
    const advisedCost = adviceNow(look, answer)?.cost ?? null;
    const advised = advisedCost !== null || settings.adviceMs <= 0 || look.begun !== null;
    const toDo = budgetMs > 0 || !advised;
    return toDo ? { look, material, answer, budgetMs, advisedCost } : null;
  }

  function budgetOf(longer: boolean, proven: boolean, answer: CuttingAnswer | undefined): number {
    if (answer?.complete === true) return 0;
    if (longer) return Math.max(LEAST_LONGER_MS, settings.searchMs * LONGER_FACTOR);
    const due = proven ? Math.min(OFFCUT_MS, settings.searchMs) : settings.searchMs;
    const rest = due - (answer?.searchedMs ?? 0);
    return rest < LEAST_SEARCH_MS ? 0 : rest;
  }

  /** A plan that is being sawn is not changed under the saw; what is laid beside its sheets may be. */
  function isKept({ begun }: MaterialLook): boolean {
    return begun?.whole === true;
  }

  /** Starts the next search when none is on. */
  function next(): void {
    while (running === null && !closed) {
      const wanted = queue.shift();
      if (wanted === undefined) return;
      const entry = planned(wanted.projectId);
      const need = entry === null ? null : needOf(wanted, entry);
      if (need !== null) begin(wanted, need);
      else if (entry !== null) announce(wanted.projectId);
    }
  }

  function begin(wanted: Wanted, { look, material, answer, budgetMs, advisedCost }: Need): void {
    const { question } = look.asked;
    const start = foundFromLayouts(look.asked, look.layouts);
    if (start === null || foundFault(question, start) !== null) {
      log.error({ material: material.id }, 'the plan does not answer its own cutting question');
      fail(wanted.projectId, question.hash);
      return;
    }
    const earlierRuns = answer?.runs ?? 0;
    running = {
      ...wanted,
      id: ++lastId,
      hash: question.hash,
      subjectHash: look.subject.hash,
      start,
      budgetMs,
      earlierMs: answer?.searchedMs ?? 0,
      earlierRuns,
    };
    thread.run({
      id: running.id,
      question,
      start,
      seed: 1 + earlierRuns * SEEDS_APART,
      searchMs: budgetMs,
      mostSteps: settings.mostSteps,
      subject: look.subject,
      adviceMs: look.begun === null ? settings.adviceMs : 0,
      advisedCost,
    });
    announce(wanted.projectId);
  }

  function hear(report: SearchReport): void {
    if (closed || running === null || report.id !== running.id) return;
    const task = running;
    const { projectId, hash } = task;
    switch (report.kind) {
      case 'better':
        store(task, report.plan, { ms: report.ms, over: false, complete: false });
        break;
      case 'searched':
        store(task, report.plan, { ms: report.ms, over: true, complete: report.complete });
        break;
      case 'advice': {
        const answer = answers.get(projectId, hash);
        const of = adviceName(task.subjectHash, report.cost);
        if (answer !== undefined && planned(projectId) !== null)
          put(projectId, { ...answer, advice: { of, items: report.advice } }, false);
        break;
      }
      case 'failed':
        log.error({ reason: report.message }, 'a search for better cutting failed');
        fail(projectId, hash);
        running = null;
        break;
      case 'ended':
        running = null;
        break;
    }
    if (running === null) next();
    announce(projectId);
  }

  /** Keeps what a search has found. */
  function store(
    task: Running,
    plan: AnytimePlan,
    { ms, over, complete }: { readonly ms: number; readonly over: boolean; readonly complete: boolean },
  ): void {
    const { projectId, materialId, hash } = task;
    const entry = planned(projectId);
    if (entry === null) return;
    const look = materialLooks(entry).get(materialId);
    const material = entry.plan.materials.find(({ id }) => id === materialId);
    const current = look?.asked.question.hash === hash && material !== undefined;
    if (current && isKept(look)) {
      thread.stop(task.id);
      return;
    }
    if (current && foundFault(look.asked.question, plan.sheets) !== null) {
      log.error({ material: materialId }, 'a search answered with a plan that cannot be cut');
      fail(projectId, hash);
      thread.stop(task.id);
      return;
    }
    const before = answers.get(projectId, hash);
    const { sheets, boundCost, boundStocks } = plan;
    const changesPlan =
      current &&
      (JSON.stringify(sheets) !== JSON.stringify(before?.sheets ?? task.start) ||
        boundStocks + (look.begun?.bought ?? 0) > (material.boundStocks.value ?? 0) ||
        (plan.cost <= boundCost && !material.proven));
    const answer: CuttingAnswer = {
      question: hash,
      sheets,
      boundCost: Math.max(boundCost, before?.boundCost ?? 0),
      boundStocks: Math.max(boundStocks, before?.boundStocks ?? 0),
      runs: task.earlierRuns + (over ? 1 : 0),
      searchedMs: Math.round(task.earlierMs + ms),
      complete,
      advice: before?.advice ?? null,
    };
    put(projectId, answer, changesPlan);
  }

  function put(projectId: number, answer: CuttingAnswer, changesPlan: boolean): void {
    const entry = planned(projectId);
    const looks = entry === null ? [] : [...materialLooks(entry).values()];
    const current = new Set(looks.map(({ asked }) => asked.question.hash));
    answers.put(projectId, answer, { changesPlan, current, at: now().toISOString() });
  }

  function leave(projectId: number, hash: string): void {
    const hashes = left.get(projectId) ?? new Set();
    left.set(projectId, hashes.add(hash));
  }

  /** Not tried again by itself, lest it fail again and again; whoever looks is told and may try. */
  function fail(projectId: number, hash: string): void {
    leave(projectId, hash);
    failed.set(projectId, (failed.get(projectId) ?? new Set()).add(hash));
  }

  function announce(projectId: number): void {
    if (closed || !events.openProjects().has(projectId) || planned(projectId) === null) return;
    events.tellCutting(projectId, state(projectId));
  }

  function state(projectId: number): CuttingSearchAnswer {
    const entry = plans.current(projectId);
    const looks = materialLooks(entry);
    return {
      sequence: ++lastAnswer,
      revision: entry.project.revision,
      planVersion: entry.planVersion,
      materials: entry.plan.materials.map((material) => {
        const look = looks.get(material.id);
        const answer = look && answers.get(projectId, look.asked.question.hash);
        return searchState(entry, material, look, answer, phaseOf(projectId, material, look));
      }),
    };
  }

  function phaseOf(
    projectId: number,
    material: MaterialPlan,
    look: MaterialLook | undefined,
  ): Pick<MaterialSearch, 'state' | 'since' | 'budgetMs'> {
    const isThis = (one: Wanted): boolean => one.projectId === projectId && one.materialId === material.id;
    const on =
      running !== null && isThis(running) && running.hash === look?.asked.question.hash ? running : null;
    let phase: MaterialSearch['state'] = 'idle';
    if (look !== undefined && failed.get(projectId)?.has(look.asked.question.hash) === true) phase = 'failed';
    else if (material.proven) phase = 'proven';
    else if (on !== null) phase = 'running';
    else if (queue.some(isThis)) phase = 'waiting';
    else if (look !== undefined && isKept(look)) phase = 'kept';
    const key = `${projectId} ${material.id}`;
    let known = phases.get(key);
    if (known?.state !== phase) {
      known = { state: phase, since: now().toISOString() };
      phases.set(key, known);
    }
    return { ...known, budgetMs: on?.budgetMs ?? 0 };
  }

  return {
    state,
    search(projectId, materialId) {
      const entry = plans.current(projectId);
      const looks = materialLooks(entry);
      const materials = entry.plan.materials.filter(({ id }) => materialId === null || id === materialId);
      if (materialId !== null && materials.length === 0) return false;
      for (const { id } of materials) {
        const look = looks.get(id);
        const wanted = { projectId, materialId: id, longer: true };
        if (look === undefined || needOf(wanted, entry) === null) continue;
        left.get(projectId)?.delete(look.asked.question.hash);
        failed.get(projectId)?.delete(look.asked.question.hash);
        queue = queue.filter((one) => one.projectId !== projectId || one.materialId !== id);
        queue.unshift(wanted);
      }
      next();
      announce(projectId);
      return true;
    },
    stop(projectId) {
      const entry = plans.current(projectId);
      for (const { asked } of materialLooks(entry).values()) leave(projectId, asked.question.hash);
      queue = queue.filter((wanted) => wanted.projectId !== projectId);
      if (running?.projectId === projectId) thread.stop(running.id);
      announce(projectId);
    },
    begun(projectId, before) {
      const layouts = (materials: readonly MaterialPlan[] = []) =>
        JSON.stringify(materials.map((one) => one.layouts));
      answers.touch(projectId);
      if (running?.projectId === projectId && !isAsked(running)) thread.stop(running.id);
      if (layouts(planned(projectId)?.plan.materials) !== layouts(before)) announce(projectId);
    },
    close() {
      closed = true;
      for (const timer of resting.values()) clearTimeout(timer);
      void thread.close();
    },
  };
}
