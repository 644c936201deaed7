import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../db/open.ts';
import { readProject } from '../../db/read-project.ts';
import { openProject, projectIn } from './open-project.ts';

const program = fileURLToPath(new URL('edit-stream.ts', import.meta.url));

/** Runs the edit stream until `acknowledged` edits are printed, kills it at once, and answers the last one printed. */
async function killAfter(acknowledged: number, path: string, projectId: number): Promise<number> {
  const child = spawn(process.execPath, ['--import', 'tsx', program, path, String(projectId)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => {
    text += chunk.toString();
    if (text.split('\n').length > acknowledged) child.kill('SIGKILL');
  });
  const [, signal] = (await once(child, 'close')) as [number | null, string | null];
  expect(signal).toBe('SIGKILL');
  return Number(text.slice(0, text.lastIndexOf('\n')).split('\n').at(-1));
}

describe('a program killed in the middle of a stream of edits', () => {
  it.each([1, 37, 150])(
    'has lost none of its edits after %i acknowledged ones, and they can be undone',
    async (count) => {
      const project = openProject();
      const original = project.dump();
      project.db.close();

      const last = await killAfter(count, project.path, project.id);
      expect(last).toBeGreaterThanOrEqual(count + 1);

      const db = openDatabase(project.path);
      const again = projectIn(db, project.path, project.id);
      // The edit under way at the kill may have been finished, but is then finished whole.
      expect(again.revision()).toBeGreaterThanOrEqual(last);
      expect(readProject(db, project.id).rows.parts[0]?.note).toBe(`edit ${again.revision()}`);
      expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
      for (let edits = again.revision() - 1; edits > 0; edits--) again.undo();
      expect(again.dump()).toEqual(original);
      db.close();
    },
  );
});
