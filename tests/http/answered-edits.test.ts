import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyAnswer } from '../../client/state/apply-answer.ts';
import { readProject } from '../../db/read-project.ts';
import type { ChangeAnswer, ProjectState } from '../../server/http/contract.ts';
import { projectInput } from '../../server/http/project-input.ts';
import { stripWorkings } from '../../server/http/strip-workings.ts';
import { plan } from '../../server/planning/plan.ts';
import { type OpenApp, openApp } from './open-app.ts';
import { anyEdit, changesOf } from './random-edits.ts';

/** An edit, or a step back or forth. */
const step = fc.oneof({ weight: 6, arbitrary: anyEdit }, fc.constantFrom('undo' as const, 'redo' as const));

/** The project read from its tables and planned from nothing, by other ways than the answers to edits go. */
async function readAnew(app: OpenApp, id: string): Promise<Pick<ProjectState, 'rows' | 'settings' | 'plan'>> {
  const { rows, settings, ...rest } = readProject(app.db, Number(id));
  const catalogue = (await app.send('get', '/api/catalogue')).body;
  const planned = plan(projectInput({ rows, settings, ...rest }, catalogue));
  return { rows, settings, plan: JSON.parse(JSON.stringify(stripWorkings(planned))) };
}

describe('the answers to any sequence of edits, undo and redo among them', () => {
  it('put together one after another come to what reading and planning the whole project comes to', async () => {
    const app = openApp();
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 8 }), async (steps) => {
        let seen = await app.importSmall();
        for (const one of steps) {
          const back = one === 'undo' ? seen.canUndo : one === 'redo' ? seen.canRedo : null;
          const changes =
            typeof one === 'string' ? [] : changesOf((table) => seen.rows[table].map(({ id }) => id), one);
          if (back === false || (back === null && changes.length === 0)) continue;
          const answer = await app.send(
            'post',
            `/api/projects/${seen.id}/${typeof one === 'string' ? one : 'changes'}`,
            { revision: seen.revision, ...(typeof one === 'string' ? {} : { changes }) },
          );
          expect(answer.status).toBe(200);
          seen = applyAnswer(seen, answer.body as ChangeAnswer);
          const anew = await readAnew(app, seen.id);
          expect({ rows: seen.rows, settings: seen.settings, plan: seen.plan }).toEqual(anew);
        }
      }),
      { numRuns: 7 },
    );
  });
});
