import { smallProject } from '../db/small-project.ts';

/** The small project as the document that the import route takes. */
export const document = { format: 'plywright-project', version: 1, ...smallProject } as const;
