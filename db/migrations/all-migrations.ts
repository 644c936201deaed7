import type { Migration } from '../migrate.ts';
import { first } from './001-first.ts';
import { cutPieces } from './002-cut-pieces.ts';
import { cuttingAnswers } from './003-cutting-answers.ts';
import { calendar } from './004-calendar.ts';
import { air } from './005-air.ts';
import { cuttingWishes } from './006-cutting-wishes.ts';
import { deletedProjects } from './007-deleted-projects.ts';
import { ledger } from './008-ledger.ts';
import { shippedProducts } from './009-shipped-products.ts';
import { quoteSheets } from './010-quote-sheets.ts';
import { keptOffcuts } from './011-kept-offcuts.ts';

/** Every step in order; the file's `user_version` counts the steps it has been through. Append only. */
export const ALL_MIGRATIONS: readonly Migration[] = [
  first,
  cutPieces,
  cuttingAnswers,
  calendar,
  air,
  cuttingWishes,
  deletedProjects,
  ledger,
  shippedProducts,
  quoteSheets,
  keptOffcuts,
];
