import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/**
 * Builds the client once before the run, so that the browser tests drive what is shipped. A run narrowed to other
 * folders on the command line does without.
 */
export default async function buildClient(): Promise<void> {
  const named = process.argv.slice(2).filter((word) => word.startsWith('tests/'));
  if (named.length > 0 && !named.some((word) => word.startsWith('tests/browser') || word === 'tests/'))
    return;
  await build({
    configFile: fileURLToPath(new URL('../client/vite.config.ts', import.meta.url)),
    logLevel: 'warn',
  });
}
