import { type Figure, figure } from '../figure.ts';
import { MAX_AMOUNT } from '../finish/constants.ts';
import { roundHalfUp } from '../ledger/round-half-up.ts';
import { isPrice } from '../packs/usable-price.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Problem, ProblemCode } from '../problem.ts';
import type { ExtraLine, ProjectInput } from '../project-input.ts';

/**
 * The buy line of something the user added by hand that is not in the catalogue: hinges, delivery.
 *
 * cost = quantity x price of one, rounded half up
 *
 * @returns the line in pieces and whole minor units without tax; quantity or price unknown or unusable: cost null, with
 *   a problem
 *
 * Source: definition. Example: 2.5 at 33 is 82.5, rounded 83.
 */
export function extraLine(
  extra: ExtraLine,
  input: ProjectInput,
): { readonly line: BuyLine; readonly problems: readonly Problem[] } {
  const { id, name, quantity, unitPriceMinor } = extra;
  const quantityFits = quantity >= 0 && quantity <= MAX_AMOUNT;
  const priceFits = unitPriceMinor === null || isPrice(unitPriceMinor);
  const pieces = quantityFits ? quantity : null;
  const price = priceFits ? unitPriceMinor : null;
  const costMinor = pieces === null || price === null ? null : roundHalfUp(pieces * price);
  const supplier = input.catalogue.suppliers.find((known) => known.id === extra.supplierId);
  const counted = (value: number | null, rule: string): Figure => figure(value, 'pcs', { rule, inputs: [] });
  const problem = (
    code: ProblemCode,
    severity: Problem['severity'],
    field: string,
    message: string,
    wayOut: string,
  ): Problem => ({
    code,
    severity,
    at: { table: 'extras', id, field },
    message: `The extra line "${name}" ${message}`,
    wayOut,
  });
  const cost = figure(costMinor, 'minor', {
    rule: 'cost = quantity x price of one, rounded half up, without tax',
    inputs: [
      { name: 'quantity', value: pieces, unit: 'pcs', source: 'entered by you' },
      { name: 'price of one', value: price, unit: 'minor', source: 'entered by you' },
    ],
  });
  return {
    line: {
      id: `extra-${id}`,
      productId: null,
      name,
      category: extra.category,
      supplierId: supplier?.id ?? null,
      supplierName: supplier?.name ?? '',
      unit: 'pcs',
      need: counted(pieces, 'quantity entered by you'),
      onHand: counted(0, 'nothing is kept on hand of a line added by hand'),
      toBuy: counted(pieces, 'to buy = quantity'),
      packs: [],
      boughtAmount: counted(pieces, 'bought = quantity'),
      leftover: counted(pieces === null ? null : 0, 'a line added by hand leaves nothing over'),
      cost,
      fewestPacks: [],
      fewestPacksCost: cost,
      notes: [],
    },
    problems: [
      ...(quantityFits
        ? []
        : [
            problem(
              'extra-invalid',
              'error',
              'quantity',
              `has a quantity of ${quantity}, which is not from 0 to ${MAX_AMOUNT}.`,
              'Enter how many to buy.',
            ),
          ]),
      ...(priceFits
        ? []
        : [
            problem(
              'extra-invalid',
              'error',
              'unitPriceMinor',
              `has a price of ${unitPriceMinor}, which is not a whole number of minor units from 0 up.`,
              'Enter the price of one, without tax.',
            ),
          ]),
      ...(unitPriceMinor === null
        ? [
            problem(
              'price-missing',
              'warning',
              'unitPriceMinor',
              'has no price, so the total is without it.',
              'Enter the price of one, without tax.',
            ),
          ]
        : []),
    ],
  };
}
