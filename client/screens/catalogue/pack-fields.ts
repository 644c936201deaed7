import type { TemplateResult } from 'lit-html';
import type { Catalogue, Pack, Product } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { isoToday } from '../../fields/iso-today.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { figureText } from '../../format/figure-text.ts';
import { readAmount } from '../../format/read-amount.ts';
import { readLengthMm } from '../../format/read-length-mm.ts';
import { moneyInput, readMoney } from '../../format/read-money.ts';
import { type Reading, refused, understood } from '../../format/reading.ts';
import type { AppState } from '../../state/store.ts';
import { supplierChoices } from '../buy/supplier-choices.ts';
import { ownEvidence } from './evidence-words.ts';
import { withPack } from './pack-list.ts';
import { patchProduct } from './product-requests.ts';

type PackField = 'label' | 'length' | 'width' | 'amount' | 'price' | 'currency' | 'supplier';

/** Longest sheet, mm; the server takes no longer. */
const LONGEST_MM = 100_000;
const METRIC = { units: 'metric', inchStyle: 'fraction', inchDenominator: 32, currency: 'USD' } as const;

/** The inputs of one pack. Whatever is typed marks the pack as the user's own figure. */
export function packFields(
  { project }: AppState,
  catalogue: Catalogue,
  product: Product,
  pack: Pack,
): Readonly<Record<PackField, TemplateResult>> {
  const settings = project?.settings ?? METRIC;
  const place = (field: string) =>
    ({ table: 'products', id: product.id, field: `packs.${pack.id}.${field}` }) as const;
  const put = (patch: Partial<Pack>) =>
    patchProduct(product.id, { packs: withPack(product.packs, pack.id, patch, ownEvidence(isoToday())) });
  const side = (field: 'lengthMm' | 'widthMm', word: string): TemplateResult =>
    textInput<number>({
      place: place(field),
      label: `${word} of ${pack.label}`,
      text: pack[field] === null ? '' : figureText(pack[field], 'mm', settings),
      placeholder: 'not known',
      read: (typed) => readLengthMm(typed, settings.units, { leastMm: 1, mostMm: LONGEST_MM }),
      save: (mm) => put({ [field]: mm }),
      problems: [],
      numeric: true,
    });
  return {
    label: textInput<string>({
      place: place('label'),
      label: 'Sold as',
      text: pack.label,
      read: (typed) =>
        typed.trim() === '' ? refused('Write what the pack is called, such as "0.75 L".') : asTyped(typed),
      save: (label) => put({ label }),
      problems: [],
    }),
    length: side('lengthMm', 'Length'),
    width: side('widthMm', 'Width'),
    amount: textInput<number>({
      place: place('amount'),
      label: `How much ${pack.label} holds`,
      text: figureText(pack.amount, product.unit, settings),
      read: (typed) => aboveZero(readAmount(typed, product.unit, settings.units)),
      save: (amount) => put({ amount }),
      problems: [],
      numeric: true,
    }),
    price: textInput<number | null>({
      place: place('priceMinor'),
      label: `Price of ${pack.label}, ${pack.currency}`,
      text: moneyInput(pack.priceMinor, pack.currency),
      placeholder: 'not known',
      read: (typed) => readMoney(typed, pack.currency),
      save: (priceMinor) => put({ priceMinor }),
      problems: [],
      numeric: true,
    }),
    currency: textInput<string>({
      place: place('currency'),
      label: `Currency of ${pack.label}`,
      text: pack.currency,
      read: readCurrency,
      save: (currency) => put({ currency }),
      problems: [],
    }),
    supplier: choiceInput({
      place: place('supplierId'),
      label: `Supplier of ${pack.label}`,
      value: pack.supplierId ?? '',
      choices: supplierChoices(catalogue),
      save: (supplierId) => put({ supplierId: supplierId === '' ? null : supplierId }),
      problems: [],
    }),
  };
}

function aboveZero(reading: Reading<number>): Reading<number> {
  return reading.ok && reading.value <= 0 ? refused('A pack holds more than nothing.') : reading;
}

export function readCurrency(typed: string): Reading<string> {
  const code = typed.trim().toUpperCase();
  return /^[A-Z]{3}$/.test(code)
    ? understood(code)
    : refused(`"${typed.trim()}" is not a currency. Write its three letters, such as EUR.`);
}
