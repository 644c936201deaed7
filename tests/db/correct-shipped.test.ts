import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { addShipped } from '../../db/add-shipped.ts';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { catalogueRevision, readCatalogueRows } from '../../db/catalogue.repository.ts';
import { correctShipped } from '../../db/correct-shipped.ts';
import { mergeShipped } from '../../db/merge-shipped.ts';
import { openDatabase } from '../../db/open.ts';
import { sameProduct } from '../../db/same-product.ts';
import { saveProduct } from '../../db/save-product.ts';
import type { Product, ProductFigure } from '../../server/planning/product.ts';
import { freshFile } from './fresh-file.ts';

const coverage: ProductFigure = {
  low: 8,
  typical: 9,
  high: 10,
  unit: 'm2/L',
  basis: 'practice',
  source: '',
  readOn: null,
  note: null,
};
const litre = {
  id: 'litre',
  label: 'litre',
  amount: 1,
  lengthMm: null,
  widthMm: null,
  priceMinor: 2400,
  currency: 'EUR',
  supplierId: null,
  basis: 'practice',
  source: '',
  readOn: null,
  note: null,
} as const;
const varnish: Product = {
  id: 'varnish',
  kind: 'finish',
  name: 'Varnish',
  shortName: 'varnish',
  unit: 'L',
  choices: { role: 'topcoat', carrier: 'oil' },
  figures: { coverage },
  recoat: [],
  recoatEvidence: null,
  packs: [litre],
  retired: false,
  origin: 'shipped',
  note: null,
};
const corrected: Product = { ...varnish, figures: { coverage: { ...coverage, low: 7.5, typical: 8.5 } } };

function opened(product: Product) {
  const db = openDatabase(freshFile());
  onTestFinished(() => {
    db.close();
  });
  addShipped(db, { products: [product], suppliers: [] });
  correctShipped(db, { products: [product], suppliers: [] });
  return db;
}

describe('a correction of the shipped catalogue', () => {
  it('reaches a database that has the product, once', () => {
    const db = opened(varnish);
    const revision = catalogueRevision(db);
    expect(correctShipped(db, { products: [corrected], suppliers: [] })).toEqual(['varnish']);
    expect(readCatalogueRows(db).products).toEqual([corrected]);
    expect(catalogueRevision(db)).toBe(revision + 1);
    expect(correctShipped(db, { products: [corrected], suppliers: [] })).toEqual([]);
    expect(catalogueRevision(db)).toBe(revision + 1);
  });

  it('leaves each value the user has changed', () => {
    const db = opened(varnish);
    const price = { ...litre, priceMinor: 2650, source: 'my receipt' };
    saveProduct(db, { ...varnish, shortName: 'satin', packs: [price] });
    const later = {
      ...corrected,
      packs: [
        { ...litre, priceMinor: 2500 },
        { ...litre, id: 'can', amount: 4 },
      ],
    };
    expect(correctShipped(db, { products: [later], suppliers: [] })).toEqual(['varnish']);
    expect(readCatalogueRows(db).products).toEqual([
      { ...corrected, shortName: 'satin', packs: [price, { ...litre, id: 'can', amount: 4 }] },
    ]);
  });

  it('does not touch a product of the same id that is the user’s own', () => {
    const db = opened(varnish);
    saveProduct(db, { ...varnish, origin: 'user' });
    expect(correctShipped(db, { products: [corrected], suppliers: [] })).toEqual([]);
    expect(readCatalogueRows(db).products).toEqual([{ ...varnish, origin: 'user' }]);
  });

  it('takes what is there for the user’s where it is not known what was shipped', () => {
    const db = openDatabase(freshFile());
    onTestFinished(() => {
      db.close();
    });
    addShipped(db, { products: [varnish], suppliers: [] });
    expect(correctShipped(db, { products: [corrected], suppliers: [] })).toEqual([]);
    expect(readCatalogueRows(db).products).toEqual([varnish]);
  });

  it('keeps a pack removed that the user has removed', () => {
    expect(mergeShipped(varnish, { ...varnish, packs: [] }, corrected)).toEqual({ ...corrected, packs: [] });
  });
});

describe('merging shipped products', () => {
  const products = readCatalogue().products.slice(0, 40);
  const some = fc.constantFrom(...products);

  it('gives what is shipped now where nothing was changed, and the user’s where nothing was corrected', () => {
    fc.assert(
      fc.property(some, some, (one, other) => {
        const now = { ...other, id: one.id, kind: one.kind };
        expect(sameProduct(mergeShipped(one, one, now), now)).toBe(true);
        expect(sameProduct(mergeShipped(one, now, one), now)).toBe(true);
      }),
    );
  });
});
