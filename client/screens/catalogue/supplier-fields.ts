import type { TemplateResult } from 'lit-html';
import type { Supplier } from '../../../server/planning/product.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { type Reading, refused } from '../../format/reading.ts';
import { patchSupplier } from './product-requests.ts';

/** Longest lead time, days: what the server takes. */
const LONGEST_DAYS = 3650;

/** The inputs of one supplier. */
export function supplierFields(supplier: Supplier): Readonly<Record<'name' | 'leadTime', TemplateResult>> {
  const { id, name, leadTimeDays } = supplier;
  const place = (field: string) => ({ table: 'suppliers', id, field }) as const;
  return {
    name: textInput<string>({
      place: place('name'),
      label: 'Name of the supplier',
      text: name,
      read: (typed) => (typed.trim() === '' ? refused('Write what the supplier is called.') : asTyped(typed)),
      save: (typed) => patchSupplier(id, { name: typed }),
      problems: [],
    }),
    leadTime: textInput<number | null>({
      place: place('leadTimeDays'),
      label: `Lead time of ${name}, days`,
      text: leadTimeDays === null ? '' : daysText(leadTimeDays),
      placeholder: 'not known',
      read: readDays,
      save: (days) => patchSupplier(id, { leadTimeDays: days }),
      problems: [],
      numeric: true,
    }),
  };
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
