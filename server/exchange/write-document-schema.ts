import { writeFileSync } from 'node:fs';
import { documentJsonSchema } from './document-json-schema.ts';

/**
 * Writes `project-document.schema.json`, which the tests compare with the code. Run it after a change of the format:
 *   npx tsx server/exchange/write-document-schema.ts && npx biome check --write server/exchange
 */
const file = new URL('./project-document.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(documentJsonSchema(), null, 2)}\n`);
