import { html, type TemplateResult } from 'lit-html';
import type { StepRow } from '../../../server/http/contract.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { labelled } from '../../fields/labelled.ts';
import { productChoices } from '../../fields/products-of.ts';
import { saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readAmount } from '../../format/read-amount.ts';
import { readShare } from '../../format/read-share.ts';
import { type Reading, understood } from '../../format/reading.ts';

/** Most thinner the planner takes, percent of the product's volume. */
const MOST_THINNING_PERCENT = 100;

/** The finer points of a coat: thinner, how much lands on the work, what stays in the tool. */
export function renderStepDetails(book: ScreenBook, step: StepRow, name: string): TemplateResult {
  const { problems, formats, settings, catalogue } = book;
  const at = (field: string) => ({ table: 'steps', id: step.id, field }) as const;
  const optional =
    <Value>(read: (typed: string) => Reading<Value>) =>
    (typed: string): Reading<Value | null> =>
      typed.trim() === '' ? understood(null) : read(typed);
  return html`<div class="step-details">
    ${labelled(
      at('thinning'),
      'Thinned by',
      textInput({
        place: at('thinning'),
        label: `Thinner in ${name}, percent of its volume`,
        text: step.thinning === 0 ? '' : formats.share(step.thinning),
        placeholder: 'not thinned',
        read: (typed) =>
          typed.trim() === '' ? understood(0) : readShare(typed, { least: 0, most: MOST_THINNING_PERCENT }),
        save: saveField('steps', step.id, 'thinning'),
        problems,
        numeric: true,
      }),
      'of its volume',
    )}
    ${labelled(
      at('thinnerId'),
      'Thinner',
      choiceInput({
        place: at('thinnerId'),
        label: `Thinner for ${name}`,
        value: step.thinnerId,
        choices: productChoices(catalogue, ['thinner'], step.thinnerId, 'none'),
        save: saveField('steps', step.id, 'thinnerId'),
        problems,
      }),
    )}
    ${labelled(
      at('transferEfficiency'),
      'Lands on the work',
      textInput({
        place: at('transferEfficiency'),
        label: `Share of ${name} that lands on the work, percent`,
        text: step.transferEfficiency === null ? '' : formats.share(step.transferEfficiency),
        placeholder: 'as the method',
        read: optional((typed) => readShare(typed, { least: 1, most: 100 })),
        save: saveField('steps', step.id, 'transferEfficiency'),
        problems,
        numeric: true,
      }),
      'transfer efficiency',
    )}
    ${labelled(
      at('sessionLossL'),
      'Stays in the tool',
      textInput({
        place: at('sessionLossL'),
        label: `What stays in brush, tray or gun after ${name}`,
        text: step.sessionLossL === null ? '' : formats.volume(step.sessionLossL),
        placeholder: 'as the method',
        read: optional((typed) => readAmount(typed, 'L', settings.units, { least: 0, most: 1000 })),
        save: saveField('steps', step.id, 'sessionLossL'),
        problems,
        numeric: true,
      }),
      'per coat',
    )}
    <div class="step-note">
      ${labelled(
        at('note'),
        'Note',
        textInput({
          place: at('note'),
          label: `Note on ${name}`,
          text: step.note,
          read: asTyped,
          save: saveField('steps', step.id, 'note'),
          problems,
        }),
      )}
    </div>
  </div>`;
}

/** What of the finer points is set, in words, for the closed state. */
export function stepDetailWords({ formats, products }: ScreenBook, step: StepRow): readonly string[] {
  const thinner = products.get(step.thinnerId)?.name.toLowerCase();
  return [
    step.thinning === 0
      ? ''
      : `thinned ${formats.share(step.thinning)}${thinner === undefined ? '' : ` with ${thinner}`}`,
    step.transferEfficiency === null ? '' : `${formats.share(step.transferEfficiency)} lands on the work`,
    step.sessionLossL === null ? '' : `${formats.volume(step.sessionLossL)} stays in the tool`,
    step.note,
  ].filter((words) => words !== '');
}
