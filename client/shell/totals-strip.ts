import { html, type TemplateResult } from 'lit-html';
import type { ProjectState } from '../../server/http/contract.ts';
import { formatArea } from '../../server/planning/display/format-area.ts';
import { formatCount } from '../../server/planning/display/format-count.ts';
import { formatMetres } from '../../server/planning/display/format-metres.ts';
import { formatMoney } from '../../server/planning/display/format-money.ts';
import { formatVolume } from '../../server/planning/display/format-volume.ts';
import { figureButton } from '../panels/figure-button.ts';

/** The project in six numbers; each opens its working. */
export function renderTotals(project: ProjectState): TemplateResult {
  const { totals, buy } = project.plan;
  const { settings } = project;
  const open = buy.unpricedLines !== null && buy.unpricedLines > 0;
  const tax = settings.taxPercent === null ? 'before tax' : 'with tax';
  const cost = settings.taxPercent === null ? 'netMinor' : 'totalMinor';
  return html`<dl class="totals" aria-label="Totals">
    ${total('Pieces', 'totals/pieces', formatCount(totals.pieces))} ${total('Sheets', 'totals/sheets', formatCount(totals.sheets))}
    ${total('Banded', 'totals/bandedM', formatMetres(totals.bandedM, settings))}
    ${total('Finished', 'totals/finishM2', formatArea(totals.finishM2, settings), '', 'wide-only')}
    ${total('Liquid', 'totals/litres', formatVolume(totals.litres, settings))}
    ${total(
      html`Cost<span class="wide-only"> ${tax}</span>${open ? ', at least' : ''}`,
      `buy/${cost}`,
      `${formatMoney(buy[cost], settings.currency)}`,
      open ? `${formatCount(buy.unpricedLines)} lines have no price yet` : '',
    )}
  </dl>`;
}

function total(
  name: string | TemplateResult,
  at: string,
  text: string,
  hint = '',
  extra = '',
): TemplateResult {
  return html`<div class="total ${extra}" title=${hint}>
    <dt>${name}</dt>
    <dd>${figureButton(at, text)}</dd>
  </div>`;
}
