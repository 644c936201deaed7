import type { Response } from 'express';
import { z } from 'zod';
import { unusedName } from '../../../db/add-shipped.ts';
import {
  productSchema,
  productShape,
  supplierSchema,
  supplierShape,
  UNITS_OF_KIND,
} from '../../../db/catalogue/product-schema.ts';
import { solventSchema } from '../../../db/catalogue/read-solvents.ts';
import { Refusal } from '../../../db/refusal.ts';
import { deleteSupplier, saveProduct, saveSupplier } from '../../../db/save-product.ts';
import type { Catalogue, Product, Supplier } from '../../planning/product.ts';
import type { AppContext } from '../app-context.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { parseRequest } from '../parse-request.ts';
import { type Route, route } from '../route.ts';
import { partial } from '../schemas.ts';
import { slugOf } from '../slug-of.ts';

/** The catalogue: products with their figures, packs and recoat intervals, and suppliers. */

const {
  id,
  kind,
  name,
  shortName,
  unit,
  choices,
  figures,
  recoat,
  recoatEvidence,
  solvents,
  solventsEvidence,
  packs,
  note,
} = productShape;
const product = productSchema.meta({ id: 'Product' });
const solvent = solventSchema.meta({ id: 'Solvent' });
const supplier = supplierSchema.meta({ id: 'Supplier' });
const { id: _supplierId, ...supplierTerms } = supplierShape;
const slugParams = z.strictObject({ id: z.string().max(100) });

/** Choices and figures of a change are put over the ones there are, name by name; null takes one away. */
const productPatch = z.strictObject({
  ...partial({
    kind,
    name,
    shortName,
    unit,
    recoat,
    recoatEvidence,
    solvents,
    solventsEvidence,
    packs,
    note,
  }),
  choices: z.exactOptional(z.record(z.string().max(100), z.union([z.string(), z.number()]).nullable())),
  figures: z.exactOptional(z.record(z.string().max(100), z.record(z.string(), z.unknown()).nullable())),
});

