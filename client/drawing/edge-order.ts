import type { EdgeName } from '../../server/planning/project-input.ts';

/** The four edges in the order they are listed everywhere. */
export const EDGE_ORDER = ['front', 'back', 'left', 'right'] as const satisfies readonly EdgeName[];
