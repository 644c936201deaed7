import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Product, RecoatInterval } from '../../../server/planning/product.ts';
import { checkInput } from '../../fields/check-input.ts';
import { isoToday } from '../../fields/iso-today.ts';
import { placeKey } from '../../fields/place.ts';
import { addAct, removeButton } from '../../fields/row-acts.ts';
import type { Save } from '../../fields/save.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { textInput } from '../../fields/text-input.ts';
import { durationText } from '../../format/duration-text.ts';
import { readDuration } from '../../format/read-duration.ts';
import { refused } from '../../format/reading.ts';
import { ownEvidence } from './evidence-words.ts';
import { patchProduct } from './product-requests.ts';
import { renderEvidence } from './render-evidence.ts';

/** An hour: the length a new interval starts with. */
const FIRST_LENGTH_MIN = 60;

/** When the next coat may follow: intervals after the last one was laid, with or without scuff-sanding. */
export function renderRecoat(product: Product): TemplateResult {
  const { recoat, recoatEvidence } = product;
  return html`<section class="panel" aria-labelledby="recoat-title">
    <header>
      <div>
        <h2 id="recoat-title" tabindex="-1" data-at=${placeKey({ table: 'products', id: product.id, field: 'recoat' })}>Recoat times</h2>
        <p>Counted from when the last coat was laid. Between two intervals no coat may follow.</p>
      </div>
      ${addAct('recoat', 'Add interval', () => void saveList(product, [...recoat, following(recoat)]))}
    </header>
    <div class="body flush">
      ${
        recoat.length === 0
          ? html`<p class="nothing-yet">Not known. The label says when the next coat may follow.</p>`
          : stackTable(
              'Recoat times',
              [['From', 'number'], ['Until', 'number'], ['Scuff-sanding'], ['Remove', 'acts']],
              repeat(
                recoat,
                (_, index) => index,
                (interval, index) => intervalRow(product, interval, index),
              ),
              { extraClass: 'recoat-table' },
            )
      }
      ${recoatEvidence === null ? nothing : html`<p class="under-table">${renderEvidence(recoatEvidence)}</p>`}
    </div>
  </section>`;
}

/** A new interval begins where the last one ends; one that was open gets an end first. */
function following(recoat: readonly RecoatInterval[]): RecoatInterval {
  const last = recoat.at(-1);
  const fromMin = last === undefined ? 0 : (last.toMin ?? last.fromMin + FIRST_LENGTH_MIN);
  return { fromMin, toMin: null, scuff: true };
}

function saveList(product: Product, given: readonly RecoatInterval[]): ReturnType<Save<unknown>> {
  const recoat = given.map((interval, index) =>
    interval.toMin === null && index < given.length - 1
      ? { ...interval, toMin: given[index + 1]?.fromMin ?? null }
      : interval,
  );
  return patchProduct(product.id, {
    recoat,
    recoatEvidence: recoat.length === 0 ? null : ownEvidence(isoToday()),
  });
}

function intervalRow(product: Product, interval: RecoatInterval, index: number): TemplateResult {
  const place = (field: string) =>
    ({ table: 'products', id: product.id, field: `recoat.${index}.${field}` }) as const;
  const put = (patch: Partial<RecoatInterval>) =>
    saveList(
      product,
      product.recoat.map((one, at) => (at === index ? { ...one, ...patch } : one)),
    );
  const name = `interval ${index + 1}`;
  return html`<tr role="row" data-row="recoat/${index}">
    ${stackCell(
      'From',
      textInput<number>({
        place: place('fromMin'),
        label: `Start of ${name}`,
        text: durationText(interval.fromMin),
        read: (typed) => {
          const reading = readDuration(typed);
          if (!reading.ok) return reading;
          return reading.value === null
            ? refused('Write when the interval begins, such as 2 h.')
            : { ok: true, value: reading.value };
        },
        save: (fromMin) => put({ fromMin }),
        problems: [],
        numeric: true,
      }),
      'number',
    )}
    ${stackCell(
      'Until',
      textInput<number | null>({
        place: place('toMin'),
        label: `End of ${name}`,
        text: interval.toMin === null ? '' : durationText(interval.toMin),
        placeholder: 'any time later',
        read: readDuration,
        save: (toMin) => put({ toMin }),
        problems: [],
        numeric: true,
      }),
      'number',
    )}
    ${stackCell(
      'Scuff-sanding',
      checkInput(place('scuff'), 'scuff-sand first', interval.scuff, (scuff) => put({ scuff })),
    )}
    ${stackCell(
      '',
      removeButton(
        name,
        () =>
          void saveList(
            product,
            product.recoat.filter((_, at) => at !== index),
          ),
      ),
      'acts',
    )}
  </tr>`;
}
