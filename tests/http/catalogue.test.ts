import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import type { Catalogue, Product } from '../../server/planning/product.ts';
import { NO_TERMS } from '../planning/ledger/no-ledger.ts';
import { openApp } from './open-app.ts';

const evidence = { basis: 'user', source: '', readOn: '2026-03-01', note: null } as const;
const coverage = { low: 8, typical: 10, high: 12, unit: 'm2/L', ...evidence };
const varnish = {
  kind: 'finish',
  name: 'Bench varnish, 5 % gloss',
  shortName: 'bench varnish',
  choices: { role: 'topcoat', carrier: 'water' },
  figures: { coverage, voc: { low: null, typical: 60, high: null, unit: 'g/L', ...evidence } },
  recoat: [
    { fromMin: 60, toMin: 120, scuff: false },
    { fromMin: 1440, toMin: null, scuff: true },
  ],
  recoatEvidence: evidence,
  packs: [
    {
      id: 'litre',
      label: '1 L',
      amount: 1,
      lengthMm: null,
      widthMm: null,
      priceMinor: 2450,
      currency: 'EUR',
      supplierId: null,
      ...evidence,
    },
  ],
};

async function withVarnish() {
  const app = openApp();
  const answer = await app.send('post', '/api/products', varnish);
  const read = async (id: string): Promise<Product | undefined> =>
    ((await app.send('get', '/api/catalogue')).body as Catalogue).products.find((one) => one.id === id);
  return { app, answer, product: answer.body as Product, path: `/api/products/${answer.body.id}`, read };
}

describe('the catalogue', () => {
  it('is answered as shipped, whatever order its fields lie in', async () => {
    const app = openApp();
    const stored = (await app.send('get', '/api/catalogue')).body as Catalogue;
    const shipped = readCatalogue();
    const noted = (product: Product) => ({
      ...product,
      figures: Object.fromEntries(
        Object.entries(product.figures).map(([name, figure]) => [name, { note: null, ...figure }]),
      ),
      packs: product.packs.map((pack) => ({ note: null, ...pack })),
      recoatEvidence: product.recoatEvidence === null ? null : { note: null, ...product.recoatEvidence },
    });
    expect(stored.products).toEqual(shipped.products.map(noted));
    expect(new Set(stored.suppliers)).toEqual(new Set(shipped.suppliers));
  });
});

