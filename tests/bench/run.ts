import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';

/**
 * `npm run bench` lists the benches; `npm run bench -- plan` runs tests/bench/plan.bench.ts. Each bench is its own
 * module with one exported `run(args)`, seeded and warmed, and prints sizes, ratios and spread.
 */
const folder = fileURLToPath(new URL('.', import.meta.url));
const [word, ...args] = process.argv.slice(2);
const names = (await readdir(folder))
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace('.bench.ts', ''));

if (word === undefined || !existsSync(`${folder}${word}.bench.ts`)) {
  console.log(
    `${word === undefined ? 'Which bench?' : `There is no bench "${word}".`} One of: ${names.join(', ')}`,
  );
  process.exitCode = word === undefined ? 0 : 2;
} else {
  console.log(
    `bench ${word} · Node ${process.version} · ${cpus()[0]?.model ?? 'unknown processor'} · ${cpus().length} cores`,
  );
  const bench = (await import(`./${word}.bench.ts`)) as { run(args: string[]): Promise<void> };
  await bench.run(args);
}
