import type { Response } from 'express';
import { z } from 'zod';
import { adoptAttachments, copyAttachments } from '../../../db/attachments.repository.ts';
import { backUp } from '../../../db/backup.ts';
import { catalogueRevision } from '../../../db/catalogue.repository.ts';
import { createProject, type NewProject } from '../../../db/create-project.ts';
import { currentRevision } from '../../../db/current-revision.ts';
import { bringBackProject, deleteProject } from '../../../db/delete-project.ts';
import { listDeletedProjects } from '../../../db/deleted-projects.repository.ts';
import { listProjects } from '../../../db/projects.repository.ts';
import { documentJsonSchema } from '../../exchange/document-json-schema.ts';
import { documentSchema } from '../../exchange/document-schema.ts';
import { exportFileName } from '../../exchange/export/export-file-name.ts';
import {
  DEFAULT_SHOP_HOURS,
  defaultSettings,
  writeProjectDocument,
} from '../../exchange/project-document.ts';
import { plan } from '../../planning/plan.ts';
import type { ProjectSettings } from '../../planning/project-input.ts';
import { deletedProjectSchema, projectStateSchema, projectSummarySchema } from '../answer-schemas.ts';
import type { AppContext } from '../app-context.ts';
import { projectState } from '../change-answer.ts';
import type { ProjectState } from '../contract.ts';
import { planSchema } from '../plan-schemas.ts';
import { importedProject, inputOf, shippedAsStored, shippedCatalogue } from '../posted-document.ts';
import { bareInput } from '../project-input.ts';
import { type Route, route } from '../route.ts';
import { currency, projectName, projectParams, revisionBody, units } from '../schemas.ts';

/** Projects as wholes, and the document in which one travels. */
export const projectRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects',
    summary: 'All projects.',
    group: 'projects',
    answer: z.strictObject({ projects: z.array(projectSummarySchema) }),
    handle: (_input, { db }) => ({ projects: listProjects(db) }),
  }),
  route({
    method: 'post',
    path: '/api/projects',
    summary: 'Begin a project.',
    group: 'projects',
    body: z.strictObject({ name: projectName, units, currency }),
    status: 201,
    answer: projectStateSchema,
    handle: ({ body }, context, response) =>
      create(context, response, () => emptyProject(defaultSettings(body.units, body.currency, body.name))),
  }),
  route({
    method: 'post',
    path: '/api/projects/import',
    summary: 'Store a project document as a new project.',
    group: 'projects',
    body: documentSchema,
    status: 201,
    answer: projectStateSchema,
    handle: ({ body }, context, response) =>
      create(
        context,
        response,
        () => importedProject(context.db, body, context.plans.catalogue()),
        (projectId) => adoptAttachments(context.db, projectId),
      ),
  }),
  route({
    method: 'get',
    path: '/api/projects/deleted',
    summary: 'Deleted projects that can still be brought back, the latest first.',
    group: 'projects',
    answer: z.strictObject({ projects: z.array(deletedProjectSchema) }),
    handle: (_input, { db }) => ({ projects: listDeletedProjects(db) }),
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}',
    summary: 'A project with all its rows and its plan.',
    group: 'projects',
    params: projectParams,
    answer: projectStateSchema,
    handle: ({ params }, context) => projectState(context, Number(params.id)),
  }),
  route({
    method: 'delete',
    path: '/api/projects/{id}',
    summary: 'Delete a project, after a backup of the whole database. It can be brought back for 30 days.',
    group: 'projects',
    params: projectParams,
    body: revisionBody,
    status: 204,
    answer: null,
    refusals: ['revision-stale'],
    handle({ params, body }, { db, events, now }) {
      const id = Number(params.id);
      currentRevision(db, id, body.revision);
      backUp(db, 'before-delete', now());
      deleteProject(db, id, now());
      events.close(id);
    },
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/bring-back',
    summary: 'Bring a deleted project back as it was, its undo included.',
    group: 'projects',
    params: projectParams,
    answer: projectStateSchema,
    handle({ params }, context) {
      const id = Number(params.id);
      bringBackProject(context.db, id);
      return projectState(context, id);
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/document',
    summary: 'The project as a document: the form the command line reads.',
    group: 'projects',
    params: projectParams,
    answer: documentSchema,
    handle({ params }, { plans }, response) {
      const { fullInput: input } = plans.current(Number(params.id));
      response.attachment(exportFileName(input.settings.name, '', 'plywright.json'));
      return writeProjectDocument(bareInput(input), shippedAsStored(input.catalogue));
    },
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/duplicate',
    summary: 'Copy a project under another name.',
    group: 'projects',
    params: projectParams,
    body: z.strictObject({ name: projectName }),
    status: 201,
    answer: projectStateSchema,
    handle({ params, body }, context, response) {
      const { fullInput: input } = context.plans.current(Number(params.id));
      const copy = () => ({ ...input, settings: { ...input.settings, name: body.name } });
      return create(context, response, copy, (copyId) =>
        copyAttachments(context.db, Number(params.id), copyId),
      );
    },
  }),
  route({
    method: 'post',
    path: '/api/plan',
    summary: 'The full plan of a project document, with the catalogue as shipped; nothing is stored.',
    group: 'projects',
    body: documentSchema,
    answer: planSchema,
    handle: ({ body }) => plan(inputOf(body, shippedCatalogue())),
  }),
  route({
    method: 'get',
    path: '/api/schema',
    summary: 'The JSON Schema of the project document.',
    group: 'projects',
    answer: z.record(z.string(), z.unknown()),
    handle: () => documentJsonSchema(),
  }),
];

/** Stores a project and plans it, in one transaction: see `answerEdit`. */
function create(
  context: AppContext,
  response: Response,
  project: () => NewProject,
  also: (projectId: number) => void = () => {},
): ProjectState {
  const { db, plans, events, readLengthCell, now } = context;
  const catalogueBefore = catalogueRevision(db);
  try {
    return db
      .transaction(() => {
        const projectId = createProject(db, project(), { readLengthCell, now: now() });
        also(projectId);
        return projectState(context, projectId);
      })
      .immediate();
  } catch (error) {
    plans.forgetUncommitted();
    throw error;
  } finally {
    if (catalogueRevision(db) !== catalogueBefore) response.on('close', events.tellCatalogue);
  }
}

function emptyProject(settings: ProjectSettings): NewProject {
  return {
    settings,
    sizes: [],
    parts: [],
    recipes: [],
    blends: [],
    rules: [],
    extras: [],
    onHand: [],
    measurements: [],
    shopHours: DEFAULT_SHOP_HOURS.map((row, index) => ({ ...row, id: String(index + 1) })),
    daysOff: [],
    climateRows: [],
    pins: [],
    doneTasks: [],
    arrivals: [],
    budgets: [],
    orders: [],
    orderLines: [],
    receipts: [],
    stockUses: [],
    payments: [],
    substitutes: [],
    workHours: [],
    quotes: [],
  };
}
