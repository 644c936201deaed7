import { writeFileSync } from 'node:fs';
import { documentJsonSchema } from './document-json-schema.ts';

/** Writes the published schema file; a test requires the file to be current. */
writeFileSync(
  new URL('./project-document.schema.json', import.meta.url),
  `${JSON.stringify(documentJsonSchema(), null, 2)}\n`,
);
