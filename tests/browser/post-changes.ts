import { expect } from 'vitest';
import type { Change, ChangeAnswer } from '../../server/http/contract.ts';
import { readProject } from './import-project.ts';

/** Makes changes to a project as another window would, and answers what became of them. */
export async function postChanges(
  url: string,
  projectId: string,
  changes: readonly Change[],
): Promise<ChangeAnswer> {
  const { revision } = await readProject(url, projectId);
  const answer = await fetch(`${url}/api/projects/${projectId}/changes`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ revision, changes }),
  });
  expect(answer.status).toBe(200);
  return (await answer.json()) as ChangeAnswer;
}
