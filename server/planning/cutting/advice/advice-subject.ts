import type { PartPlan } from '../../plan-output.ts';
import type { ProjectInput } from '../../project-input.ts';
import { begunJob } from '../begun/begun-job.ts';
import { askedQuestion } from '../found/cutting-question.ts';
import { stableHash } from '../found/stable-hash.ts';
import { materialBlanks } from '../material-blanks.ts';
import { type MaterialJob, materialJob } from '../material-job.ts';
import {
  INCH_STEP_MM,
  INCH_STEPS,
  INCH_THIN_KERFS_MM,
  METRIC_STEP_MM,
  METRIC_STEPS,
  METRIC_THIN_KERFS_MM,
} from './constants.ts';

/** Everything that advice on one material is worked out from, as plain data. */
export interface AdviceSubject {
  /** Equal where the same advice holds. */
  readonly hash: string;
  readonly job: MaterialJob;
  readonly kerfMm: number;
  /** Parts whose grain nobody will see: no face is finished, or it is a back. */
  readonly hiddenPartIds: readonly string[];
  /** Thinner kerfs to try, widest first, mm. */
  readonly thinKerfsMm: readonly number[];
  readonly stepMm: number;
  readonly mostSteps: number;
}

/**
 * What advice on the cutting of one material is worked out from.
 *
 * `input`, `parts`: as for planMaterials. `materialId`: product id. Result: the subject; null where there is no cutting
 * question. Its hash covers the question, which rows make it up, and what may be varied; not names and not how
 * lengths are printed. Rule of ours, no source.
 */
export function adviceSubject(
  input: ProjectInput,
  parts: readonly PartPlan[],
  materialId: string,
): AdviceSubject | null {
  const { kerfMm, units } = input.settings;
  const material = materialBlanks(input, parts).find(({ product }) => product.id === materialId);
  if (material === undefined) return null;
  const job = begunJob(material, input)?.open ?? materialJob(material, input).job;
  if (job === null || job.blanks.length === 0) return null;
  const rows = new Map(input.parts.map((row) => [row.id, row]));
  const hiddenPartIds = job.blanks.flatMap(({ partId, grain, match }) => {
    const row = rows.get(partId);
    if (match !== undefined || row === undefined || grain === 'free' || row.grain === 'free') return [];
    const unfinished = row.showRecipeId === '' && row.backRecipeId === '';
    return unfinished || /\bbacks?\b/i.test(row.name) ? [partId] : [];
  });
  const inch = units === 'us';
  const thinKerfsMm = (inch ? INCH_THIN_KERFS_MM : METRIC_THIN_KERFS_MM).filter((thin) => thin < kerfMm);
  const stepMm = inch ? INCH_STEP_MM : METRIC_STEP_MM;
  const hash = stableHash(
    [
      askedQuestion(job, kerfMm).question.hash,
      stepMm,
      ...job.blanks.map(({ partId, lengthMm, widthMm, count, grain }) =>
        [partId, lengthMm, widthMm, count, grain].join(),
      ),
      'hidden',
      ...hiddenPartIds,
      'from',
      ...job.offers.map(({ packId, onHandId }) => `${packId}/${onHandId}`),
    ].join(';'),
  );
  return {
    hash,
    job,
    kerfMm,
    hiddenPartIds,
    thinKerfsMm,
    stepMm,
    mostSteps: inch ? INCH_STEPS : METRIC_STEPS,
  };
}
