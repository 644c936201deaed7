import { html, nothing, type TemplateResult } from 'lit-html';
import type { ImportPreview } from '../../server/http/contract.ts';
import {
  bandingChoices,
  fieldChoices,
  finishChoices,
  materialChoices,
  projectUnitWords,
  unitChoices,
} from './import-choices.ts';
import type { ImportActions, ImportAnswers } from './import-draft.ts';
import { renderSelect } from './render-select.ts';
import { setColumnField } from './set-column.ts';

type Question = ImportPreview['questions'][number];
type Columns = NonNullable<ImportAnswers['columns']>;
type Unit = NonNullable<ImportAnswers['bareUnit']>;

/** What only the user knows, each asked once for the whole list. */
export function renderQuestions(
  preview: ImportPreview,
  acts: ImportActions,
): TemplateResult | typeof nothing {
  if (preview.questions.length === 0) return nothing;
  return html`<section class="import-questions" aria-labelledby="import-questions-title">
    <h3 id="import-questions-title">Asked once for the whole list</h3>
    <div class="import-answers">${preview.questions.map((question) => renderQuestion(question, preview, acts))}</div>
  </section>`;
}

function renderQuestion(question: Question, preview: ImportPreview, acts: ImportActions): TemplateResult {
  if (question.kind === 'columns')
    return html`<p class="field"><span>${question.text} The choices stand above each column below.</span></p>`;
  return html`<label class="field"><span>${question.text}</span>${renderAnswer(question, preview, acts)}</label>`;
}

function renderAnswer(
  { kind, column }: Question,
  { columns }: ImportPreview,
  acts: ImportActions,
): TemplateResult {
  const { answers } = acts.draft();
  switch (kind) {
    case 'axis':
    case 'third-size': {
      const field = columns[column ?? -1]?.field ?? 'ignore';
      const offered = fieldChoices().filter(({ value }) =>
        ['ignore', 'length', 'width', ...(kind === 'axis' ? [] : ['thickness'])].includes(value),
      );
      return renderSelect(field, offered, (value) =>
        acts.answer({ columns: answered(setColumnField(columns, column ?? -1, value as typeof field)) }),
      );
    }
    case 'size-order':
      return renderSelect(
        answers.sizeOrder ?? 'length-width',
        [
          { value: 'length-width', text: 'length first: length × width' },
          { value: 'width-length', text: 'width first: width × length' },
        ],
        (value) => acts.answer({ sizeOrder: value as 'length-width' | 'width-length' }),
      );
    case 'unit':
      return renderSelect(
        answers.bareUnit ?? '',
        unitChoices(`${projectUnitWords()}, as the project`),
        (value) => acts.answer({ bareUnit: value === '' ? null : (value as Unit) }),
      );
    case 'material': {
      const chosen = answers.materialId ?? '';
      return renderSelect(chosen, materialChoices(chosen), (materialId) => acts.answer({ materialId }));
    }
    case 'banding': {
      const chosen = answers.bandingId ?? '';
      return renderSelect(chosen, bandingChoices(chosen), (bandingId) => acts.answer({ bandingId }));
    }
    case 'finish':
      return renderSelect(answers.recipeId ?? '', finishChoices(), (recipeId) => acts.answer({ recipeId }));
    default:
      return html``;
  }
}

/** Columns as they are sent: without the headings, which the server knows. */
export function answered(columns: ImportPreview['columns']): Columns {
  return columns.map(({ field, unit, decimalComma }) => ({ field, unit, decimalComma }));
}
