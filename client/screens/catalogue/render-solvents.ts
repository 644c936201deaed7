import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Catalogue, Product, SolventShare } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { isoToday } from '../../fields/iso-today.ts';
import { placeKey } from '../../fields/place.ts';
import { addAct, removeButton } from '../../fields/row-acts.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { textInput } from '../../fields/text-input.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { type Reading, understood } from '../../format/reading.ts';
import { ownEvidence } from './evidence-words.ts';
import { patchProduct } from './product-requests.ts';
import { renderEvidence } from './render-evidence.ts';

const PERCENT = 100;

/** Which solvents evaporate from a finish or thinner, for the air check. Figures of its own data sheet beat those of the list. */
export function renderSolvents(catalogue: Catalogue, product: Product): TemplateResult {
  const solvents = product.solvents ?? [];
  const evidence = product.solventsEvidence ?? null;
  return html`<section class="panel" aria-labelledby="solvents-title">
    <header>
      <div>
        <h2 id="solvents-title" tabindex="-1" data-at=${placeKey({ table: 'products', id: product.id, field: 'solvents' })}>What evaporates</h2>
        <p>From section 3 of the safety data sheet. Shares may stay empty: the worst is then assumed. Limits that are empty are those of the built-in list.</p>
      </div>
      ${addAct('solvents', 'Add solvent', () => void add(catalogue, product))}
    </header>
    <div class="body flush">
      ${
        solvents.length === 0
          ? html`<p class="nothing-yet">Not known. The air check cannot tell until it is entered.</p>`
          : stackTable(
              `Solvents of ${product.name}`,
              [
                ['Solvent'],
                ['Share', 'number'],
                ['Explosive from', 'number'],
                ['Health limit', 'number'],
                ['Molar mass', 'number'],
                ['Remove', 'acts'],
              ],
              repeat(
                solvents,
                (_, index) => index,
                (solvent, index) => solventRow(catalogue, product, solvent, index),
              ),
              { extraClass: 'solvents-table' },
            )
      }
      ${evidence === null ? nothing : html`<p class="under-table">${renderEvidence(evidence)}</p>`}
    </div>
  </section>`;
}

function solventRow(
  catalogue: Catalogue,
  product: Product,
  solvent: SolventShare,
  index: number,
): TemplateResult {
  const place = (field: string) =>
    ({ table: 'products', id: product.id, field: `solvents.${index}.${field}` }) as const;
  const listed = catalogue.solvents?.find(({ id }) => id === solvent.solventId);
  const name = listed?.name ?? solvent.solventId;
  const put = (patch: Partial<SolventShare>) =>
    saveList(
      product,
      (product.solvents ?? []).map((one, at) => (at === index ? { ...one, ...patch } : one)),
    );
  const own = (
    field: 'lelPercent' | 'limitMgPerM3' | 'molarMassGPerMol',
    label: string,
    unit: string,
    most: number,
    listedValue: number | string | null,
  ) =>
    textInput<number | null>({
      place: place(field),
      label: `${label} of ${name} on the data sheet, ${unit}`,
      text: solvent[field] === null ? '' : `${solvent[field]} ${unit}`,
      read: (typed) => readOptionalNumber(withoutUnit(typed, unit), { least: 0.001, most }),
      save: (value) => put({ [field]: value }),
      problems: [],
      numeric: true,
      placeholder: listedValue === null ? 'not known' : `listed: ${listedValue}`,
    });
  return html`<tr role="row" data-row="solvents/${index}">
    ${stackCell(
      'Solvent',
      choiceInput({
        place: place('solventId'),
        label: `Solvent ${index + 1}`,
        value: solvent.solventId,
        choices: (catalogue.solvents ?? []).map(({ id, name: text }) => ({ value: id, text })),
        save: (value) =>
          put({ solventId: value, lelPercent: null, limitMgPerM3: null, molarMassGPerMol: null }),
        problems: [],
      }),
    )}
    ${stackCell(
      'Share',
      textInput<number | null>({
        place: place('share'),
        label: `Share of ${name} in what evaporates`,
        text: solvent.share === null ? '' : `${Number((solvent.share * PERCENT).toPrecision(12))} %`,
        read: readPercent,
        save: (value) => put({ share: value }),
        problems: [],
        numeric: true,
        placeholder: 'not known',
      }),
      'number',
    )}
    ${stackCell('Explosive from', own('lelPercent', 'Lower explosive limit', '%', PERCENT, listed?.lelPercent?.value ?? null), 'number')}
    ${stackCell('Health limit', own('limitMgPerM3', 'Health limit', 'mg/m³', 1_000_000, (listed?.limits.length ?? 0) === 0 ? null : 'strictest'), 'number')}
    ${stackCell('Molar mass', own('molarMassGPerMol', 'Molar mass', 'g/mol', 1000, listed?.molarMassGPerMol?.value ?? null), 'number')}
    ${stackCell(
      '',
      removeButton(
        name,
        () =>
          void saveList(
            product,
            (product.solvents ?? []).filter((_, at) => at !== index),
          ),
      ),
      'acts',
    )}
  </tr>`;
}

function saveList(product: Product, solvents: readonly SolventShare[]) {
  return patchProduct(product.id, { solvents, solventsEvidence: ownEvidence(isoToday()) });
}

/** The first of the list that the product does not have yet. */
async function add({ solvents = [] }: Catalogue, product: Product): Promise<void> {
  const has = new Set((product.solvents ?? []).map(({ solventId }) => solventId));
  const next = solvents.find(({ id }) => !has.has(id));
  if (next === undefined) return;
  const share = {
    solventId: next.id,
    share: null,
    lelPercent: null,
    limitMgPerM3: null,
    molarMassGPerMol: null,
  };
  await saveList(product, [...(product.solvents ?? []), share]);
}

function readPercent(typed: string): Reading<number | null> {
  const percent = readOptionalNumber(typed.replace(/%\s*$/, ''), { least: 0, most: PERCENT });
  return percent.ok && percent.value !== null
    ? understood(Number((percent.value / PERCENT).toPrecision(12)))
    : percent;
}

function withoutUnit(typed: string, unit: string): string {
  const plain = typed.trim().replace('m3', 'm³');
  return plain.toLowerCase().endsWith(unit.toLowerCase()) ? plain.slice(0, -unit.length) : plain;
}
