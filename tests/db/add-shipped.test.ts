import { describe, expect, it, onTestFinished } from 'vitest';
import { addShipped, unusedName } from '../../db/add-shipped.ts';
import { catalogueRevision, readCatalogueRows } from '../../db/catalogue.repository.ts';
import { openDatabase } from '../../db/open.ts';
import { saveProduct, saveSupplier } from '../../db/save-product.ts';
import type { Catalogue, Product } from '../../server/planning/product.ts';
import { NO_TERMS } from '../planning/ledger/no-ledger.ts';
import { freshFile } from './fresh-file.ts';

const ply: Product = {
  id: 'birch-ply-18',
  kind: 'sheet',
  name: 'Birch plywood 18 mm',
  shortName: 'birch 18',
  unit: 'pcs',
  choices: { species: 'birch' },
  figures: {
    thicknessActual: {
      low: 17.1,
      typical: 17.6,
      high: 18.1,
      unit: 'mm',
      basis: 'memory',
      source: '',
      readOn: null,
      note: null,
    },
  },
  recoat: [],
  recoatEvidence: null,
  packs: [],
  retired: false,
  origin: 'shipped',
  note: null,
};
const mdf: Product = {
  ...ply,
  id: 'mdf-19',
  name: 'MDF 19 mm',
  shortName: 'mdf 19',
  choices: {},
  figures: {},
};
const yard = { id: 'yard', name: 'Timber yard', leadTimeDays: 3, ...NO_TERMS };
const shipped: Catalogue = { products: [ply], suppliers: [yard] };

function opened() {
  const db = openDatabase(freshFile());
  onTestFinished(() => {
    db.close();
  });
  return db;
}

describe('the shipped catalogue', () => {
  it('comes into a new database as it is', () => {
    const db = opened();
    expect(addShipped(db, shipped)).toEqual(['birch-ply-18']);
    expect(readCatalogueRows(db)).toEqual(shipped);
  });

  it('is not added twice, and then changes nothing', () => {
    const db = opened();
    addShipped(db, shipped);
    const revision = catalogueRevision(db);
    expect(addShipped(db, shipped)).toEqual([]);
    expect(catalogueRevision(db)).toBe(revision);
  });

  it('brings what is new in it at a later start, and leaves what the user has edited', () => {
    const db = opened();
    addShipped(db, shipped);
    const edited = { ...ply, name: 'My birch', retired: true, figures: {} };
    saveProduct(db, edited);
    saveSupplier(db, { ...yard, leadTimeDays: 14 });
    const later = { products: [ply, mdf], suppliers: [yard, { ...yard, id: 'shop', name: 'Paint shop' }] };
    expect(addShipped(db, later)).toEqual(['mdf-19']);
    const { products, suppliers } = readCatalogueRows(db);
    expect(products).toEqual([edited, mdf]);
    expect(suppliers.map(({ id, leadTimeDays }) => [id, leadTimeDays])).toEqual([
      ['shop', 3],
      ['yard', 14],
    ]);
  });

  it('gives way where the user has taken a short name or an id', () => {
    const db = opened();
    addShipped(db, shipped);
    const own: Product = { ...mdf, id: 'my-mdf', shortName: 'MDF 19', origin: 'user' };
    const sameId: Product = { ...mdf, id: 'oak-19', shortName: 'oak', origin: 'user' };
    saveProduct(db, own);
    saveProduct(db, sameId);
    const later = { products: [ply, mdf, { ...mdf, id: 'oak-19', shortName: 'oak 19' }], suppliers: [yard] };
    expect(addShipped(db, later)).toEqual(['mdf-19']);
    expect(readCatalogueRows(db).products).toEqual([ply, own, sameId, { ...mdf, shortName: 'mdf 19 2' }]);
  });
});

describe('an unused name', () => {
  it('is the name itself, or the name with the first free number', () => {
    expect(unusedName('Oak', new Set())).toBe('Oak');
    expect(unusedName('Oak', new Set(['oak', 'oak 2']))).toBe('Oak 3');
  });
});
