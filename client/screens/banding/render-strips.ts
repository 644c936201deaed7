import { html, type TemplateResult } from 'lit-html';
import type { PartPlanView, PlanView } from '../../../server/http/contract.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { figureButton } from '../../panels/figure-button.ts';
import { edgesText } from '../../panels/figure-title.ts';
import { actions } from '../../state/store.ts';

type Banding = PlanView['banding'][number];
type Strip = PartPlanView['strips'][number];

/** Every strip of one banding, by part and edge. */
export function renderStrips({ project, formats }: ScreenBook, banding: Banding): TemplateResult {
  const names = new Map(project.rows.parts.map(({ id, name }) => [id, name]));
  const rows = project.plan.parts.flatMap((part) =>
    part.strips.filter(({ bandingId }) => bandingId === banding.id).map((strip) => ({ part, strip })),
  );
  return html`<details class="strips" ?open=${rows.length <= 12}>
    <summary>Strips by part and edge</summary>
    <table class="table" aria-label="Strips of ${banding.name}">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col" class="wide-only">Edge</th>
          <th scope="col" class="number">Pieces</th>
          <th scope="col" class="number">To cover</th>
          <th scope="col" class="number">Cut strip to</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(({ part, strip }) => row(formats, names.get(part.id) || 'part without a name', part, strip))}
      </tbody>
    </table>
  </details>`;
}

function row(formats: ScreenBook['formats'], name: string, part: PartPlanView, strip: Strip): TemplateResult {
  const at = `parts/${part.id}/strips/${strip.id}`;
  const edge = `${edgesText(strip.id)}${strip.closed ? ', all round' : ''}`;
  const figure = (path: string, text: string, what: string): TemplateResult =>
    html`<td class="number">${figureButton(path, text, `${what}, ${name}, ${edge}`)}</td>`;
  return html`<tr>
    <td>
      <button type="button" class="link" @click=${() => showPart(part.id)}>${name}</button>
      <span class="small narrow-only">${edge}</span>
    </td>
    <td class="wide-only">${edge}</td>
    ${figure(`parts/${part.id}/quantity`, formats.count(part.quantity), 'Pieces')}
    ${figure(`${at}/runMm`, formats.length(strip.runMm), 'To cover')}
    ${figure(`${at}/stripMm`, formats.length(strip.stripMm), 'Strip')}
  </tr>`;
}

function showPart(id: string): void {
  actions.selectPart(id);
  actions.goTo({ table: 'parts', id, field: 'name' });
}
