import type { Problem } from '../problem.ts';
import type { ProjectSettings } from '../project-input.ts';
import type { Blank } from './blank.ts';
import { sizeText } from './size-text.ts';

/**
 * The problem of a part that is no wider than the saw cut beside it; null where there is none.
 *
 * `blank`: cut size, mm. `settings`: the kerf, mm. Result: a warning at the part's length or width cell; the part is planned
 * all the same. A kerf of 0 is none. Rule of ours: such a size is nearly always a slip of the pen.
 */
export function kerfProblem(blank: Blank, settings: ProjectSettings): Problem | null {
  const { partId, name, lengthMm, widthMm } = blank;
  const { kerfMm } = settings;
  if (!(kerfMm > 0 && Math.min(lengthMm, widthMm) <= kerfMm)) return null;
  return {
    code: 'part-narrower-than-kerf',
    severity: 'warning',
    at: { table: 'parts', id: partId, field: lengthMm < widthMm ? 'length' : 'width' },
    message: `${name} is cut ${sizeText([lengthMm, widthMm], settings)}, and the saw cut beside it alone is ${sizeText([kerfMm], settings)} wide.`,
    wayOut: 'Correct the size of the part, or the saw kerf in the settings.',
  };
}
