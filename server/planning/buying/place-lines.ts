import type { BuyLine } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingLine, SupplierChoiceResult } from './buying-plan.ts';
import type { NeededBy } from './dates/needed-by.ts';
import { type OpenLine, placedLine } from './placed-line.ts';
import { choiceFigures } from './suppliers/choice-figures.ts';
import { chooseSuppliers } from './suppliers/choose-suppliers.ts';
import { termsIn } from './suppliers/terms-in.ts';

/**
 * From whom is each line ordered, until when, and at what cost?
 *
 * @param lines with their offers; a line without a known price goes where others are ordered anyway
 * @param today YYYY-MM-DD
 * @param taxPercent on every line; null when not said
 * @returns lines in their order, and what the choice comes to in whole minor units without tax
 *
 * Source: `chooseSuppliers`, `placedLine`; nothing is computed here. Valid range: any. Departures: none.
 */
export function placeLines({
  lines,
  input,
  neededBy,
  today,
  taxPercent,
}: {
  readonly lines: readonly OpenLine[];
  readonly input: ProjectInput;
  readonly neededBy: (line: BuyLine) => NeededBy;
  readonly today: string;
  readonly taxPercent: number | null;
}): { readonly lines: readonly BuyingLine[]; readonly choice: SupplierChoiceResult } {
  const { settings, catalogue, extras } = input;
  const daysOff = new Set(input.daysOff.map(({ date }) => date.trim()));
  const suppliers = new Map(catalogue.suppliers.map((supplier) => [supplier.id, supplier]));
  const terms = new Map(catalogue.suppliers.map((one) => [one.id, termsIn(one, settings.currency)]));
  const asked = lines.map((open) => ({ id: open.line.id, offers: pricedOffers(open) }));
  const choice = chooseSuppliers({ lines: asked, terms: [...terms.values()] });
  const chosenIds = asked.map(({ offers }, at) => offers[choice.chosen[at] ?? -1]?.supplierId);
  const used = new Set(chosenIds.filter((id) => id !== undefined));
  return {
    lines: lines.map((open, at) => {
      const chosen = chosenOffer(open, chosenIds[at]);
      return placedLine({
        open,
        chosen,
        supplierId: open.extraPacks === null ? (chosen?.supplierId ?? '') : extraSupplier(open.line),
        suppliers,
        input,
        need: neededBy(open.line),
        today,
        daysOff,
        taxPercent,
      });
    }),
    choice: choiceFigures({
      choice,
      openLines: lines.filter(({ amounts }) => amounts.toOrder.value !== 0).length,
      pricedLines: asked.filter(({ offers }) => offers.length > 0).length,
      unknownDelivery: [...used].flatMap((id) =>
        terms.get(id)?.deliveryKnown === false ? [suppliers.get(id)?.name ?? id] : [],
      ),
    }),
  };

  function pricedOffers({ line, offers, amounts, extraPacks }: OpenLine) {
    if (amounts.toOrder.value === 0 || amounts.toOrder.value === null) return [];
    const given =
      extraPacks === null
        ? offers
        : [{ supplierId: extraSupplier(line), costMinor: extraPacks[0]?.lineMinor ?? null }];
    return given.flatMap(({ supplierId, costMinor }) =>
      costMinor === null ? [] : [{ supplierId, costMinor }],
    );
  }

  function chosenOffer({ amounts, offers }: OpenLine, id: string | undefined) {
    if (amounts.toOrder.value === 0) return undefined;
    const by = (fits: (supplierId: string) => boolean) => offers.find(({ supplierId }) => fits(supplierId));
    return by((supplierId) => supplierId === id) ?? by((supplierId) => used.has(supplierId)) ?? offers[0];
  }

  function extraSupplier({ id }: BuyLine): string {
    const named = extras.find((extra) => `extra-${extra.id}` === id)?.supplierId ?? '';
    return suppliers.has(named) ? named : '';
  }
}
