import { html, type TemplateResult } from 'lit-html';
import type { QuoteRow } from '../../../server/http/contract.ts';
import type { Problem } from '../../../server/planning/problem.ts';
import type { Quote } from '../../../server/planning/project-input.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { dateInput } from '../../fields/date-input.ts';
import { labelled } from '../../fields/labelled.ts';
import { longTextInput } from '../../fields/long-text-input.ts';
import type { Place } from '../../fields/place.ts';
import { saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readNumber, readOptionalNumber } from '../../format/read-number.ts';
import { rememberSender } from './new-quote.ts';

/** The most the server takes. */
const MOST_HOURS = 100_000;
const MOST_MARKUP = 1000;

const SHOWN_CHOICES = [
  { value: 'price', text: 'the price only' },
  { value: 'work', text: 'materials, and hours at their rate' },
] as const satisfies readonly { readonly value: Quote['shown']; readonly text: string }[];

/** The form of one quote: to whom, until when, and what its price is made of. */
export function quoteFields(
  { settings }: ScreenBook,
  quote: QuoteRow,
  problems: readonly Problem[],
): TemplateResult {
  const place = (field: keyof Quote): Place => ({ table: 'quotes', id: quote.id, field });
  const save = <V extends string | number | null>(field: keyof Quote) =>
    saveField<V>('quotes', quote.id, field);
  const text = (field: 'title' | 'customer', label: string, placeholder: string): TemplateResult =>
    labelled(
      place(field),
      label,
      textInput<string>({
        place: place(field),
        label,
        text: quote[field],
        placeholder,
        read: asTyped,
        save: save(field),
        problems,
      }),
    );
  const day = (field: 'date' | 'validUntil', label: string): TemplateResult =>
    labelled(
      place(field),
      label,
      dateInput({ place: place(field), label, value: quote[field], save: save(field), problems }),
    );
  const money = (
    field: 'materialsMinor' | 'rateMinorPerHour',
    label: string,
    placeholder: string,
    help: string,
  ): TemplateResult =>
    labelled(
      place(field),
      label,
      textInput<number | null>({
        place: place(field),
        label,
        text: moneyInput(quote[field], settings.currency),
        placeholder,
        read: (typed) => readMoney(typed, settings.currency),
        save: save(field),
        problems,
        numeric: true,
      }),
      help,
    );
  const number = (
    field: 'hours' | 'markupPercent',
    label: string,
    most: number,
    help: string,
  ): TemplateResult =>
    labelled(
      place(field),
      label,
      textInput<number>({
        place: place(field),
        label,
        text: String(quote[field]),
        read: (typed) => readNumber(withoutUnit(typed), { least: 0, most }),
        save: save(field),
        problems,
        numeric: true,
      }),
      help,
    );
  return html`<div class="quote-fields">
    <div class="wide">${text('title', 'Title', settings.name)}</div>
    ${text('customer', 'Customer', 'name')}
    ${day('date', 'Date')} ${day('validUntil', 'Valid until')}
    ${money('materialsMinor', 'Materials before tax', 'as planned', 'empty: follows the buy list')}
    ${number('markupPercent', 'Markup, %', MOST_MARKUP, 'on the materials')}
    ${number('hours', 'Hours', MOST_HOURS, 'of work, all in')}
    ${money(
      'rateMinorPerHour',
      'Rate per hour',
      settings.rateMinorPerHour === null
        ? 'not set'
        : moneyInput(settings.rateMinorPerHour, settings.currency),
      settings.rateMinorPerHour === null ? 'before tax' : 'empty: the project’s',
    )}
    ${labelled(
      place('taxPercent'),
      'Tax, %',
      textInput<number | null>({
        place: place('taxPercent'),
        label: 'Tax, %',
        text: quote.taxPercent === null ? '' : String(quote.taxPercent),
        placeholder: settings.taxPercent === null ? 'none' : String(settings.taxPercent),
        read: (typed) => readOptionalNumber(withoutUnit(typed), { least: 0, most: 100 }),
        save: save('taxPercent'),
        problems,
        numeric: true,
      }),
      settings.taxPercent === null ? 'empty: a price before tax' : 'empty: the project’s',
    )}
    ${labelled(
      place('shown'),
      'The customer sees',
      choiceInput({
        place: place('shown'),
        label: 'The customer sees',
        value: quote.shown,
        choices: SHOWN_CHOICES,
        save: save('shown'),
        problems,
      }),
      'never the markup or what materials cost you',
    )}
    <div class="wide">
      ${labelled(
        place('sender'),
        'From',
        longTextInput({
          place: place('sender'),
          label: 'From',
          text: quote.sender,
          rows: 3,
          placeholder: 'your name, address and telephone, as they stand at the head of the sheet',
          save: async (sender) => {
            const refusal = await save<string>('sender')(sender);
            if (refusal === null) rememberSender(sender);
            return refusal;
          },
          problems,
        }),
      )}
    </div>
    <div class="wide">
      ${labelled(
        place('note'),
        'Note to the customer',
        longTextInput({
          place: place('note'),
          label: 'Note to the customer',
          text: quote.note,
          rows: 3,
          placeholder: 'delivery, payment, what is not included',
          save: save('note'),
          problems,
        }),
      )}
    </div>
  </div>`;
}

/** "15 %" is 15, "12.5 h" is 12.5. */
function withoutUnit(typed: string): string {
  return typed.replace(/\s*(%|h|hours?)\s*$/i, '');
}
