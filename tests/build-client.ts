import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

/** Builds the client once before the run when browser tests are part of it, so that they drive the shipped bundle. */
export default async function buildClient(project: TestProject): Promise<void> {
  const filters = project.vitest.filenamePattern ?? [];
  if (
    filters.length > 0 &&
    !filters.some((word) => 'tests/browser'.includes(word) || word.includes('browser'))
  )
    return;
  await build({
    configFile: fileURLToPath(new URL('../client/vite.config.ts', import.meta.url)),
    logLevel: 'warn',
  });
}
