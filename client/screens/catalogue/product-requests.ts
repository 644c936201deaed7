import type { Product, Supplier } from '../../../server/planning/product.ts';
import type { Refusal } from '../../fields/faults.ts';
import { ApiError, request } from '../../state/api.ts';
import { actions } from '../../state/store.ts';

/** Asks the server to change the catalogue and shows the new state of it; a refusal comes back in words. */
async function ask<Row = Product>(
  method: 'POST' | 'PATCH' | 'DELETE',
  path: string,
  body?: unknown,
): Promise<{
  readonly product: Row | null;
  readonly refusal: (Refusal & { readonly field: string | null }) | null;
}> {
  try {
    const product = await request<Row>(method, path, body);
    await actions.reloadCatalogue();
    return { product, refusal: null };
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return { product: null, refusal: { message: error.message, wayOut: error.wayOut, field: error.field } };
  }
}

function productPath(id: string, rest = ''): string {
  return `/api/products/${encodeURIComponent(id)}${rest}`;
}

export type ProductPatch = { readonly [Field in keyof Product]?: unknown };

export async function patchProduct(id: string, patch: ProductPatch): Promise<Refusal | null> {
  return (await ask('PATCH', productPath(id), patch)).refusal;
}

export function addProduct(values: Pick<Product, 'name' | 'kind'> & Partial<Product>) {
  return ask('POST', '/api/products', values);
}

export function duplicateProduct(id: string) {
  return ask('POST', productPath(id, '/duplicate'), {});
}

export function retireProduct(id: string, retired: boolean) {
  return ask('POST', productPath(id, retired ? '/retire' : '/restore'));
}

export type SupplierPatch = Partial<Omit<Supplier, 'id'>>;

/** Adds a supplier and answers its id; null when it was refused, which is then said. */
export async function addSupplier(name: string): Promise<string | null> {
  const { product, refusal } = await ask<Supplier>('POST', '/api/suppliers', { name });
  if (refusal !== null) actions.say({ kind: 'error', text: refusal.message, wayOut: refusal.wayOut });
  return product?.id ?? null;
}

export async function patchSupplier(id: string, patch: SupplierPatch): Promise<Refusal | null> {
  return (await ask<Supplier>('PATCH', `/api/suppliers/${encodeURIComponent(id)}`, patch)).refusal;
}
