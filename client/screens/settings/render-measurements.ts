import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { MeasurementRow } from '../../../server/http/contract.ts';
import type { Product } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { productChoices } from '../../fields/products-of.ts';
import { addAct, removeAct } from '../../fields/row-acts.ts';
import { addRow, saveChanges, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import { textInput } from '../../fields/text-input.ts';
import { readLengthMm } from '../../format/read-length-mm.ts';

/** Thickest material a measurement may be of, mm; the server takes no more. */
const THICKEST_MM = 1000;
const THINNEST_MM = 0.05;
/** Stands in a new row until its material is chosen or measured; a row without a material changes nothing. */
const PLACEHOLDER_MM = 18;

/** Thicknesses measured on the material in hand; each replaces the catalogue's figure throughout the project. */
export function renderMeasurements(book: ScreenBook): TemplateResult {
  const { measurements } = book.project.rows;
  const firstId = firstMaterial(book);
  return html`<section class="panel" aria-labelledby="measurements-title">
    <header>
      <div>
        <h2 id="measurements-title">Measured thickness</h2>
        <p>Plywood is seldom as thick as it is called. A thickness measured here counts everywhere in this project.</p>
      </div>
      ${addAct('measurements', 'Add measurement', () => void add(firstId))}
    </header>
    <div class="body flush">
      ${
        measurements.length === 0
          ? html`<p class="nothing-yet" data-list="measurements" tabindex="-1">Nothing measured: the catalogue's typical thickness is used.</p>`
          : stackTable(
              'Measured thickness',
              [
                ['Material', 'wide'],
                ['Measured', 'number'],
                ['Catalogue says', 'number'],
                ['Remove', 'acts'],
              ],
              repeat(
                measurements,
                ({ id }) => id,
                (row) => measurementRow(book, row),
              ),
              { list: 'measurements' },
            )
      }
    </div>
  </section>`;
}

function measurementRow(book: ScreenBook, row: MeasurementRow): TemplateResult {
  const { catalogue, problems, products, settings, formats } = book;
  const at = (field: string) => ({ table: 'measurements', id: row.id, field }) as const;
  const product = products.get(row.productId);
  const name = product?.name ?? 'material';
  const typical = typicalMm(product);
  return html`<tr role="row" data-row="measurements/${row.id}">
    ${stackCell(
      'Material',
      choiceInput({
        place: at('productId'),
        label: 'Material measured',
        value: row.productId,
        choices: productChoices(catalogue, ['sheet', 'board', 'banding'], row.productId, 'not chosen'),
        // Another material starts from its own catalogue figure: what was measured was the one before.
        save: (productId) =>
          saveChanges([
            {
              op: 'update',
              table: 'measurements',
              id: row.id,
              values: { productId, thicknessMm: typicalMm(products.get(productId)) ?? row.thicknessMm },
            },
          ]),
        problems,
      }),
      'wide',
    )}
    ${stackCell(
      'Measured',
      textInput({
        place: at('thicknessMm'),
        label: `Measured thickness of ${name}`,
        text: formats.thickness(row.thicknessMm),
        read: (typed) => readLengthMm(typed, settings.units, { leastMm: THINNEST_MM, mostMm: THICKEST_MM }),
        save: saveField('measurements', row.id, 'thicknessMm'),
        problems,
        numeric: true,
      }),
      'number',
    )}
    ${stackCell('Catalogue says', formats.thickness(typical), 'number')}
    ${stackCell('', removeAct('measurements', row.id, `measurement of ${name}`), 'acts')}
  </tr>`;
}

function typicalMm(product: Product | undefined): number | null {
  return product?.figures.thicknessActual?.typical ?? product?.figures.thicknessNominal?.typical ?? null;
}

/** The material a new measurement most likely is of: the first one used that has none yet. */
function firstMaterial({ project, products }: ScreenBook): { productId: string; thicknessMm: number } {
  const measured = new Set(project.rows.measurements.map(({ productId }) => productId));
  const used = project.plan.materials.find(({ id }) => !measured.has(id));
  return {
    productId: used?.id ?? '',
    thicknessMm: typicalMm(products.get(used?.id ?? '')) ?? PLACEHOLDER_MM,
  };
}

async function add(first: { productId: string; thicknessMm: number }): Promise<void> {
  focusRow('measurements', await addRow('measurements', first, 'add a measurement'));
}
