import { z } from 'zod';
import { productFaults } from '../../db/catalogue/product-faults.ts';
import { productShape, supplierSchema } from '../../db/catalogue/product-schema.ts';
import type { Product } from '../planning/product.ts';
import type { EdgeName, ProjectSettings } from '../planning/project-input.ts';
import { DEFAULT_SHOP_HOURS } from './default-settings.ts';
import { airSettingShapes } from './document/air-setting-schemas.ts';
import { calendarSettingShapes } from './document/calendar-setting-schemas.ts';
import {
  arrivalRow,
  blendRow,
  budgetRow,
  climateRow,
  dayOffRow,
  doneTaskRow,
  extraRow,
  measurementRow,
  onHandRow,
  orderLineRow,
  orderRow,
  partRow,
  paymentRow,
  pinRow,
  quoteRow,
  receiptRow,
  recipeRow,
  ruleRow,
  shopHoursRow,
  sizeRow,
  stockUseRow,
  substituteRow,
  workHoursRow,
} from './document/row-schemas.ts';
import { choice, currency, money } from './document/value-schemas.ts';

export const DOCUMENT_FORMAT = 'plywright-project';
export const DOCUMENT_VERSION = 1;

const optional = z.exactOptional;

const settings = z.strictObject({
  name: z.string().trim().min(1).max(200),
  units: choice<ProjectSettings['units']>('metric', 'us'),
  currency: currency.meta({ description: 'ISO 4217 code.' }),
  inchStyle: optional(choice<ProjectSettings['inchStyle']>('fraction', 'decimal')),
  inchDenominator: optional(z.literal([2, 4, 8, 16, 32])),
  taxPercent: optional(z.number().min(0).max(100).nullable()),
  coverageChoice: optional(choice<ProjectSettings['coverageChoice']>('low', 'typical', 'high')),
  overhangMm: optional(z.number().min(0).max(1000)),
  trimAllowanceMm: optional(z.number().min(0).max(100)),
  spareStrips: optional(z.int().min(0).max(100)),
  bandingOrder: optional(
    z
      .array(choice<EdgeName>('front', 'back', 'left', 'right'))
      .length(4, 'must name the four edges')
      .refine((edges) => new Set(edges).size === edges.length, 'must name each edge once'),
  ),
  kerfMm: optional(z.number().min(0).max(50)),
  sheetTrimMm: optional(z.number().min(0).max(500)),
  cutStages: optional(z.union([z.literal(2), z.literal(3)]).nullable()),
  finishLoss: optional(z.number().min(0).max(0.9)),
  startDate: optional(calendarSettingShapes.startDate),
  timeZone: optional(calendarSettingShapes.timeZone).meta({
    description: 'IANA name of the time zone; left out: that of the machine.',
  }),
  hands: optional(calendarSettingShapes.hands),
  rackM2: optional(calendarSettingShapes.rackM2),
  largestBatchM2: optional(calendarSettingShapes.largestBatchM2),
  sandsApart: optional(calendarSettingShapes.sandsApart),
  woodWarmerC: optional(calendarSettingShapes.woodWarmerC),
  dryingDoublesPerC: optional(calendarSettingShapes.dryingDoublesPerC),
  dryingUsesHumidity: optional(calendarSettingShapes.dryingUsesHumidity),
  climateKind: optional(calendarSettingShapes.climateKind),
  dayC: optional(calendarSettingShapes.dayC),
  nightC: optional(calendarSettingShapes.nightC),
  dayHumidity: optional(calendarSettingShapes.dayHumidity),
  nightHumidity: optional(calendarSettingShapes.nightHumidity),
  keepUnderHealthLimit: optional(calendarSettingShapes.keepUnderHealthLimit),
  roomLengthM: optional(airSettingShapes.roomLengthM),
  roomWidthM: optional(airSettingShapes.roomWidthM),
  roomHeightM: optional(airSettingShapes.roomHeightM),
  airKind: optional(airSettingShapes.airKind),
  fanM3PerHour: optional(airSettingShapes.fanM3PerHour),
  fanDerating: optional(airSettingShapes.fanDerating),
  airChangesPerHour: optional(airSettingShapes.airChangesPerHour),
  openingM2: optional(airSettingShapes.openingM2),
  windMPerS: optional(airSettingShapes.windMPerS),
  mixingFactor: optional(airSettingShapes.mixingFactor),
  outdoorC: optional(airSettingShapes.outdoorC),
  heatPricePerKwhMinor: optional(airSettingShapes.heatPricePerKwhMinor),
  healthBasis: optional(airSettingShapes.healthBasis),
  contingencyPercent: optional(z.number().min(0).max(100)),
  rateMinorPerHour: optional(money.nullable()),
  readyMadeMinor: optional(money.nullable()),
} satisfies Record<keyof ProjectSettings, z.ZodType>);

