import type { Product } from '../../../server/planning/product.ts';

export type ProductPatch = { readonly [Field in keyof Product]?: unknown };

/** The same fields with the values they had; a figure or choice that was not there is taken away again. */
export function earlierValues(before: Product, patch: ProductPatch): ProductPatch {
  return Object.fromEntries(
    Object.entries(patch).map(([field, value]) => {
      const was = before[field as keyof Product];
      return [field, field === 'figures' || field === 'choices' ? namesOf(value, was) : was];
    }),
  );
}

function namesOf(named: unknown, was: unknown): Record<string, unknown> {
  const values = was as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.keys(named ?? {}).map((name) => [name, values[name] ?? null]));
}
