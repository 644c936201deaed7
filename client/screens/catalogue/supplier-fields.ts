import { html, type TemplateResult } from 'lit-html';
import type { Supplier } from '../../../server/planning/product.ts';
import { setRefusal } from '../../fields/faults.ts';
import { fieldState } from '../../fields/field-message.ts';
import { labelled } from '../../fields/labelled.ts';
import type { Place } from '../../fields/place.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { type Reading, refused, understood } from '../../format/reading.ts';
import { getState } from '../../state/store.ts';
import { patchSupplier } from './product-requests.ts';

/** Longest lead time, days: what the server takes. */
const LONGEST_DAYS = 3650;
/** In the order of the week; 0 is Monday. */
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

type Charge = 'deliveryMinor' | 'freeDeliveryFromMinor' | 'minimumOrderMinor' | 'surchargeMinor';

/** The inputs of one supplier: how long it takes, on which days it works, and what it charges for an order. */
export function supplierFields(supplier: Supplier): TemplateResult {
  const { id, name, leadTimeDays } = supplier;
  const place = (field: string): Place => ({ table: 'suppliers', id, field });
  // Charges are typed in their own currency, at first in the one of the open project.
  const currency = supplier.currency || (getState().project?.settings.currency ?? '');
  const charge = (field: Charge, label: string, help: string): TemplateResult =>
    labelled(
      place(field),
      label,
      textInput<number | null>({
        place: place(field),
        label: `${label}, ${name}`,
        text: moneyInput(supplier[field], currency),
        placeholder:
          currency === '' ? 'say the currency first' : field === 'deliveryMinor' ? 'not known' : 'none',
        read: (typed) => readMoney(typed, currency),
        save: (minor) => patchSupplier(id, { currency, [field]: minor }),
        problems: [],
        numeric: true,
        disabled: currency === '',
      }),
      help,
    );
  return html`<div class="form-grid">
      ${labelled(
        place('name'),
        'Name',
        textInput<string>({
          place: place('name'),
          label: 'Name of the supplier',
          text: name,
          read: (typed) =>
            typed.trim() === '' ? refused('Write what the supplier is called.') : asTyped(typed),
          save: (typed) => patchSupplier(id, { name: typed }),
          problems: [],
        }),
      )}
      ${labelled(
        place('leadTimeDays'),
        'Lead time, working days',
        textInput<number | null>({
          place: place('leadTimeDays'),
          label: `Lead time of ${name}, working days`,
          text: leadTimeDays === null ? '' : daysText(leadTimeDays),
          placeholder: 'not known',
          read: readDays,
          save: (days) => patchSupplier(id, { leadTimeDays: days }),
          problems: [],
          numeric: true,
        }),
        'from ordering to having it',
      )}
      ${labelled(
        place('currency'),
        'Currency of the charges',
        textInput<string>({
          place: place('currency'),
          label: `Currency of the charges of ${name}`,
          text: supplier.currency,
          placeholder: currency,
          read: readCurrency,
          save: (code) => patchSupplier(id, { currency: code }),
          problems: [],
        }),
      )}
      ${charge('deliveryMinor', 'Delivery, each order', '0 where it is free')}
      ${charge('freeDeliveryFromMinor', 'Delivered free from', 'goods of so much')}
      ${charge('minimumOrderMinor', 'Minimum order', 'goods of less carry the surcharge')}
      ${charge('surchargeMinor', 'Surcharge below it', '')}
    </div>
    ${workingDays(supplier, place('workingDays'))}`;
}

function workingDays({ id, name, workingDays }: Supplier, place: Place): TemplateResult {
  const { message } = fieldState([], place);
  const toggle = async (day: number, on: boolean): Promise<void> => {
    const days = WEEKDAYS.map((_, index) => index).filter((index) =>
      index === day ? on : workingDays.includes(index),
    );
    setRefusal(place, await patchSupplier(id, { workingDays: days }));
  };
  return html`<div class="working-days" role="group" aria-label="Days on which ${name} works and delivers">
    <span class="group-title">Works and delivers on</span>
    ${WEEKDAYS.map(
      (words, day) => html`<label class="check"
        ><input
          type="checkbox"
          .checked=${workingDays.includes(day)}
          @change=${(event: Event) => void toggle(day, (event.currentTarget as HTMLInputElement).checked)}
        />
        ${words}</label
      >`,
    )}
    ${message}
  </div>`;
}

export function daysText(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

/** "4", "4 days" and "4 d" are 4; nothing typed is not known. */
function readDays(typed: string): Reading<number | null> {
  return readOptionalNumber(typed.replace(/\s*(d|day|days)\s*$/i, ''), {
    least: 0,
    most: LONGEST_DAYS,
    whole: true,
  });
}

function readCurrency(typed: string): Reading<string> {
  const code = typed.trim().toUpperCase();
  return /^([A-Z]{3})?$/.test(code) ? understood(code) : refused('Write a currency code such as EUR or USD.');
}
