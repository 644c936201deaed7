import { z } from 'zod';
import { productSchema, supplierSchema } from '../../db/catalogue/product-schema.ts';
import { currency, partial, projectName, rowShapes, settingsShape, units } from '../http/schemas.ts';

/** The JSON form of a project, for scripts, for keeping and for carrying to another machine. */

/** Row ids: any short text; when left out, the row's place in its list counted from 1. */
const rowId = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,60}$/, 'must be letters, digits, hyphens or underscores')
  .meta({ description: 'Id of the row; its place in the list when left out.' });
/** A cell of a part: text as typed, or a number in the project's unit (mm in metric, inches in US customary). */
const typedCell = z.union([z.string().max(10_000), z.number()]).meta({
  description: 'As typed ("600", "23 5/8\\""), or a number in mm (metric) or inches (US customary).',
});

const { recipeId: _recipeId, ...stepShape } = rowShapes.steps;
const { blendId: _blendId, ...componentShape } = rowShapes.components;
const { name: _name, units: _units, currency: _currency, ...optionalSettings } = settingsShape;
const withId = { id: z.exactOptional(rowId) };

export const documentSchema = z
  .strictObject({
    format: z.literal('plywright-project'),
    version: z.literal(1),
    settings: z.strictObject({ name: projectName, units, currency, ...partial(optionalSettings) }),
    sizes: z.exactOptional(
      z.array(
        z.strictObject({
          ...withId,
          ...partial(rowShapes.sizes),
          name: rowShapes.sizes.name,
          value: typedCell,
        }),
      ),
    ),
    parts: z.array(
      z.strictObject({
        ...withId,
        ...partial(rowShapes.parts),
        quantity: z.exactOptional(typedCell),
        length: z.exactOptional(typedCell),
        width: z.exactOptional(typedCell),
        radiusFrontLeft: z.exactOptional(typedCell),
        radiusFrontRight: z.exactOptional(typedCell),
        radiusBackLeft: z.exactOptional(typedCell),
        radiusBackRight: z.exactOptional(typedCell),
      }),
    ),
    recipes: z.exactOptional(
      z.array(
        z.strictObject({
          ...withId,
          ...partial(rowShapes.recipes),
          name: rowShapes.recipes.name,
          steps: z.array(z.strictObject({ ...withId, ...partial(stepShape), kind: stepShape.kind })),
        }),
      ),
    ),
    blends: z.exactOptional(
      z.array(
        z.strictObject({
          ...withId,
          name: rowShapes.blends.name,
          components: z.array(z.strictObject({ ...withId, ...componentShape })),
        }),
      ),
    ),
    rules: z.exactOptional(
      z.array(
        z.strictObject({
          ...withId,
          productId: rowShapes.rules.productId,
          per: rowShapes.rules.per,
          rate: z.exactOptional(rowShapes.rules.rate),
        }),
      ),
    ),
    extras: z.exactOptional(
      z.array(
        z.strictObject({ ...withId, ...partial(rowShapes.extras), quantity: rowShapes.extras.quantity }),
      ),
    ),
    onHand: z.exactOptional(
      z.array(
        z.strictObject({
          ...withId,
          ...partial(rowShapes.onHand),
          productId: rowShapes.onHand.productId,
          amount: rowShapes.onHand.amount,
        }),
      ),
    ),
    measurements: z.exactOptional(z.array(z.strictObject({ ...withId, ...rowShapes.measurements }))),
    products: z.exactOptional(z.array(productSchema)),
    suppliers: z.exactOptional(z.array(supplierSchema)),
  })
  .meta({
    id: 'ProjectDocument',
    title: 'Plywright project',
    description: 'One project: settings, part list, recipes and everything the plan is made from.',
  });

export type ProjectDocument = z.infer<typeof documentSchema>;
