import type { Database } from 'better-sqlite3';
import { catalogueRevision, readCatalogueRows } from '../../db/catalogue.repository.ts';
import { noSuchProject } from '../../db/current-revision.ts';
import type { StoredProject } from '../../db/project-rows.ts';
import { readRevision } from '../../db/projects.repository.ts';
import { readProject } from '../../db/read-project.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { Catalogue } from '../planning/product.ts';
import type { ProjectInput } from '../planning/project-input.ts';
import type { PlanView } from './contract.ts';
import { projectInput } from './project-input.ts';
import { stripWorkings } from './strip-workings.ts';

/** How many projects' plans are kept in memory; the one longest unused goes first. */
const PLANS_KEPT = 8;

export interface PlannedProject {
  readonly project: StoredProject;
  readonly catalogueRevision: number;
  readonly input: ProjectInput;
  readonly plan: Plan;
  readonly view: PlanView;
}

/** The plan of each project as it stands, made once per revision of the project and of the catalogue. */
export interface ProjectPlans {
  /** The plan as of now. Throws Refusal when there is no such project. */
  readonly current: (projectId: number) => PlannedProject;
  /** The plan kept from before, if there is one. */
  readonly kept: (projectId: number) => PlannedProject | undefined;
  /** Lets go of what was planned within a transaction that was taken back. */
  readonly forgetUncommitted: () => void;
  readonly catalogue: () => Catalogue;
}

export function projectPlans(db: Database, planner: (input: ProjectInput) => Plan): ProjectPlans {
  const planned = new Map<number, PlannedProject>();
  let catalogue: { readonly revision: number; readonly rows: Catalogue } | null = null;

  function currentCatalogue(): { readonly revision: number; readonly rows: Catalogue } {
    const revision = catalogueRevision(db);
    if (catalogue?.revision !== revision) catalogue = { revision, rows: readCatalogueRows(db) };
    return catalogue;
  }

  return {
    current(projectId) {
      const revision = readRevision(db, projectId);
      if (revision === undefined) throw noSuchProject(projectId);
      const { revision: catalogueNow, rows } = currentCatalogue();
      let entry = planned.get(projectId);
      if (entry?.project.revision !== revision || entry.catalogueRevision !== catalogueNow) {
        const project = readProject(db, projectId);
        const input = projectInput(project, rows);
        const plan = planner(input);
        entry = { project, catalogueRevision: catalogueNow, input, plan, view: stripWorkings(plan) };
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
