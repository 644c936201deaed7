import type { Product, Supplier } from '../../../server/planning/product.ts';
import type { Refusal } from '../../fields/faults.ts';
import { ApiError, request } from '../../state/api.ts';
import { actions, getState } from '../../state/store.ts';
import { earlierValues, type ProductPatch } from './earlier-values.ts';

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

export async function patchProduct(id: string, patch: ProductPatch): Promise<Refusal | null> {
  const before = getState().catalogue?.products.find((one) => one.id === id);
  const { product, refusal } = await ask('PATCH', productPath(id), patch);
  if (before !== undefined && product !== null && !isSame(patch, earlierValues(before, patch)))
    offerUndo(`Saved “${product.shortName}”.`, () =>
      ask('PATCH', productPath(id), earlierValues(before, patch)),
    );
  return refusal;
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** Says what was done, with the way back. */
function offerUndo(text: string, back: () => Promise<{ readonly refusal: Refusal | null }>): void {
  const carryOut = async (): Promise<void> => {
    const { refusal } = await back();
    actions.say(
      refusal === null
        ? { kind: 'info', text: 'The values before are back.' }
        : { kind: 'error', text: refusal.message, wayOut: refusal.wayOut },
    );
  };
  actions.say({ kind: 'info', text, offer: { label: 'Undo', carryOut: () => void carryOut() } });
}

export function addProduct(values: Pick<Product, 'name' | 'kind'> & Partial<Product>) {
  return ask('POST', '/api/products', values);
}

export function duplicateProduct(id: string) {
  return ask('POST', productPath(id, '/duplicate'), {});
}

export async function retireProduct(id: string, retired: boolean) {
  const turn = (way: boolean) => ask('POST', productPath(id, way ? '/retire' : '/restore'));
  const answer = await turn(retired);
  if (answer.product !== null)
    offerUndo(`“${answer.product.shortName}” is ${retired ? 'retired' : 'offered again'}.`, () =>
      turn(!retired),
    );
  return answer;
}

export type SupplierPatch = Partial<Omit<Supplier, 'id'>>;

/** Adds a supplier and answers its id; null when it was refused, which is then said. */
export async function addSupplier(name: string): Promise<string | null> {
  const { product, refusal } = await ask<Supplier>('POST', '/api/suppliers', { name });
  if (refusal !== null) actions.say({ kind: 'error', text: refusal.message, wayOut: refusal.wayOut });
  return product?.id ?? null;
}

export async function patchSupplier(id: string, patch: SupplierPatch): Promise<Refusal | null> {
  const path = `/api/suppliers/${encodeURIComponent(id)}`;
  const before = getState().catalogue?.suppliers.find((one) => one.id === id);
  const { product, refusal } = await ask<Supplier>('PATCH', path, patch);
  if (before !== undefined && product !== null)
    offerUndo(`Saved “${product.name}”.`, () => {
      const { id: _id, ...values } = before;
      return ask<Supplier>('PATCH', path, values);
    });
  return refusal;
}

export async function retireSupplier({ id, name }: Supplier, retired: boolean): Promise<void> {
  const turn = (way: boolean) =>
    ask<Supplier>('POST', `/api/suppliers/${encodeURIComponent(id)}/${way ? 'retire' : 'restore'}`);
  const { refusal } = await turn(retired);
  if (refusal !== null) actions.say({ kind: 'error', text: refusal.message, wayOut: refusal.wayOut });
  else offerUndo(`“${name}” is ${retired ? 'retired' : 'offered again'}.`, () => turn(!retired));
}

/** Deletes a supplier nobody names; one in use is refused, which is said with the way out. */
export async function deleteSupplier(supplier: Supplier): Promise<void> {
  const { refusal } = await ask<Supplier>('DELETE', `/api/suppliers/${encodeURIComponent(supplier.id)}`);
  if (refusal !== null) actions.say({ kind: 'error', text: refusal.message, wayOut: refusal.wayOut });
  else offerUndo(`Deleted “${supplier.name}”.`, () => ask<Supplier>('POST', '/api/suppliers', supplier));
}
