import { z } from 'zod';
import type {
  Pack,
  Product,
  ProductKind,
  ProductUnit,
  RecoatInterval,
  SolventShare,
  Supplier,
} from '../../server/planning/product.ts';
import { choicesSchema } from './choices-schema.ts';
import { evidenceSchema, evidenceShape, figuresSchema, LONGEST_TEXT, withSource } from './figure-schema.ts';
import { name, slug } from './name-schema.ts';
import { productFaults, UNITS_OF_KIND } from './product-faults.ts';

export { productFaults, UNITS_OF_KIND };

/** How a product and a supplier may be given: in the shipped files, in a project document, in a request. */

/** Most entries in one list of a product. */
const LONGEST_LIST = 100;
/** Largest length given as a number, mm: 100 m. */
const LARGEST_LENGTH_MM = 100_000;
const LARGEST_AMOUNT = 1_000_000;
/** Ten thousand million in a currency of cents. */
const LARGEST_MONEY = 1_000_000_000_000;
/** Ten years. */
const LONGEST_WAIT_MIN = 5_256_000;

const text = z.string().max(LONGEST_TEXT);

const minutes = z.number().min(0).max(LONGEST_WAIT_MIN);
const recoatSchema: z.ZodType<readonly RecoatInterval[]> = z
  .array(z.strictObject({ fromMin: minutes, toMin: minutes.nullable(), scuff: z.boolean() }))
  .max(LONGEST_LIST)
  .refine(
    (intervals) =>
      intervals.every(
        ({ fromMin, toMin }, index) =>
          (toMin === null ? index === intervals.length - 1 : toMin > fromMin) &&
          fromMin >= (intervals[index - 1]?.toMin ?? 0),
      ),
    { message: 'must be intervals in order of time that do not overlap' },
  );

const solventSchema: z.ZodType<SolventShare> = z.strictObject({
  solventId: slug,
  share: z.number().min(0).max(1).nullable().meta({
    description: 'Share of the mass that evaporates, 0 to 1; null when not known.',
  }),
  molarMassGPerMol: z.number().min(1).max(1000).nullable(),
  lelPercent: z.number().positive().max(100).nullable(),
  limitMgPerM3: z.number().positive().max(1_000_000).nullable(),
});

const size = z.number().positive().max(LARGEST_LENGTH_MM).nullable();
const packSchema: z.ZodType<Pack> = withSource(
  z.strictObject({
    id: slug,
    label: name,
    amount: z.number().positive().max(LARGEST_AMOUNT),
    lengthMm: size,
    widthMm: size,
    priceMinor: z.int().min(0).max(LARGEST_MONEY).nullable(),
    currency: z.string().regex(/^[A-Z]{3}$/, 'must be a currency code of three capital letters, such as EUR'),
    supplierId: slug.nullable(),
    ...evidenceShape,
  }),
);

const charge = z.int().min(0).max(LARGEST_MONEY).nullable();

/** The fields of a supplier, each as it may be given. */
export const supplierShape = {
  id: slug,
  name,
  leadTimeDays: z.number().min(0).max(3650).nullable(),
  currency: z
    .string()
    .regex(/^([A-Z]{3})?$/, 'must be a currency code of three capital letters, such as EUR'),
  deliveryMinor: charge,
  freeDeliveryFromMinor: charge,
  minimumOrderMinor: charge,
  surchargeMinor: charge,
  workingDays: z
    .array(z.int().min(0).max(6))
    .max(7)
    .refine((days) => new Set(days).size === days.length, 'must name each weekday once, 0 being Monday'),
  retired: z.boolean(),
} satisfies Record<keyof Supplier, z.ZodType>;

/** A supplier: charges that are left out are not known, and it works from Monday to Friday. */
export const supplierSchema = z
  .strictObject({
    ...supplierShape,
    currency: supplierShape.currency.default(''),
    deliveryMinor: charge.default(null),
    freeDeliveryFromMinor: charge.default(null),
    minimumOrderMinor: charge.default(null),
    surchargeMinor: charge.default(null),
    workingDays: supplierShape.workingDays.default([0, 1, 2, 3, 4]),
    retired: supplierShape.retired.default(false),
  })
  .superRefine((supplier, context) => {
    const charges = [
      supplier.deliveryMinor,
      supplier.freeDeliveryFromMinor,
      supplier.minimumOrderMinor,
      supplier.surchargeMinor,
    ];
    if (supplier.currency === '' && charges.some((one) => one !== null && one > 0))
      context.addIssue({
        code: 'custom',
        path: ['currency'],
        message: 'must be said where there are charges, such as EUR',
      });
  });

/** The fields of a product, each as it may be given. Rules that join several fields are in `productFaults`. */
export const productShape = {
  id: slug,
  kind: z.enum(Object.keys(UNITS_OF_KIND) as ProductKind[]),
  name,
  shortName: name.max(60),
  unit: z.enum(['pcs', 'm', 'L', 'g'] satisfies ProductUnit[]),
  choices: choicesSchema,
  figures: figuresSchema,
  recoat: recoatSchema,
  recoatEvidence: evidenceSchema.nullable(),
  solvents: z.exactOptional(z.array(solventSchema).max(LONGEST_LIST)),
  solventsEvidence: z.exactOptional(evidenceSchema.nullable()),
  packs: z.array(packSchema).max(LONGEST_LIST),
  retired: z.boolean(),
  origin: z.enum(['shipped', 'user']),
  note: text.nullable(),
} satisfies Record<keyof Product, z.ZodType>;

export const productSchema: z.ZodType<Product> = z
  .strictObject(productShape)
  .superRefine((product, context) => {
    for (const { path, message } of productFaults(product as Product))
      context.addIssue({ code: 'custom', path: [...path], message });
  });
