import { html, nothing, type TemplateResult } from 'lit-html';
import type { StepRow } from '../../../server/http/contract.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { problemsAt } from '../../fields/problems-at.ts';
import { moveActs, removeAct } from '../../fields/row-acts.ts';
import { saveChanges, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { textInput } from '../../fields/text-input.ts';
import { readNumber } from '../../format/read-number.ts';
import { icon } from '../../shell/icons.ts';
import { detailsOpen, INSIDE, toggleDetails } from './finish-view.ts';
import { type Coat, renderCoats, renderPieces } from './render-coats.ts';
import { renderStepDetails, stepDetailWords } from './render-step-details.ts';
import { stepProductChoices, stepProductFields, stepProductValue } from './step-product.ts';
import { ABRASIVE_STEPS, choicesFrom, LIQUID_STEPS, METHOD_WORDS, STEP_WORDS } from './words.ts';

/** Most times one step may be done; the server refuses more. */
const MOST_COATS = 20;

export interface StepView {
  readonly step: StepRow;
  readonly steps: readonly StepRow[];
  readonly index: number;
  readonly coats: readonly Coat[];
  /** The most litres of any coat of the recipe: the end of the scale of every bar. */
  readonly most: number;
}

export function renderStep(book: ScreenBook, { step, steps, index, coats, most }: StepView): TemplateResult {
  const { problems } = book;
  const at = (field: string) => ({ table: 'steps', id: step.id, field }) as const;
  const name = `step ${index + 1}, ${STEP_WORDS[step.kind].toLowerCase()}`;
  const liquid = LIQUID_STEPS.includes(step.kind);
  // Dusting off and curing are done once; only a count that was set otherwise is shown.
  const counted = liquid || ABRASIVE_STEPS.includes(step.kind) || step.coats !== 1;
  const open = liquid && detailsOpen(step.id);
  const words = liquid ? stepDetailWords(book, step) : step.note === '' ? [] : [step.note];
  return html`<li class="step ${liquid ? 'liquid' : 'dry'}" data-row="steps/${step.id}">
    <div class="step-fields">
      <span class="step-number" aria-hidden="true">${index + 1}</span>
      <div class="step-kind">
        ${choiceInput({ place: at('kind'), label: `Kind of ${name}`, value: step.kind, choices: choicesFrom(STEP_WORDS), save: saveField('steps', step.id, 'kind'), problems })}
      </div>
      <div class="step-product">${liquid || ABRASIVE_STEPS.includes(step.kind) ? productInput(book, step, name) : nothing}</div>
      <div class="step-times">${counted ? timesInput(book, step, name, liquid) : nothing}</div>
      <div class="step-method">${
        liquid
          ? choiceInput({
              place: at('method'),
              label: `Method of ${name}`,
              value: step.method,
              choices: choicesFrom(METHOD_WORDS),
              save: saveField('steps', step.id, 'method'),
              problems,
            })
          : renderPieces(book, step.recipeId, coats)
      }</div>
      <div class="step-acts">
        ${
          liquid
            ? html`<button
              type="button"
              class="button plain icon"
              aria-expanded=${open}
              aria-label="Thinning and losses of ${name}"
              title="Thinning, transfer and losses"
              @click=${() => toggleDetails(step.id)}
            >
              ${icon('settings')}
            </button>`
            : nothing
        }
        ${moveActs('steps', steps, index, name)} ${removeAct('steps', step.id, name)}
      </div>
    </div>
    ${open ? renderStepDetails(book, step, name) : renderClosed(book, step, words)}
    ${renderCoats(book, step.recipeId, coats, most)}
  </li>`;
}

/** In place of the closed finer points: what is set there, and what is wrong there. */
function renderClosed({ problems }: ScreenBook, step: StepRow, words: readonly string[]): TemplateResult {
  const found = INSIDE.flatMap((field) => problemsAt(problems, { table: 'steps', id: step.id, field }));
  return html`${words.length === 0 ? nothing : html`<p class="step-words">${words.join(' · ')}</p>`}
  ${found.map(({ severity, message, wayOut }) => html`<p class="step-words said ${severity}">${message} ${wayOut}</p>`)}`;
}

function timesInput(book: ScreenBook, step: StepRow, name: string, liquid: boolean): TemplateResult {
  const words = liquid ? ['coat', 'coats'] : ['time', 'times'];
  return html`${textInput({
    place: { table: 'steps', id: step.id, field: 'coats' },
    label: `${liquid ? 'Coats' : 'Times'} of ${name}`,
    text: String(step.coats),
    read: (typed) => readNumber(typed, { least: 1, most: MOST_COATS, whole: true }),
    save: saveField('steps', step.id, 'coats'),
    problems: book.problems,
    numeric: true,
  })}<span aria-hidden="true">${words[step.coats === 1 ? 0 : 1]}</span>`;
}

function productInput(book: ScreenBook, step: StepRow, name: string): TemplateResult {
  const place = {
    table: 'steps',
    id: step.id,
    field: step.blendId === '' ? 'productId' : 'blendId',
  } as const;
  return choiceInput({
    place,
    label: `Product of ${name}`,
    value: stepProductValue(step),
    choices: stepProductChoices(book, step),
    save: (value) =>
      saveChanges([{ op: 'update', table: 'steps', id: step.id, values: { ...stepProductFields(value) } }]),
    problems: book.problems,
  });
}
