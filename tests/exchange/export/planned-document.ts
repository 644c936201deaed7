import { readCatalogue } from '../../../db/catalogue/read-catalogue.ts';
import type { ExportTable, ExportTableName } from '../../../server/exchange/export/export-table.ts';
import { makeExportTable } from '../../../server/exchange/export/make-export-table.ts';
import { readProjectDocument } from '../../../server/exchange/project-document.ts';
import type { BuyingCalendar } from '../../../server/planning/buying/dates/needed-by.ts';
import { planPurchases } from '../../../server/planning/buying/plan-purchases.ts';
import { planLedger } from '../../../server/planning/ledger/plan-ledger.ts';
import { plan } from '../../../server/planning/plan.ts';
import type { Plan } from '../../../server/planning/plan-output.ts';
import type { ProjectInput } from '../../../server/planning/project-input.ts';

export interface PlannedDocument {
  readonly input: ProjectInput;
  readonly plan: Plan;
  readonly table: (name: ExportTableName) => ExportTable;
  /** One column of a table, top to bottom, by its heading. */
  readonly column: (name: ExportTableName, heading: string) => readonly unknown[];
}

const TODAY = '2027-03-10';

export const shipped = readCatalogue();

/** A project document, read with the shipped catalogue and planned. */
export function plannedDocument(document: object, calendar: BuyingCalendar | null = null): PlannedDocument {
  const read = readProjectDocument({ format: 'plywright-project', version: 1, ...document }, shipped);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { input } = read;
  const made = plan(input);
  const buying = planPurchases({ input, plan: made, today: TODAY, calendar });
  const ledger = planLedger({ input, plan: made, buying, handsOnMin: null, today: TODAY });
  const table = (name: ExportTableName): ExportTable =>
    makeExportTable(name, input, made, { buying, ledger, calendar });
  return {
    input,
    plan: made,
    table,
    column(name, heading) {
      const { columns, rows } = table(name);
      const index = columns.findIndex((column) => column.heading === heading);
      if (index < 0) throw new Error(`${name} has no column "${heading}"`);
      return rows.map((row) => row[index]);
    },
  };
}

/** A product of a test's own, added to the document's catalogue. */
export function ownProduct(id: string, kind: string, rest: object): object {
  return { id, kind, name: `${id} in full`, shortName: id, unit: 'pcs', ...rest };
}

const EVIDENCE = { basis: 'user', source: '', readOn: null } as const;

export function typical(value: number, unit: string): object {
  return { low: null, typical: value, high: null, unit, ...EVIDENCE };
}

export function pack(
  id: string,
  amount: number,
  priceMinor: number | null,
  currency: string,
  sheet?: object,
): object {
  return {
    id,
    label: id,
    amount,
    lengthMm: null,
    widthMm: null,
    priceMinor,
    currency,
    supplierId: null,
    ...EVIDENCE,
    ...sheet,
  };
}
