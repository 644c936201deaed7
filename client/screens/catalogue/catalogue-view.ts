import type { ProductFigureName, ProductKind } from '../../../server/planning/product.ts';
import { type AppState, actions } from '../../state/store.ts';

/** What of the catalogue this window shows. */
export interface CatalogueView {
  readonly search: string;
  readonly kind: ProductKind | '';
  readonly retired: boolean;
  readonly productId: string | null;
  /** The suppliers are shown in place of a product. */
  readonly suppliers: boolean;
  /** The figure whose form is open. */
  readonly figure: ProductFigureName | null;
}

let view: CatalogueView = {
  search: '',
  kind: '',
  retired: false,
  productId: null,
  suppliers: false,
  figure: null,
};

export function catalogueView(): CatalogueView {
  return view;
}

export function setCatalogueView(patch: Partial<CatalogueView>): void {
  view = { ...view, ...patch };
  actions.redraw();
}

/** Opens a product; its own form state starts afresh. */
export function openProduct(productId: string | null): void {
  setCatalogueView({ productId, suppliers: false, figure: null });
}

export function showSuppliers(suppliers: boolean): void {
  setCatalogueView({ productId: null, suppliers, figure: null });
}

/** Opens the product, or the suppliers, the user asked to be taken to. */
export function openFocusedProduct({ focus }: AppState): void {
  if (focus?.table === 'products' && focus.id !== null && focus.id !== view.productId)
    view = { ...view, productId: focus.id, suppliers: false, figure: null };
  if (focus?.table === 'suppliers') view = { ...view, productId: null, suppliers: true, figure: null };
}