/** An own product: what is left out is none or not known. */
const ownProduct = z
  .strictObject({
    ...productShape,
    choices: productShape.choices.default({}),
    figures: productShape.figures.default({}),
    recoat: productShape.recoat.default([]),
    recoatEvidence: productShape.recoatEvidence.default(null),
    packs: productShape.packs.default([]),
    retired: productShape.retired.default(false),
    origin: productShape.origin.default('user'),
    note: productShape.note.default(null),
  })
  .superRefine((product, context) => {
    for (const { path, message } of productFaults(product as Product))
      context.addIssue({ code: 'custom', path: [...path], message });
  });

/** A project as a file: readable, editable by hand, complete enough to be planned from. */
export const documentSchema = z
  .strictObject({
    $schema: optional(z.string()).meta({ description: 'Ignored; lets an editor find this schema.' }),
    format: z.literal(DOCUMENT_FORMAT),
    version: z.literal(DOCUMENT_VERSION),
    settings: settings.meta({ description: 'What is left out takes the default for the units.' }),
    sizes: z.array(sizeRow).default([]),
    parts: z.array(partRow),
    recipes: z.array(recipeRow).default([]),
    blends: z.array(blendRow).default([]),
    rules: z.array(ruleRow).default([]),
    extras: z.array(extraRow).default([]),
    onHand: z.array(onHandRow).default([]),
    measurements: z.array(measurementRow).default([]),
    shopHours: z
      .array(shopHoursRow)
      .default(DEFAULT_SHOP_HOURS.map((row) => ({ ...row })))
      .meta({
        description: 'When there are hands in the shop. Left out: weekday evenings and weekends.',
      }),
    daysOff: z.array(dayOffRow).default([]),
    climateRows: z.array(climateRow).default([]),
    pins: z.array(pinRow).default([]),
    doneTasks: z.array(doneTaskRow).default([]),
    arrivals: z.array(arrivalRow).default([]),
    budgets: z.array(budgetRow).default([]),
    orders: z.array(orderRow).default([]),
    orderLines: z.array(orderLineRow).default([]),
    receipts: z.array(receiptRow).default([]),
    stockUses: z.array(stockUseRow).default([]),
    payments: z.array(paymentRow).default([]),
    substitutes: z.array(substituteRow).default([]),
    workHours: z.array(workHoursRow).default([]),
    quotes: z.array(quoteRow).default([]),
    products: z.array(ownProduct).default([]).meta({
      description: 'Own products, added to the shipped ones or, under the same id, in their place.',
    }),
    suppliers: z.array(supplierSchema).default([]),
  })
  .meta({
    id: 'ProjectDocument',
    title: 'Plywright project',
    description: 'One project: settings, part list, recipes and everything the plan is made from.',
  });

/** A project document as it may be given. */
export type ProjectDocument = z.input<typeof documentSchema>;
/** The same with every default filled in. */
export type FullDocument = z.output<typeof documentSchema>;
