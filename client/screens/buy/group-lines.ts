import type { PlanView } from '../../../server/http/contract.ts';

export type BuyLine = PlanView['buy']['lines'][number];

export interface SupplierLines {
  readonly supplierId: string | null;
  readonly name: string;
  readonly lines: readonly BuyLine[];
}

const NOBODY = 'No supplier chosen';

/** The buy list by supplier, in the order suppliers first appear; lines without one come last. */
export function groupLines(lines: readonly BuyLine[]): readonly SupplierLines[] {
  const groups = new Map<string | null, BuyLine[]>();
  for (const line of lines) {
    const list = groups.get(line.supplierId);
    if (list === undefined) groups.set(line.supplierId, [line]);
    else list.push(line);
  }
  return [...groups]
    .map(([supplierId, list]) => ({
      supplierId,
      name: supplierId === null ? NOBODY : list[0]?.supplierName || supplierId,
      lines: list,
    }))
    .sort((a, b) => Number(a.supplierId === null) - Number(b.supplierId === null));
}