describe('a product of one’s own', () => {
  it('gets an id from its name and comes back as it was given', async () => {
    const { answer, product, read } = await withVarnish();
    expect(answer.status).toBe(201);
    expect(product).toEqual({
      ...varnish,
      id: 'bench-varnish-5-gloss',
      unit: 'L',
      note: null,
      retired: false,
      origin: 'user',
    });
    expect(await read(product.id)).toEqual(product);
  });

  it('needs no more than kind and name', async () => {
    const app = openApp();
    const first = (await app.send('post', '/api/products', { kind: 'sheet', name: 'Mère & fille Ⅳ' }))
      .body as Product;
    expect(first).toMatchObject({ id: 'mere-fille-iv', shortName: 'Mère & fille Ⅳ', unit: 'pcs' });
    const second = (await app.send('post', '/api/products', { kind: 'sheet', name: 'Mère & fille Ⅳ' }))
      .body as Product;
    expect(second).toMatchObject({ id: 'mere-fille-iv-2', shortName: 'Mère & fille Ⅳ 2' });
    expect((await app.send('post', '/api/products', { kind: 'board', name: '樺' })).body.id).toBe('own');
  });

  it('is refused when a field cannot be, or does not fit the kind or the catalogue', async () => {
    const { app } = await withVarnish();
    const other = { ...varnish, name: 'Other', shortName: 'other' };
    const refuse = async (changes: object) =>
      (await app.refused(app.send('post', '/api/products', { ...other, ...changes }), 400, 'bad-request'))
        .field;
    expect(await refuse({ figures: { coverage: { ...coverage, typical: '10' } } })).toBe(
      'figures.coverage.typical',
    );
    expect(await refuse({ figures: { coverage: { ...coverage, unit: 'ft2/gal' } } })).toBe(
      'figures.coverage.unit',
    );
    expect(await refuse({ figures: { hue: coverage } })).toBe('figures.hue');
    expect(await refuse({ kind: 'sheet', unit: 'L' })).toBe('unit');
    expect(await refuse({ recoatEvidence: null })).toBe('recoatEvidence');
    expect(await refuse({ packs: [{ ...varnish.packs[0], supplierId: 'nobody' }] })).toBe(
      'packs.0.supplierId',
    );
    expect(await refuse({ packs: [{ ...varnish.packs[0], priceMinor: 24.5 }] })).toBe('packs.0.priceMinor');
    expect(await refuse({ origin: 'shipped' })).toBe('origin');
    const taken = await app.refused(
      app.send('post', '/api/products', { ...other, shortName: 'BENCH Varnish' }),
      409,
      'name-taken',
    );
    expect(taken.field).toBe('shortName');
    const id = await app.refused(
      app.send('post', '/api/products', { ...other, id: 'bench-varnish-5-gloss' }),
      409,
      'name-taken',
    );
    expect(id.field).toBe('id');
  });

  it('changes figure by figure, and a null takes a figure or a choice away', async () => {
    const { app, product, path, read } = await withVarnish();
    const changed = await app.send('patch', path, {
      note: 'stir well',
      figures: { coverage: { ...coverage, low: 7 }, voc: null },
      choices: { carrier: null, colour: 'clear' },
    });
    expect(changed.body).toEqual({
      ...product,
      note: 'stir well',
      figures: { coverage: { ...coverage, low: 7 } },
      choices: { role: 'topcoat', colour: 'clear' },
    });
    expect(await read(product.id)).toEqual(changed.body);
    const packs = await app.send('patch', path, { packs: [], recoat: [], recoatEvidence: null });
    expect(packs.body).toMatchObject({ packs: [], recoat: [], recoatEvidence: null, note: 'stir well' });
  });

  it('is left as it was by a change that cannot be', async () => {
    const { app, product, path, read } = await withVarnish();
    const refuse = async (changes: object) =>
      (await app.refused(app.send('patch', path, changes), 400, 'bad-request')).field;
    expect(await refuse({ figures: { coverage: { ...coverage, low: 11 } } })).toBe('figures.coverage');
    expect(await refuse({ choices: { grit: 120 } })).toBe('choices.grit');
    expect(await refuse({ choices: { hardenerId: 'nobody', mixBase: 2, mixHardener: 1 } })).toBe(
      'choices.hardenerId',
    );
    expect(await refuse({ id: 'other' })).toBe('id');
    expect(await refuse({ retired: true })).toBe('retired');
    await app.refused(app.send('patch', '/api/products/nobody', { note: 'x' }), 404, 'not-found');
    expect(await read(product.id)).toEqual(product);
  });

  it('keeps its kind and unit while a project uses it', async () => {
    const { app, product, path } = await withVarnish();
    const { id } = await app.importSmall();
    await app.send('post', `/api/projects/${id}/rules`, { revision: 1, productId: product.id });
    const kind = {
      kind: 'thinner',
      figures: { coverage: null },
      choices: { role: null, carrier: null },
      recoat: [],
      recoatEvidence: null,
    };
    const error = await app.refused(app.send('patch', path, kind), 409, 'in-use');
    expect(error.message).toContain('“Bench and shelf”');
    await app.send('post', `/api/projects/${id}/undo`, { revision: 2 });
    expect((await app.send('patch', path, kind)).body.kind).toBe('thinner');
  });

  it('is copied, retired and offered again', async () => {
    const { app, product, path, read } = await withVarnish();
    const copy = (await app.send('post', `${path}/duplicate`)).body as Product;
    expect(copy).toEqual({
      ...product,
      id: 'bench-varnish-5-gloss-copy',
      name: `${product.name} (copy)`,
      shortName: 'bench varnish copy',
    });
    const named = await app.send('post', `${path}/duplicate`, { name: 'Deck oil', shortName: 'deck' });
    expect(named.body).toMatchObject({ id: 'deck-oil', shortName: 'deck', origin: 'user' });
    await app.refused(app.send('post', `${path}/duplicate`, { shortName: 'deck' }), 409, 'name-taken');
    expect((await app.send('post', `${path}/retire`)).body.retired).toBe(true);
    expect((await read(product.id))?.retired).toBe(true);
    expect((await app.send('post', `${path}/restore`)).body.retired).toBe(false);
    await app.refused(app.send('post', '/api/products/nobody/retire'), 404, 'not-found');
  });
});

describe('suppliers', () => {
  it('are added and changed, and refused with what cannot be', async () => {
    const app = openApp();
    const added = await app.send('post', '/api/suppliers', { name: 'Corner timber yard' });
    expect(added.body).toEqual({
      id: 'corner-timber-yard',
      name: 'Corner timber yard',
      leadTimeDays: null,
      ...NO_TERMS,
    });
    const changed = await app.send('patch', '/api/suppliers/corner-timber-yard', { leadTimeDays: 4 });
    expect(changed.body.leadTimeDays).toBe(4);
    const { suppliers } = (await app.send('get', '/api/catalogue')).body as Catalogue;
    expect(suppliers).toContainEqual(changed.body);
    const soon = app.send('patch', '/api/suppliers/corner-timber-yard', { leadTimeDays: 'soon' });
    expect((await app.refused(soon, 400, 'bad-request')).field).toBe('leadTimeDays');
    await app.refused(app.send('patch', '/api/suppliers/nobody', { name: 'x' }), 404, 'not-found');
    await app.refused(app.send('post', '/api/suppliers', { name: ' x' }), 400, 'bad-request');
    await app.refused(
      app.send('post', '/api/suppliers', { name: 'x', id: 'corner-timber-yard' }),
      409,
      'name-taken',
    );
  });
});
