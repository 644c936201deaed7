import type { Response } from 'express';
import type { AppliedChange } from '../../db/apply-changes.ts';
import { readUndoMenu } from '../../db/edits.repository.ts';
import type { AppContext } from './app-context.ts';
import type { ChangeAnswer, PlanView, ProjectState } from './contract.ts';
import type { PlannedProject } from './project-plans.ts';
import { sameValues } from './same-values.ts';

/** A whole project as a screen opens it. */
export function projectState(context: AppContext, projectId: number): ProjectState {
  const { project, view } = context.plans.current(projectId);
  return { ...project, plan: view, ...readUndoMenu(context.db, projectId) };
}

/**
 * Makes an edit, an undo or a redo, plans the result, answers what is different, and tells the other windows. The
 * planning is part of the transaction: an edit that brought the planner down would otherwise leave a project that
 * nobody can open.
 */
export function answerEdit(
  context: AppContext,
  response: Response,
  projectId: number,
  edit: (projectId: number) => AppliedChange,
): ChangeAnswer {
  const { db, plans, events } = context;
  const before = plans.kept(projectId);
  try {
    const [applied, after] = db
      .transaction((): [AppliedChange, PlannedProject] => {
        const applied = edit(projectId);
        return [applied, plans.current(projectId, applied)];
      })
      .immediate();
    if (applied.revision !== before?.project.revision)
      response.on('close', () => events.tellRevision(projectId, applied.revision));
    return {
      ...applied,
      settings: after.project.settings,
      ...planDifference(before, after, applied),
      ...readUndoMenu(db, projectId),
    };
  } catch (error) {
    plans.forgetUncommitted();
    throw error;
  }
}

/** From so many rows on, the layouts are most of an answer, and whoever edits the list does not look at them. */
const LONG_LIST_ROWS = 1000;

type PlanDifference = Pick<ChangeAnswer, 'plan' | 'layoutsLeftOut' | 'removedPartPlans'>;

function planDifference(
  before: PlannedProject | undefined,
  after: PlannedProject,
  applied: AppliedChange,
): PlanDifference {
  const comparable = before !== undefined && applied.revision - before.project.revision <= 1;
  if (!comparable)
    return { plan: after.view, layoutsLeftOut: false, removedPartPlans: applied.removed.parts ?? [] };
  const known = new Map(before.view.parts.map((part) => [part.id, part]));
  const parts = after.view.parts.filter((part) => !sameValues(known.get(part.id), part));
  for (const part of after.view.parts) known.delete(part.id);
  const layoutsLeftOut = after.view.parts.length >= LONG_LIST_ROWS;
  const plan = { ...(layoutsLeftOut ? withoutLayouts(after.view) : after.view), parts };
  return { plan, layoutsLeftOut, removedPartPlans: [...known.keys()] };
}

function withoutLayouts(view: PlanView): PlanView {
  return {
    ...view,
    materials: view.materials.map((material) => ({ ...material, layouts: [] })),
    banding: view.banding.map((product) => ({ ...product, rolls: [] })),
  };
}
