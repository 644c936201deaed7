import {
  chooseSuppliers,
  type SuppliersChoice,
} from '../../../../server/planning/buying/suppliers/choose-suppliers.ts';
import type { SupplierTerms } from '../../../../server/planning/buying/suppliers/supplier-charges.ts';
import { leastCostPacks } from '../../../../server/planning/packs/least-cost-packs.ts';
import type { Pack } from '../../../../server/planning/product.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';
import { aPack } from '../../finish/sample-project.ts';

/** A buy list for several suppliers, in whole millilitres and cents. */
export interface SupplierQuestion {
  readonly lines: readonly {
    readonly id: string;
    readonly needMl: number;
    /** By supplier: the packs it has. */
    readonly packs: readonly (readonly { readonly sizeMl: number; readonly priceMinor: number }[])[];
  }[];
  readonly terms: readonly SupplierTerms[];
}

const PACK_SIZES_ML = [250, 473, 750, 946, 1000, 2500, 3785, 5000];

/**
 * A buy list made up by a seed: lines of 0.2 to 12 L, two to five suppliers that each have most of them in one to four sizes,
 * with delivery, thresholds and surcharges that weigh about as much as the differences in price.
 */
export function supplierQuestion(seed: number, mostLines = 24): SupplierQuestion {
  const random = seededRandom(seed * 7919);
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const suppliers = whole(2, 5);
  const lines = Array.from({ length: whole(3, mostLines) }, (_, at) => {
    const pricePerMl = 0.4 + random() * 2.5;
    const packs = Array.from({ length: suppliers }, () => {
      if (random() < 0.25) return [];
      const level = 0.85 + random() * 0.3;
      const sizes = new Set(Array.from({ length: whole(1, 4) }, () => PACK_SIZES_ML[whole(0, 7)] ?? 1000));
      return [...sizes].map((sizeMl) => ({
        sizeMl,
        priceMinor: Math.max(1, Math.round(sizeMl ** 0.92 * pricePerMl * level * (0.95 + random() * 0.1))),
      }));
    });
    if (packs.every((own) => own.length === 0))
      packs[0] = [{ sizeMl: 1000, priceMinor: Math.round(1000 * pricePerMl) }];
    return { id: `line ${at}`, needMl: whole(200, 12_000), packs };
  });
  const terms = Array.from(
    { length: suppliers },
    (_, at): SupplierTerms => ({
      id: String(at),
      deliveryMinor: random() < 0.2 ? 0 : whole(300, 4000),
      freeFromMinor: random() < 0.6 ? whole(3000, 40_000) : null,
      minimumMinor: random() < 0.5 ? whole(1000, 25_000) : null,
      surchargeMinor: whole(200, 2500),
    }),
  );
  return { lines, terms };
}

/** The packs offered, as the catalogue has them: litres. Made beforehand, for they are there already when it is asked. */
export function packsOf({ lines }: SupplierQuestion): readonly (readonly (readonly Pack[])[])[] {
  return lines.map(({ packs }) =>
    packs.map((own) => own.map(({ sizeMl, priceMinor }, at) => aPack(`p${at}`, sizeMl / 1000, priceMinor))),
  );
}

/** The program's own answer: least-cost packs of each line at each supplier (null: not to be had), then the choice. */
export function solvedByProgram(
  { lines, terms }: SupplierQuestion,
  packs: ReturnType<typeof packsOf>,
): { readonly costs: readonly (readonly (number | null)[])[]; readonly choice: SuppliersChoice } {
  const costs = lines.map(({ needMl }, line) =>
    terms.map((_, supplier) => {
      const own = packs[line]?.[supplier] ?? [];
      if (own.length === 0) return null;
      return leastCostPacks({ need: needMl / 1000, onHand: 0, packs: own, currency: 'USD' }).costMinor;
    }),
  );
  const choice = chooseSuppliers({
    lines: lines.map(({ id }, line) => ({
      id,
      offers: terms.flatMap((supplier, at) => {
        const costMinor = costs[line]?.[at] ?? null;
        return costMinor === null ? [] : [{ supplierId: supplier.id, costMinor }];
      }),
    })),
    terms,
  });
  return { costs, choice };
}
