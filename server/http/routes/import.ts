import { AnswerMismatch, previewImport } from '../../exchange/import/preview-import.ts';
import { readSource } from '../../exchange/import/read-source.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { importPreviewSchema, importRequestSchema } from '../import-schemas.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** Part lists of any shape. Nothing is stored: what the preview shows is added by an ordinary change of many rows. */
export const importRoutes: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/projects/{id}/import/preview',
    summary:
      'Read a pasted part list or a workbook, and say what importing it would write and what to ask first.',
    group: 'exchange',
    params: projectParams,
    body: importRequestSchema,
    answer: importPreviewSchema,
    async handle({ params, body: { text, workbookBase64, ...answers } }, { plans }) {
      const { input } = plans.current(Number(params.id));
      const read = await readSource(
        text === undefined ? { workbook: Buffer.from(workbookBase64 ?? '', 'base64') } : { text },
      );
      if (!read.ok) {
        const { tooLarge, message, wayOut } = read.refusal;
        throw new HttpRefusal(tooLarge ? 'too-large' : 'bad-request', message, wayOut);
      }
      try {
        const { settings, catalogue, recipes } = input;
        return previewImport(read.table, answers, {
          units: settings.units,
          products: catalogue.products,
          recipes,
        });
      } catch (error) {
        if (!(error instanceof AnswerMismatch)) throw error;
        throw new HttpRefusal(
          'bad-request',
          error.message,
          'Read the list without answers first, and answer what it asks.',
        );
      }
    },
  }),
];
