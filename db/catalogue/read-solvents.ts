import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { ExposureLimit, Solvent, SolventFigure } from '../../server/planning/air/solvent.ts';
import { evidenceShape, withSource } from './figure-schema.ts';
import { name, slug } from './name-schema.ts';

/**
 * The shipped solvents, for the air check: read from solvents.json, checked strictly. Unknown is null, never 0. A figure
 * whose value is null names the source that itself says "unknown". Throws Error, with all the faults, when the file is
 * wrong.
 */
export function readSolvents(): Solvent[] {
  return parseSolvents(readFileSync(new URL('solvents.json', import.meta.url), 'utf8'));
}

/** The same from the text of such a file. */
export function parseSolvents(text: string): Solvent[] {
  const read = z.array(solventSchema).refine(idsOnce, 'must not use an id twice').safeParse(JSON.parse(text));
  if (!read.success) throw new Error(`The solvents are wrong:\n${z.prettifyError(read.error)}`);
  return read.data;
}

/** Figures that are temperatures may be any number down to absolute zero; all others are above 0. */
const figure = (value: z.ZodNumber): z.ZodType<SolventFigure> =>
  withSource(z.strictObject({ value: value.nullable(), ...evidenceShape }));
const percentByVolume = figure(z.number().positive().max(100));

const limit: z.ZodType<ExposureLimit> = withSource(
  z.strictObject({
    body: name,
    kind: z.enum(['time-weighted', 'short-term', 'ceiling']),
    averagedOverMin: z.number().int().positive().max(1440).nullable(),
    ppm: z.number().positive().max(1_000_000).nullable(),
    mgPerM3: z.number().positive().nullable(),
    ...evidenceShape,
  }),
)
  .refine(({ ppm, mgPerM3 }) => ppm !== null || mgPerM3 !== null, 'must be given in ppm or in mg/m3')
  .refine(
    ({ kind, averagedOverMin }) => kind === 'ceiling' || averagedOverMin !== null,
    'must say over how many minutes it is averaged',
  );

export const solventSchema: z.ZodType<Solvent> = z
  .strictObject({
    id: slug,
    name,
    alsoCalled: z.array(name),
    casNumber: z.string().refine(isCasNumber, 'must be a CAS number with a right check digit').nullable(),
    molarMassGPerMol: figure(z.number().min(1).max(1000)).nullable(),
    densityGPerL: figure(z.number().min(500).max(2000)).nullable(),
    lelPercent: percentByVolume.nullable(),
    uelPercent: percentByVolume.nullable(),
    lelElsewhere: z.array(percentByVolume),
    flashPointC: figure(z.number().min(-273.15).max(500)).nullable(),
    limits: z.array(limit),
    idlhPpm: figure(z.number().positive()).nullable(),
    idlhMgPerM3: figure(z.number().positive()).nullable(),
    note: z.string().nullable(),
  })
  .refine(
    ({ lelPercent, uelPercent }) =>
      (lelPercent?.value ?? 0) < (uelPercent?.value ?? Number.POSITIVE_INFINITY),
    'must have a lower explosive limit below the upper one',
  );

function idsOnce(solvents: readonly Solvent[]): boolean {
  return new Set(solvents.map(({ id }) => id)).size === solvents.length;
}

/** The last digit is the sum of the others, each times its place counted from the right, modulo 10. */
function isCasNumber(text: string): boolean {
  if (!/^[1-9]\d{1,6}-\d{2}-\d$/.test(text)) return false;
  const digits = [...text.replaceAll('-', '')].map(Number).reverse();
  const [check, ...others] = digits;
  return others.reduce((sum, digit, index) => sum + digit * (index + 1), 0) % 10 === check;
}