export const catalogueRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/catalogue',
    summary: 'All products, retired ones included, all suppliers, and the solvents that products name.',
    group: 'catalogue',
    answer: z
      .strictObject({ products: z.array(product), suppliers: z.array(supplier), solvents: z.array(solvent) })
      .meta({ id: 'Catalogue' }),
    handle: (_input, { plans }) => plans.catalogue(),
  }),
  route({
    method: 'post',
    path: '/api/products',
    summary: 'Add a product of your own; its id is made from its name when not given.',
    group: 'catalogue',
    body: z.strictObject({
      kind,
      name,
      ...partial({
        id,
        shortName,
        unit,
        choices,
        figures,
        recoat,
        recoatEvidence,
        solvents,
        solventsEvidence,
        packs,
        note,
      }),
    }),
    status: 201,
    answer: product,
    refusals: ['name-taken'],
    handle({ body }, context, response) {
      const { products } = context.plans.catalogue();
      if (products.some((other) => other.id === body.id)) throw idTaken('product', body.id ?? '');
      return save(context, response, {
        id: slugOf(body.name, ids(products)),
        shortName: unusedName(body.name.slice(0, 50).trim(), shortNames(products)),
        unit: UNITS_OF_KIND[body.kind][0],
        choices: {},
        figures: {},
        recoat: [],
        recoatEvidence: null,
        packs: [],
        note: null,
        ...body,
        retired: false,
        origin: 'user',
      });
    },
  }),
  route({
    method: 'patch',
    path: '/api/products/{id}',
    summary:
      'Change a product. Of figures and choices only those named change (null takes one away); lists are replaced.',
    group: 'catalogue',
    params: slugParams,
    body: productPatch,
    answer: product,
    refusals: ['name-taken', 'in-use'],
    handle({ params, body }, context, response) {
      const before = productWith(context, params.id);
      return save(context, response, {
        ...before,
        ...body,
        choices: patched(before.choices, body.choices),
        figures: patched(before.figures, body.figures),
      });
    },
  }),
  route({
    method: 'post',
    path: '/api/products/{id}/duplicate',
    summary: 'Copy a product, as your own.',
    group: 'catalogue',
    params: slugParams,
    body: z.preprocess((given) => given ?? {}, z.strictObject(partial({ name, shortName }))),
    status: 201,
    answer: product,
    refusals: ['name-taken'],
    handle({ params, body }, context, response) {
      const before = productWith(context, params.id);
      const { products } = context.plans.catalogue();
      const copyName = body.name ?? `${before.name.slice(0, 190)} (copy)`;
      return save(context, response, {
        ...before,
        id: slugOf(copyName, ids(products)),
        name: copyName,
        shortName:
          body.shortName ?? unusedName(`${before.shortName.slice(0, 50)} copy`, shortNames(products)),
        retired: false,
        origin: 'user',
      });
    },
  }),
  ...(['retire', 'restore'] as const).map((verb) =>
    route({
      method: 'post',
      path: `/api/products/{id}/${verb}`,
      summary:
        verb === 'retire'
          ? 'Offer a product no longer; projects that use it keep it.'
          : 'Offer a retired product again.',
      group: 'catalogue',
      params: slugParams,
      answer: product,
      handle: ({ params }, context, response) =>
        save(context, response, { ...productWith(context, params.id), retired: verb === 'retire' }),
    }),
  ),
  route({
    method: 'post',
    path: '/api/suppliers',
    summary: 'Add a supplier.',
    group: 'catalogue',
    body: z.strictObject({ ...partial(supplierShape), name }),
    status: 201,
    answer: supplier,
    refusals: ['name-taken'],
    handle({ body }, context, response) {
      const { suppliers } = context.plans.catalogue();
      if (suppliers.some((other) => other.id === body.id)) throw idTaken('supplier', body.id ?? '');
      return keep(context, response, { id: slugOf(body.name, ids(suppliers)), leadTimeDays: null, ...body });
    },
  }),
  route({
    method: 'patch',
    path: '/api/suppliers/{id}',
    summary: 'Change a supplier.',
    group: 'catalogue',
    params: slugParams,
    body: z.strictObject(partial(supplierTerms)),
    answer: supplier,
    handle({ params, body }, context, response) {
      const before = context.plans.catalogue().suppliers.find((one) => one.id === params.id);
      if (before === undefined) throw unknownId('supplier', params.id);
      return keep(context, response, { ...before, ...body });
    },
  }),
  ...(['retire', 'restore'] as const).map((verb) =>
    route({
      method: 'post',
      path: `/api/suppliers/{id}/${verb}`,
      summary:
        verb === 'retire'
          ? 'Offer a supplier no longer; orders that name it keep it.'
          : 'Offer a retired supplier again.',
      group: 'catalogue',
      params: slugParams,
      answer: supplier,
      handle({ params }, context, response) {
        const before = context.plans.catalogue().suppliers.find((one) => one.id === params.id);
        if (before === undefined) throw unknownId('supplier', params.id);
        return keep(context, response, { ...before, retired: verb === 'retire' });
      },
    }),
  ),
  route({
    method: 'delete',
    path: '/api/suppliers/{id}',
    summary: 'Delete a supplier that no product and no project names.',
    group: 'catalogue',
    params: slugParams,
    status: 204,
    answer: null,
    refusals: ['in-use'],
    handle({ params }, context, response) {
      deleteSupplier(context.db, params.id);
      response.on('close', context.events.tellCatalogue);
    },
  }),
];

/** Writes a product when it is well formed, tells the open windows, and answers it as it is stored. */
function save(context: AppContext, response: Response, given: unknown): Product {
  const wellFormed = parseRequest(productSchema, given, 'bad-request');
  saveProduct(context.db, wellFormed);
  response.on('close', context.events.tellCatalogue);
  return productWith(context, wellFormed.id);
}

function keep(context: AppContext, response: Response, given: unknown): Supplier {
  const wellFormed = parseRequest(supplierSchema, given, 'bad-request');
  saveSupplier(context.db, wellFormed);
  response.on('close', context.events.tellCatalogue);
  return wellFormed;
}

function productWith(context: AppContext, id: string): Product {
  const found = context.plans.catalogue().products.find((one) => one.id === id);
  if (found === undefined) throw unknownId('product', id);
  return found;
}

function patched(before: object, patch: Readonly<Record<string, unknown>> = {}): object {
  return Object.fromEntries(Object.entries({ ...before, ...patch }).filter(([, value]) => value !== null));
}

function ids(rows: readonly { readonly id: string }[]): Set<string> {
  return new Set(rows.map((row) => row.id));
}

function shortNames(products: Catalogue['products']): Set<string> {
  return new Set(products.map((one) => one.shortName.toLowerCase()));
}

function unknownId(what: string, id: string): HttpRefusal {
  return new HttpRefusal(
    'not-found',
    `There is no ${what} with the id “${id}”.`,
    `Read the catalogue to see which there are.`,
  );
}

function idTaken(what: string, id: string): Refusal {
  return new Refusal('name-taken', `There is a ${what} with the id “${id}” already.`, {
    wayOut: 'Choose another id, or leave it out.',
    field: 'id',
  });
}
