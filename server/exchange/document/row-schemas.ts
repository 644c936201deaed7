import { z } from 'zod';
import type {
  ApplicationMethod,
  CostCategory,
  PartInput,
  Recipe,
  StepKind,
  UsageRule,
} from '../../planning/project-input.ts';
import {
  BLEND_DEFAULTS,
  CLIMATE_DEFAULTS,
  DONE_DEFAULTS,
  EXTRA_DEFAULTS,
  ON_HAND_DEFAULTS,
  PART_DEFAULTS,
  RECIPE_DEFAULTS,
  RULE_DEFAULTS,
  SIZE_DEFAULTS,
  STEP_DEFAULTS,
} from './row-defaults.ts';
import { amount, cell, choice, measure, money, reference, rowId, sizeMm } from './value-schemas.ts';

/** How each row of a project document may be given. Unknown keys are refused. */

const id = z.exactOptional(rowId);
const note = cell.default('');
const edge = cell
  .default(PART_DEFAULTS.edgeFront)
  .meta({ description: '"hidden" (in a joint), "bare" (seen, not banded) or the id of a banding product.' });
const radius = measure.default(PART_DEFAULTS.radiusFrontLeft);

export const sizeRow = z.strictObject({
  id,
  name: cell.meta({ description: 'Letters, digits and underscores; = cells use it.' }),
  value: measure,
  note: cell.default(SIZE_DEFAULTS.note),
});

export const partRow = z.strictObject({
  id,
  name: cell.default(PART_DEFAULTS.name),
  section: cell.default(PART_DEFAULTS.section),
  quantity: z.union([cell, z.number()]).default(PART_DEFAULTS.quantity),
  length: measure.default(PART_DEFAULTS.length).meta({ description: 'Finished size along the grain.' }),
  width: measure.default(PART_DEFAULTS.width),
  shape: choice<PartInput['shape']>('rectangle', 'round').default(PART_DEFAULTS.shape),
  materialId: cell.default(PART_DEFAULTS.materialId),
  grain: choice<PartInput['grain']>('along', 'across', 'free').default(PART_DEFAULTS.grain),
  edgeFront: edge,
  edgeBack: edge,
  edgeLeft: edge,
  edgeRight: edge,
  radiusFrontLeft: radius,
  radiusFrontRight: radius,
  radiusBackLeft: radius,
  radiusBackRight: radius,
  showRecipeId: reference.default(PART_DEFAULTS.showRecipeId),
  backRecipeId: reference.default(PART_DEFAULTS.backRecipeId),
  note,
  grainMatch: cell.default(PART_DEFAULTS.grainMatch).meta({
    description: 'Parts of one name and material are cut side by side from one sheet, in their order.',
  }),
});

export const stepRow = z.strictObject({
  id,
  kind: choice<StepKind>('sand', 'dust', 'condition', 'stain', 'seal', 'topcoat', 'scuff', 'cure'),
  productId: cell.default(STEP_DEFAULTS.productId),
  blendId: reference.default(STEP_DEFAULTS.blendId),
  coats: z.int().min(1).max(20).default(STEP_DEFAULTS.coats),
  method: z
    .exactOptional(
      choice<ApplicationMethod>('brush', 'roller', 'wipe', 'spray-hvlp', 'spray-airless', 'spray-air'),
    )
    .meta({ description: 'Left out: wipe for condition and stain, else brush.' }),
  transferEfficiency: z.number().positive().max(1).nullable().default(STEP_DEFAULTS.transferEfficiency),
  thinning: z.number().min(0).max(10).default(STEP_DEFAULTS.thinning),
  thinnerId: cell.default(STEP_DEFAULTS.thinnerId),
  sessionLossL: z.number().min(0).max(1000).nullable().default(STEP_DEFAULTS.sessionLossL),
  note,
});

export const recipeRow = z.strictObject({
  id,
  name: cell.default(RECIPE_DEFAULTS.name),
  faces: choice<Recipe['faces']>('flip', 'points').default(RECIPE_DEFAULTS.faces),
  steps: z.array(stepRow).default([]),
});

export const componentRow = z.strictObject({ id, productId: cell, parts: amount });

export const blendRow = z.strictObject({
  id,
  name: cell.default(BLEND_DEFAULTS.name),
  components: z.array(componentRow).default([]),
});

export const ruleRow = z.strictObject({
  id,
  productId: cell,
  per: choice<UsageRule['per']>('finish-area', 'coat-area', 'banding-metre', 'part', 'project'),
  rate: amount.nullable().default(RULE_DEFAULTS.rate),
});

export const extraRow = z.strictObject({
  id,
  productId: cell.default(EXTRA_DEFAULTS.productId),
  name: cell.default(EXTRA_DEFAULTS.name),
  category: choice<CostCategory>(
    'sheets',
    'boards',
    'banding',
    'finish',
    'thinner',
    'abrasives',
    'glue',
    'filler',
    'hardware',
    'consumables',
    'other',
  ).default(EXTRA_DEFAULTS.category),
  quantity: amount,
  unitPriceMinor: money.nullable().default(EXTRA_DEFAULTS.unitPriceMinor),
  supplierId: cell.default(EXTRA_DEFAULTS.supplierId),
});

export const onHandRow = z.strictObject({
  id,
  productId: cell,
  amount,
  count: z.int().min(0).max(1_000_000).default(ON_HAND_DEFAULTS.count),
  lengthMm: sizeMm.nullable().default(ON_HAND_DEFAULTS.lengthMm),
  widthMm: sizeMm.nullable().default(ON_HAND_DEFAULTS.widthMm),
});

export const measurementRow = z.strictObject({
  id,
  productId: cell,
  thicknessMm: z.number().positive().max(1000),
});

export const shopHoursRow = z.strictObject({
  id,
  weekday: z.int().min(0).max(6).meta({ description: '0 is Monday, 6 is Sunday.' }),
  from: cell,
  to: cell,
});

export const dayOffRow = z.strictObject({ id, date: cell, note });

export const climateRow = z.strictObject({
  id,
  date: cell,
  time: cell.default(CLIMATE_DEFAULTS.time).meta({ description: 'Left out: the whole day.' }),
  temperatureC: z.number().min(-1000).max(1000).nullable().default(CLIMATE_DEFAULTS.temperatureC),
  humidityPercent: amount.nullable().default(CLIMATE_DEFAULTS.humidityPercent),
});

export const pinRow = z.strictObject({ id, taskId: cell, start: cell });

export const doneTaskRow = z.strictObject({
  id,
  taskId: cell,
  start: cell,
  end: cell,
  litres: amount.nullable().default(DONE_DEFAULTS.litres),
});

export const arrivalRow = z.strictObject({ id, productId: cell, date: cell });
