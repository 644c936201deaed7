import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A path for a database file in a folder of its own, removed when the test is over. */
export function freshFile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'plywright-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'plywright.db');
}
