import type { PartInput, ProjectInput } from '../../server/planning/project-input.ts';
import { seededRandom } from './seeded-random.ts';

/** A project of `rows` part rows, made by varying a real project's parts in a repeatable way. */
export function syntheticProject(model: ProjectInput, rows: number, seed = 1): ProjectInput {
  const random = seededRandom(seed);
  const parts: PartInput[] = [];
  for (let row = 1; row <= rows; row++) {
    const source = model.parts[Math.floor(random() * model.parts.length)];
    if (source === undefined) throw new RangeError('syntheticProject: the model project has no parts');
    parts.push({
      ...source,
      id: String(row),
      name: `${source.name} ${row}`,
      length: source.shape === 'round' ? source.length : `${200 + Math.floor(random() * 900)} mm`,
      width: source.shape === 'round' ? source.width : `${120 + Math.floor(random() * 300)} mm`,
      quantity: String(1 + Math.floor(random() * 4)),
      ...(source.shape === 'round'
        ? {}
        : { radiusFrontLeft: '', radiusFrontRight: '', radiusBackLeft: '', radiusBackRight: '' }),
    });
  }
  return { ...model, parts };
}
