import type { LedgerPlan } from '../../../planning/ledger/ledger-plan.ts';
import type { Payment, ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

const PERCENT = 100;

/** Every payment and refund as entered, by date; those without a date first. What the project bears is below 0 for a refund. */
export function paymentsTable(input: ProjectInput, ledger: LedgerPlan): ExportTable {
  const { text, count, money } = columnMakers(input.settings);
  const supplierName = new Map(input.catalogue.suppliers.map(({ id, name }) => [id, name]));
  const orders = new Map(input.orders.map((order) => [order.id, order]));
  const own = new Map(ledger.payments.map((payment) => [payment.id, payment.own.value]));
  const orderName = ({ orderId }: Payment): string => {
    const order = orders.get(orderId);
    return order === undefined ? '' : order.number || order.date || order.id;
  };
  return exportTable<Payment>(
    'payments',
    'Payments',
    [
      text('Date', 12, ({ date }) => date),
      text('Kind', 10, ({ kind }) => kind),
      text('Supplier', 24, ({ supplierId }) => supplierName.get(supplierId) ?? supplierId),
      text('Order', 16, orderName),
      text('Heading', 14, (payment) => (orderName(payment) === '' ? payment.category : '')),
      money('Amount with tax', ({ amountMinor }) => amountMinor),
      money('Of which tax', ({ taxMinor }) => taxMinor),
      count('Share (%)', ({ share }) => share * PERCENT),
      money('Borne by this project', ({ id }) => own.get(id)),
      text('Receipt number', 18, ({ receiptNumber }) => receiptNumber),
      text('Note', 40, ({ note }) => note),
    ],
    input.payments.toSorted((one, other) => one.date.localeCompare(other.date)),
  );
}
