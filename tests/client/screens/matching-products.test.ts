import { describe, expect, it } from 'vitest';
import { matchingProducts } from '../../../client/screens/catalogue/matching-products.ts';
import type { Product } from '../../../server/planning/product.ts';

const product = (id: string, kind: Product['kind'], name: string, more: Partial<Product> = {}): Product => ({
  id,
  kind,
  name,
  shortName: id,
  unit: 'pcs',
  choices: {},
  figures: {},
  recoat: [],
  recoatEvidence: null,
  packs: [],
  retired: false,
  origin: 'shipped',
  note: null,
  ...more,
});
const products = [
  product('birch 18', 'sheet', 'Birch plywood 18 mm'),
  product('disc 180', 'abrasive', 'Sanding disc, 180 grit'),
  product('stain oak', 'finish', 'Water-based stain', { choices: { colour: 'oak' } }),
  product('old', 'sheet', 'Birch plywood 17 mm', { retired: true }),
];
const find = (search: string, more = {}) =>
  matchingProducts(products, { search, kind: '', retired: false, ...more }).map(({ id }) => id);

describe('a search of the catalogue', () => {
  it('finds products whose words begin with every word typed, in any order', () => {
    expect(find('ply birch')).toEqual(['birch 18']);
    expect(find('BIR')).toEqual(['birch 18']);
    expect(find('birch oak')).toEqual([]);
  });

  it('takes a number as a whole number', () => {
    expect(find('18')).toEqual(['birch 18']);
    expect(find('180')).toEqual(['disc 180']);
  });

  it('looks at colour as well', () => {
    expect(find('oak')).toEqual(['stain oak']);
  });

  it('keeps to a kind, and shows retired products only when asked', () => {
    expect(find('', { kind: 'sheet' })).toEqual(['birch 18']);
    expect(find('birch', { retired: true })).toEqual(['birch 18', 'old']);
  });
});
