import { z } from 'zod';
import type { Carrier, FinishRole, ProductChoices } from '../../server/planning/product.ts';
import { name, slug } from './name-schema.ts';

/** Most parts of base or hardener in a mix. */
const MOST_MIX_PARTS = 1000;
const mix = z.number().positive().max(MOST_MIX_PARTS);

/** The choices of a product that are not numbers. Which kinds may have which is checked on the product. */
export const choicesSchema: z.ZodType<ProductChoices> = z
  .strictObject({
    species: z.exactOptional(name),
    deducted: z.exactOptional(z.enum(['auto', 'yes', 'no'])),
    bandMaterial: z.exactOptional(z.enum(['veneer', 'solid', 'plastic'])),
    role: z.exactOptional(
      z.enum([
        'conditioner',
        'stain',
        'sealer',
        'topcoat',
        'primer',
        'paint',
        'oil',
        'hardener',
      ] satisfies FinishRole[]),
    ),
    carrier: z.exactOptional(z.enum(['oil', 'water', 'alcohol', 'lacquer-solvent'] satisfies Carrier[])),
    colour: z.exactOptional(name),
    hardenerId: z.exactOptional(slug),
    mixBase: z.exactOptional(mix),
    mixHardener: z.exactOptional(mix),
    grit: z.exactOptional(z.int().min(8).max(10_000)),
    nominal: z.exactOptional(name),
    rags: z.exactOptional(z.enum(['self-heating', 'no', 'unknown'])),
  })
  .refine(
    ({ hardenerId, mixBase, mixHardener }) =>
      [hardenerId, mixBase, mixHardener].every((part) => part === undefined) ||
      [hardenerId, mixBase, mixHardener].every((part) => part !== undefined),
    { message: 'must give hardenerId, mixBase and mixHardener together' },
  );
