import { z } from 'zod';
import { LARGEST_WORKBOOK_BYTES } from '../exchange/import/constants.ts';
import { IMPORT_FIELDS } from '../exchange/part-list/heading-words.ts';
import type { CellState } from '../exchange/part-list/preview-part-list.ts';
import type { ImportPreview, ImportRequest } from './contract.ts';
import { oneOf } from './one-of.ts';
import { cell } from './schemas.ts';

/** What the preview of an import takes and answers. */

const importUnit = z.literal(['mm', 'cm', 'm', 'in', 'ft']).nullable();
const column = {
  field: z.enum(IMPORT_FIELDS),
  unit: importUnit.meta({ description: 'Unit of bare numbers in the column; null takes that of the list.' }),
  decimalComma: z.boolean(),
};

/** Four characters of base64 hold three bytes. */
const LONGEST_BASE64 = Math.ceil(LARGEST_WORKBOOK_BYTES / 3) * 4;

export const importRequestSchema = z
  .strictObject({
    text: z.exactOptional(z.string()),
    workbookBase64: z.exactOptional(
      z
        .string()
        .max(LONGEST_BASE64)
        .regex(/^[A-Za-z0-9+/]*={0,2}$/, 'must be base64'),
    ),
    headingRow: z.exactOptional(
      z.int().min(0).nullable().meta({ description: 'Index among the filled rows; null for none.' }),
    ),
    columns: z.exactOptional(z.array(z.strictObject(column))),
    sizeOrder: z.exactOptional(z.enum(['length-width', 'width-length'])),
    bareUnit: z.exactOptional(importUnit),
    materialId: z.exactOptional(cell),
    bandingId: z.exactOptional(cell),
    recipeId: z.exactOptional(cell),
  })
  .refine(({ text, workbookBase64 }) => (text === undefined) !== (workbookBase64 === undefined), {
    message: 'must hold either a text or a workbook',
  })
  .meta({ id: 'ImportRequest' }) satisfies z.ZodType<ImportRequest>;

const state = oneOf<CellState>({ read: true, doubt: true, refused: true, empty: true });
const previewCell = z
  .strictObject({ text: z.string(), state, reason: z.string().nullable() })
  .meta({ id: 'PreviewCell' });
const counts = z.strictObject({ read: z.int(), doubt: z.int(), refused: z.int(), empty: z.int() });

export const importPreviewSchema = z
  .strictObject({
    split: z.enum([',', ';', '\t', '|', 'sheet', 'lines']),
    headingRow: z.int().nullable(),
    columns: z.array(z.strictObject({ heading: z.string(), ...column })),
    questions: z.array(
      z.strictObject({
        kind: oneOf<ImportPreview['questions'][number]['kind']>({
          columns: true,
          axis: true,
          'third-size': true,
          'size-order': true,
          unit: true,
          material: true,
          banding: true,
          finish: true,
        }),
        text: z.string(),
        column: z.int().nullable(),
      }),
    ),
    sample: z.array(z.strictObject({ line: z.int(), cells: z.array(z.string()) })),
    rows: z.array(
      z
        .strictObject({
          line: z.int(),
          name: previewCell,
          section: previewCell,
          quantity: previewCell,
          length: previewCell,
          width: previewCell,
          material: previewCell,
          grain: previewCell,
          edges: z.strictObject({
            front: previewCell,
            back: previewCell,
            left: previewCell,
            right: previewCell,
          }),
          showFace: previewCell,
          backFace: previewCell,
          note: previewCell,
          shape: previewCell,
          corners: z.strictObject({
            frontLeft: previewCell,
            frontRight: previewCell,
            backLeft: previewCell,
            backRight: previewCell,
          }),
        })
        .meta({ id: 'PreviewRow' }),
    ),
    counts: z.strictObject({ cells: counts, rows: counts }),
  })
  .meta({ id: 'ImportPreview' }) satisfies z.ZodType<ImportPreview>;
