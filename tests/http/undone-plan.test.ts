import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { readProject } from '../../db/read-project.ts';
import { projectInput } from '../../server/http/project-input.ts';
import { plan } from '../../server/planning/plan.ts';
import { planMemory } from '../../server/planning/plan-memory.ts';
import { type OpenProject, openProject } from '../db/open-project.ts';
import { anyEdit, changesOf, type RandomEdit } from './random-edits.ts';

const catalogue = readCatalogue();

/** Edits a fresh project and gives every state that the edits lead through to `look`. */
function follow(edits: readonly RandomEdit[], look: (project: OpenProject) => void): OpenProject {
  const project = openProject();
  look(project);
  for (const one of edits) {
    const before = project.revision();
    const changes = changesOf(project.ids, one);
    if (changes.length === 0) continue;
    project.change(...changes);
    if (project.revision() > before) look(project);
  }
  return project;
}

/** The project with everything reckoned from it. */
function whole(project: OpenProject): unknown {
  const stored = readProject(project.db, project.id);
  return { settings: stored.settings, rows: stored.rows, plan: plan(projectInput(stored, catalogue)) };
}

describe('any sequence of edits', () => {
  it('undone and done again goes through the identical projects and plans', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 10 }), (edits) => {
        const states: unknown[] = [];
        const project = follow(edits, (state) => states.push(whole(state)));
        for (const state of states.slice(0, -1).toReversed()) {
          project.undo();
          expect(whole(project)).toEqual(state);
        }
        for (const state of states.slice(1)) {
          project.redo();
          expect(whole(project)).toEqual(state);
        }
      }),
      { numRuns: 7 },
    );
  });
  it('is planned with a memory as it is without one', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 10 }), (edits) => {
        const memory = planMemory();
        const look = (project: OpenProject): void => {
          const input = projectInput(readProject(project.db, project.id), catalogue);
          expect(plan(input, memory)).toEqual(plan(input));
        };
        let states = 0;
        const project = follow(edits, (state) => {
          states++;
          look(state);
        });
        for (; states > 1; states--) {
          project.undo();
          look(project);
        }
      }),
      { numRuns: 7 },
    );
  });
});
