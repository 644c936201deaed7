import type { Evidence, Pack, Product } from '../../../server/planning/product.ts';

/** A pack's key from its label and currency, distinct from the keys in use: "0-75l-eur", "0-75l-eur-2". */
export function packId(packs: readonly Pack[], label: string, currency: string): string {
  const base =
    `${label} ${currency}`
      .toLowerCase()
      .normalize('NFKD')
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-|-$/g, '')
      .slice(0, 90)
      .replace(/-$/, '') || 'pack';
  const taken = new Set(packs.map(({ id }) => id));
  let id = base;
  for (let count = 2; taken.has(id); count += 1) id = `${base}-${count}`;
  return id;
}

/** The list with one more pack, sized like the last one, without a price. */
export function withNewPack(product: Product, currency: string, evidence: Evidence): readonly Pack[] {
  const last = product.packs.at(-1);
  const label = 'new pack';
  return [
    ...product.packs,
    {
      id: packId(product.packs, label, currency),
      label,
      amount: product.kind === 'sheet' ? 1 : (last?.amount ?? 1),
      lengthMm: product.kind === 'sheet' ? (last?.lengthMm ?? null) : null,
      widthMm: product.kind === 'sheet' ? (last?.widthMm ?? null) : null,
      priceMinor: null,
      currency,
      supplierId: last?.supplierId ?? null,
      ...evidence,
    },
  ];
}

/** The list with one pack changed; what the user typed stands on the user from now on. */
export function withPack(
  packs: readonly Pack[],
  id: string,
  patch: Partial<Pack>,
  evidence: Evidence,
): readonly Pack[] {
  return packs.map((pack) => (pack.id === id ? { ...pack, ...evidence, ...patch } : pack));
}
