import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import { actions } from '../state/store.ts';

/** What the plan finds wrong with a catalogue product, and the way to it; nothing when all is well. */
export function productProblems(
  problems: readonly Problem[],
  productId: string,
  linked = true,
): TemplateResult | typeof nothing {
  const found = problems.filter(({ at }) => at.table === 'products' && at.id === productId);
  if (found.length === 0) return nothing;
  return html`<ul class="said-list">
    ${found.map(
      ({ severity, message, wayOut, at }) => html`<li class="said ${severity}">
        ${message} ${wayOut}
        ${linked ? html`<button type="button" class="link" @click=${() => actions.goTo(at)}>Open in the catalogue</button>` : nothing}
      </li>`,
    )}
  </ul>`;
}
