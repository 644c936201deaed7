import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import { actions } from '../state/store.ts';

/** More than so many are folded away. */
const SHOWN = 3;

/** What an answer has to say, each with the way to its cell. */
export function answerProblems(problems: readonly Problem[]): TemplateResult | typeof nothing {
  if (problems.length === 0) return nothing;
  const rest = problems.slice(SHOWN);
  return html`<div class="no-print">
    <ul class="said-list">${problems.slice(0, SHOWN).map(item)}</ul>
    ${
      rest.length === 0
        ? nothing
        : html`<details>
          <summary>${rest.length} more to look at</summary>
          <ul class="said-list">${rest.map(item)}</ul>
        </details>`
    }
  </div>`;
}

function item({ severity, message, wayOut, at }: Problem): TemplateResult {
  return html`<li class="said ${severity}">
    ${message} ${wayOut}
    <button type="button" class="link" @click=${() => actions.goTo(at)}>Go there</button>
  </li>`;
}
