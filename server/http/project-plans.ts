import type { Database } from 'better-sqlite3';
import type { AppliedChange } from '../../db/apply-changes.ts';
import { readSolvents } from '../../db/catalogue/read-solvents.ts';
import { catalogueRevision, readCatalogueRows } from '../../db/catalogue.repository.ts';
import { noSuchProject } from '../../db/current-revision.ts';
import type { StoredProject } from '../../db/project-rows.ts';
import { readRevision, readSettings } from '../../db/projects.repository.ts';
import { readProject } from '../../db/read-project.ts';
import { dateInZone } from '../calendar-search/zone-days.ts';
import { expiredOnHand } from '../planning/buying/stock/expired-on-hand.ts';
import { offeredCatalogue } from '../planning/buying/suppliers/offered-catalogue.ts';
import { type PlanMemory, planMemory } from '../planning/plan-memory.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { Catalogue } from '../planning/product.ts';
import type { FoundLayout, ProjectInput } from '../planning/project-input.ts';
import { readBegunPlans } from './begun-plans.ts';
import { changedProject } from './changed-project.ts';
import type { PlanView } from './contract.ts';
import { projectInput } from './project-input.ts';
import { stripWorkings } from './strip-workings.ts';
import { uncutOnHand } from './uncut-on-hand.ts';

/** How many projects' plans are kept in memory; the one longest unused goes first. */
const PLANS_KEPT = 8;

export interface PlannedProject {
  readonly project: StoredProject;
  readonly catalogueRevision: number;
  /** Rises with every cutting plan found that may make this plan better, and with ticks; no revision of the project. */
  readonly planVersion: number;
  /**
   * What the plan is made from: without leftovers past their date today, offcuts of sheets that are not cut, and packs
   * of retired suppliers.
   */
  readonly input: ProjectInput;
  /** The same with all of them, for what shows them. */
  readonly fullInput: ProjectInput;
  /** Of what is on hand, the offcuts of sheets that are not cut yet. */
  readonly uncut: ReadonlySet<string>;
  /** Leftovers past their date and offcuts not cut yet, as a text to compare. */
  readonly expired: string;
  readonly plan: Plan;
  readonly view: PlanView;
  readonly memory: PlanMemory;
}

/** Cutting plans found earlier, and how often they have changed. */
export interface FoundAnswers {
  readonly found: (projectId: number) => readonly FoundLayout[];
  readonly version: (projectId: number) => number;
}

/**
 * The plan of each project as it stands, made once per revision of the project and of the catalogue, and anew when a
 * longer search has found better cutting.
 */
export interface ProjectPlans {
  /**
   * The plan as of now. Throws Refusal when there is no such project. `edit`: what an edit just made did to rows, with the
   * revision it made; it saves reading the others.
   */
  readonly current: (projectId: number, edit?: AppliedChange) => PlannedProject;
  /** The plan kept from before, if there is one. */
  readonly kept: (projectId: number) => PlannedProject | undefined;
  /** Lets go of what was planned within a transaction that was taken back. */
  readonly forgetUncommitted: () => void;
  readonly catalogue: () => Catalogue;
}

export function projectPlans(
  db: Database,
  planner: (input: ProjectInput, memory?: PlanMemory) => Plan,
  answers: FoundAnswers,
  now: () => Date,
): ProjectPlans {
  const solvents = readSolvents();
  const planned = new Map<number, PlannedProject>();
  let catalogue: CurrentCatalogue | null = null;

  function currentCatalogue(): CurrentCatalogue {
    const revision = catalogueRevision(db);
    if (catalogue?.revision !== revision) {
      const rows = { ...readCatalogueRows(db), solvents };
      catalogue = { revision, rows, offered: offeredCatalogue(rows) };
    }
    return catalogue;
  }

  /** Row by row from the one before where an edit says what it did to that very one, else read anew. */
  function projectAfter(
    before: StoredProject | undefined,
    edit: AppliedChange | undefined,
    revision: number,
    projectId: number,
  ): StoredProject {
    const settings = readSettings(db, projectId);
    const follows = edit?.revision === revision && before?.revision === revision - 1;
    return before !== undefined && edit !== undefined && follows && settings !== undefined
      ? changedProject(before, edit, { revision, settings })
      : readProject(db, projectId);
  }

  return {
    current(projectId, edit) {
      const revision = readRevision(db, projectId);
      if (revision === undefined) throw noSuchProject(projectId);
      const { revision: catalogueNow, rows, offered } = currentCatalogue();
      let entry = planned.get(projectId);
      const planVersion = answers.version(projectId);
      const stands = entry?.project.revision === revision && entry.catalogueRevision === catalogueNow;
      const kept = entry !== undefined && stands ? entry : null;
      const project = kept?.project ?? projectAfter(entry?.project, edit, revision, projectId);
      const fullInput = kept?.fullInput ?? projectInput(project, rows);
      const today = dateInZone(now(), project.settings.timeZone);
      const uncut = uncutOnHand(db, projectId, fullInput.onHand);
      const gone = new Set([...expiredOnHand(fullInput.onHand, rows.products, today), ...uncut]);
      const expired = [...gone].join(' ');
      if (
        entry === undefined ||
        kept === null ||
        kept.planVersion !== planVersion ||
        kept.expired !== expired
      ) {
        const stock =
          kept !== null && kept.expired === expired ? kept.input : usable(fullInput, offered, gone);
        const input = { ...stock, begunPlans: readBegunPlans(db, projectId) };
        const memory = entry?.memory ?? planMemory();
        const foundLayouts = answers.found(projectId);
        const plan = planner({ ...input, foundLayouts }, memory);
        const view = stripWorkings(plan);
        entry = {
          project,
          catalogueRevision: catalogueNow,
          planVersion,
          input,
          fullInput,
          uncut: new Set(uncut),
          expired,
          plan,
          view,
          memory,
        };
      }
      planned.delete(projectId);
      planned.set(projectId, entry);
      for (const oldest of planned.keys()) {
        if (planned.size <= PLANS_KEPT) break;
        planned.delete(oldest);
      }
      return entry;
    },
    kept: (projectId) => planned.get(projectId),
    forgetUncommitted() {
      for (const [projectId, { project }] of planned)
        if (readRevision(db, projectId) !== project.revision) planned.delete(projectId);
      if (catalogue?.revision !== catalogueRevision(db)) catalogue = null;
    },
    catalogue: () => currentCatalogue().rows,
  };
}

/** What a project can be planned with today: what can be bought, and what is still good. */
function usable(input: ProjectInput, catalogue: Catalogue, gone: ReadonlySet<string>): ProjectInput {
  if (gone.size === 0 && catalogue === input.catalogue) return input;
  return { ...input, catalogue, onHand: input.onHand.filter(({ id }) => !gone.has(id)) };
}

interface CurrentCatalogue {
  readonly revision: number;
  readonly rows: Catalogue;
  /** The same without what retired suppliers have. */
  readonly offered: Catalogue;
}
