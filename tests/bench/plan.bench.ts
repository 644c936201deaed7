import { performance } from 'node:perf_hooks';
import { plan } from '../../server/planning/plan.ts';
import { demoProject } from './demo-project.ts';
import { syntheticProject } from './synthetic-project.ts';

/** Full plan for the demo, 500 and 5,000 part rows: minimum, median, spread, and the growth exponent. */
export async function run(): Promise<void> {
  const demo = demoProject();
  const cases = [
    { name: `demo (${demo.parts.length} rows)`, input: demo, rounds: 40 },
    { name: '500 rows', input: syntheticProject(demo, 500), rounds: 15 },
    { name: '5,000 rows', input: syntheticProject(demo, 5000), rounds: 7 },
  ];
  const medians: number[] = [];
  let sink = 0;
  for (const { name, input, rounds } of cases) {
    for (let warm = 0; warm < 3; warm++) sink += plan(input).parts.length;
    const times: number[] = [];
    for (let round = 0; round < rounds; round++) {
      const start = performance.now();
      sink += plan(input).parts.length;
      times.push(performance.now() - start);
    }
    times.sort((left, right) => left - right);
    const at = (share: number): number =>
      times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0;
    medians.push(at(0.5));
    console.log(
      `${name.padEnd(18)} min ${at(0).toFixed(1)} ms · median ${at(0.5).toFixed(1)} ms · max ${at(0.999).toFixed(1)} ms · ${rounds} rounds`,
    );
  }
  const [, middle = 1, large = 1] = medians;
  console.log(
    `growth exponent from 500 to 5,000 rows: ${Math.log10(large / middle).toFixed(2)} (1.00 is linear; the bar is 1.10)`,
  );
  console.log(`sink ${sink}`);
}
