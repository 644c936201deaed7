import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { Catalogue } from '../../server/planning/product.ts';
import { catalogueFaults } from './catalogue-faults.ts';
import { productSchema, supplierSchema } from './product-schema.ts';
import { readSolvents } from './read-solvents.ts';

/** The shipped files, one for each kind, in the order in which the catalogue is shown. */
export const CATALOGUE_FILES = [
  'sheets',
  'boards',
  'banding',
  'finishes',
  'thinners',
  'abrasives',
  'glues',
  'fillers',
  'hardware',
  'consumables',
] as const;

/** The shipped catalogue, read from its files and checked. Throws Error, with all the faults, when a file is wrong. */
export function readCatalogue(): Catalogue {
  const products = CATALOGUE_FILES.flatMap((file) => readRows(file, productSchema));
  const suppliers = readRows('suppliers', supplierSchema);
  const solvents = readSolvents();
  const faults = catalogueFaults({ products, suppliers, solvents });
  if (faults.length > 0)
    throw new Error(`The shipped catalogue is wrong:\n${faults.map(({ message }) => message).join('\n')}`);
  return { products, suppliers, solvents };
}

function readRows<Row>(file: string, schema: z.ZodType<Row>): Row[] {
  const rows: unknown = JSON.parse(readFileSync(new URL(`${file}.json`, import.meta.url), 'utf8'));
  const read = z.array(schema).safeParse(rows);
  if (!read.success) throw new Error(`db/catalogue/${file}.json is wrong:\n${z.prettifyError(read.error)}`);
  return read.data;
}
