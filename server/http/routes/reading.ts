import { z } from 'zod';
import { type CellPreview, type PreviewField, previewCell } from '../../planning/dimensions/preview-cell.ts';
import { trimmedText } from '../../planning/display/fixed-text.ts';
import { formatCount } from '../../planning/display/format-count.ts';
import { formatLength } from '../../planning/display/format-length.ts';
import type { ProjectSettings } from '../../planning/project-input.ts';
import { readingAnswerSchema } from '../answer-schemas.ts';
import type { ReadingAnswer } from '../contract.ts';
import { oneOf } from '../one-of.ts';
import { type Route, route } from '../route.ts';
import { cell, projectParams, rowParams } from '../schemas.ts';

/** Decimals of a length printed in full: a micrometre is finer than anything that is measured in wood. */
const EXACT_DECIMALS = 3;

/** What a cell being typed would be read as. Nothing is stored. */
export const readingRoutes: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/projects/{id}/reading',
    summary: 'What a typed length, radius, quantity or named size would be read as; nothing is stored.',
    group: 'plan',
    params: projectParams,
    body: z
      .strictObject({
        field: oneOf<PreviewField>({ length: true, width: true, radius: true, quantity: true, size: true }),
        text: cell,
        sizeId: z.exactOptional(rowParams.shape.rowId).meta({
          description: 'For the value of a named size: its row, so that one which uses itself is told.',
        }),
      })
      .meta({ id: 'ReadingRequest' }),
    answer: readingAnswerSchema,
    handle({ params, body: { field, text, sizeId = null } }, { plans }): ReadingAnswer {
      const { input } = plans.current(Number(params.id));
      return answerOf(previewCell(input, { field, text, sizeId }), field, input.settings);
    },
  }),
];

function answerOf(preview: CellPreview, field: PreviewField, settings: ProjectSettings): ReadingAnswer {
  const { value, refusal } = preview;
  const names = preview.names.map(({ name, id, valueMm }) => ({ name, id, mm: valueMm }));
  if (refusal !== null) {
    const { code, message, wayOut } = refusal;
    return { ok: false, code, message, wayOut, names };
  }
  if (value === null) {
    const waits = names.filter(({ mm }) => mm === null).map(({ name }) => name);
    return {
      ok: false,
      code: null,
      message: `It waits for ${waits.join(', ')}, which has no value.`,
      wayOut: 'Give it one under Sizes.',
      names,
    };
  }
  if (field === 'quantity')
    return {
      ok: true,
      mm: null,
      quantity: value,
      display: { project: `${formatCount(value)} ${value === 1 ? 'piece' : 'pieces'}`, exact: null },
      names,
    };
  const project = formatLength(value, settings);
  const exact = `${trimmedText(value, EXACT_DECIMALS)} mm`;
  return {
    ok: true,
    mm: value,
    quantity: null,
    display: { project, exact: exact === project ? null : exact },
    names,
  };
}
