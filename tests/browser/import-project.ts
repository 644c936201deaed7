import type { ProjectState } from '../../server/http/contract.ts';
import { bookcaseDocument } from './bookcase-document.ts';

/** Stores a fresh copy of a project document on the started program; the bookcase when none is given. */
export async function importProject(url: string, document: object = bookcaseDocument): Promise<ProjectState> {
  const answer = await fetch(`${url}/api/projects/import`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(document),
  });
  if (answer.status !== 201) throw new Error(`import answered ${answer.status}: ${await answer.text()}`);
  return (await answer.json()) as ProjectState;
}

export async function readProject(url: string, id: string): Promise<ProjectState> {
  return (await (await fetch(`${url}/api/projects/${id}`)).json()) as ProjectState;
}
