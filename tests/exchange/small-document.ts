import type { ProjectDocument } from '../../server/exchange/project-document.ts';

/** A made-up document with at least one row in every list, most fields left out. */
export const smallDocument = {
  format: 'plywright-project',
  version: 1,
  settings: { name: 'Bench', units: 'metric', currency: 'EUR' },
  sizes: [{ name: 'depth', value: 400 }],
  parts: [
    { name: 'Seat', quantity: 2, length: 1200, width: '=depth', materialId: 'birch-ply-18', showRecipeId: 1 },
    { name: 'Leg', length: '40 cm', width: 380.5, materialId: 'my-ply', edgeFront: 'birch-veneer-22' },
  ],
  recipes: [
    {
      name: 'Clear',
      steps: [
        { kind: 'stain', blendId: 1 },
        { kind: 'topcoat', productId: 'water-poly-satin', coats: 2 },
      ],
    },
    { name: 'Paint', steps: [{ kind: 'topcoat', productId: 'water-enamel-white' }] },
  ],
  blends: [
    {
      name: 'Amber',
      components: [
        { productId: 'oil-stain-honey', parts: 2 },
        { productId: 'oil-stain-walnut', parts: 1 },
      ],
    },
  ],
  rules: [{ productId: 'rag-lint-free', per: 'coat-area' }],
  extras: [{ name: 'Delivery', quantity: 1, supplierId: 'my-yard' }],
  onHand: [{ productId: 'water-poly-satin', amount: 0.3 }],
  measurements: [{ productId: 'my-ply', thicknessMm: 17.6 }],
  products: [{ id: 'my-ply', kind: 'sheet', name: 'Yard plywood 18 mm', shortName: 'yard 18', unit: 'pcs' }],
  suppliers: [{ id: 'my-yard', name: 'My yard', leadTimeDays: null }],
} satisfies ProjectDocument;
