import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { Change } from '../../db/change.ts';
import type { RowTable } from '../../db/project-rows.ts';
import { readProject } from '../../db/read-project.ts';
import { projectInput } from '../../server/http/project-input.ts';
import { plan } from '../../server/planning/plan.ts';
import { planMemory } from '../../server/planning/plan-memory.ts';
import { type OpenProject, openProject } from '../db/open-project.ts';

/** Random edits that a plan feels: rows, moves, settings, named sizes, recipes and their steps. */

const catalogue = readCatalogue();

const length = fc.constantFrom('600', '=depth', '=depth/2 + 20', '12 1/2"', '21 13/1', '', '880 mm');
const edit = fc.record({
  kind: fc.constantFrom(
    'part',
    'part',
    'add',
    'delete',
    'move',
    'settings',
    'size',
    'recipe',
    'step',
    'paste',
  ),
  row: fc.nat(9),
  text: length,
  number: fc.integer({ min: 1, max: 12 }),
});
type Edit = typeof edit extends fc.Arbitrary<infer Value> ? Value : never;

function changesOf(project: OpenProject, { kind, row, text, number }: Edit): Change[] {
  const idOf = (table: RowTable, at = row): string | undefined => {
    const ids = project.ids(table);
    return ids[at % Math.max(ids.length, 1)];
  };
  const update = (table: RowTable, values: Record<string, string | number | null>): Change[] => {
    const id = idOf(table);
    return id === undefined ? [] : [{ op: 'update', table, id, values }];
  };
  switch (kind) {
    case 'part':
      return update('parts', {
        width: text,
        quantity: String(number),
        edgeFront: number % 2 ? 'bare' : 'hidden',
      });
    case 'add':
      return [
        {
          op: 'insert',
          table: 'parts',
          before: idOf('parts') ?? null,
          values: { name: `New ${number}`, length: text, width: '100', materialId: 'birch-ply-18' },
        },
      ];
    case 'delete': {
      const table = (['parts', 'recipes', 'steps', 'sizes', 'extras'] as const)[number % 5] ?? 'parts';
      const id = idOf(table);
      return id === undefined ? [] : [{ op: 'delete', table, id }];
    }
    case 'move': {
      const id = idOf('parts');
      return id === undefined
        ? []
        : [{ op: 'move', table: 'parts', id, before: idOf('parts', number) ?? null }];
    }
    case 'settings':
      return [
        { op: 'settings', values: number % 2 ? { kerfMm: number } : { units: row % 2 ? 'us' : 'metric' } },
      ];
    case 'size':
      return row % 2
        ? update('sizes', { value: String(100 * number) })
        : [{ op: 'insert', table: 'sizes', before: null, values: { name: `size_${number}`, value: text } }];
    case 'recipe':
      return [{ op: 'insert', table: 'recipes', before: null, values: { name: `Recipe ${number}` } }];
    case 'step':
      return update('steps', { coats: 1 + (number % 4), thinning: number / 100 });
    case 'paste':
      return [
        ...update('parts', { length: text, note: `pasted ${number}` }),
        ...update('sizes', { note: text }),
      ];
  }
}

/** Edits a fresh project and gives every state that the edits lead through to `look`. */
function follow(edits: readonly Edit[], look: (project: OpenProject) => void): OpenProject {
  const project = openProject();
  look(project);
  for (const one of edits) {
    const before = project.revision();
    const changes = changesOf(project, one);
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
      fc.property(fc.array(edit, { minLength: 1, maxLength: 10 }), (edits) => {
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
      fc.property(fc.array(edit, { minLength: 1, maxLength: 10 }), (edits) => {
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
