import { formatLength } from '../../../server/planning/display/format-length.ts';
import type { ProjectSettings } from '../../../server/planning/project-input.ts';

/** A length as a cell shows it: the column's heading says mm, so the number stands alone; inches keep their mark. */
export function cellLength(lengthMm: number, settings: ProjectSettings): string {
  return formatLength(lengthMm, settings).replace(/ mm$/, '');
}
