/** A made-up bookcase, as the import route takes it: banded and bare edges, a rounded corner, a sum, two mistakes. */

const shelfBoard = {
  section: 'Carcass',
  materialId: 'birch-ply-18',
  edgeFront: 'birch-veneer-22',
  showRecipeId: 'clear',
  backRecipeId: 'clear',
} as const;

export const bookcaseDocument = {
  format: 'plywright-project',
  version: 1,
  settings: { name: 'Hall bookcase', units: 'metric', currency: 'EUR' },
  sizes: [{ id: 'inside', name: 'inside', value: '864', note: 'between the sides' }],
  parts: [
    { id: 'side', name: 'Side', quantity: '2', length: '1800', width: '300', ...shelfBoard },
    {
      id: 'top',
      name: 'Top',
      quantity: '1',
      length: '900',
      width: '300',
      ...shelfBoard,
      edgeLeft: 'birch-veneer-22',
      edgeRight: 'birch-veneer-22',
      radiusFrontLeft: '40',
    },
    { id: 'shelf', name: 'Shelf', quantity: '5', length: '=inside', width: '285', ...shelfBoard },
    {
      id: 'back',
      name: 'Back',
      section: 'Carcass',
      quantity: '1',
      length: '1780',
      width: '880',
      materialId: 'birch-ply-6',
      showRecipeId: 'clear',
      backRecipeId: '',
    },
    { id: 'plinth', name: 'Plinth', quantity: '1', length: '21 13/1', width: '80', ...shelfBoard },
    {
      id: 'stool',
      name: 'Stool seat',
      section: 'Stool',
      quantity: '1',
      length: '380',
      width: '380',
      shape: 'round',
      materialId: 'birch-ply-18',
      edgeFront: 'walnut-veneer-7-8in',
      edgeBack: 'walnut-veneer-7-8in',
      edgeLeft: 'walnut-veneer-7-8in',
      edgeRight: 'walnut-veneer-7-8in',
      showRecipeId: 'dark',
      backRecipeId: 'dark',
    },
    {
      id: 'cleat',
      name: 'Cleat',
      section: 'Carcass',
      quantity: '4',
      length: '280',
      width: '40',
      materialId: '',
      edgeFront: 'bare',
      edgeBack: 'bare',
    },
  ],
  recipes: [
    {
      id: 'clear',
      name: 'Clear satin',
      steps: [
        { id: 'seal', kind: 'seal', productId: 'shellac-dewaxed', coats: 1, method: 'brush' },
        { id: 'top', kind: 'topcoat', productId: 'oil-poly-satin', coats: 2, method: 'brush' },
      ],
    },
    {
      id: 'dark',
      name: 'Dark stain',
      steps: [
        { id: 'stain', kind: 'stain', productId: 'oil-stain-walnut', coats: 1, method: 'wipe' },
        { id: 'coat', kind: 'topcoat', productId: 'oil-poly-satin', coats: 2, method: 'brush' },
      ],
    },
  ],
} as const;
