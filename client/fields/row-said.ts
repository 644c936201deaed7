import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem, ProblemTable } from '../../server/planning/problem.ts';

/** What there is to say about a row whose fields are not on the page. */
export function rowSaid(
  problems: readonly Problem[],
  table: ProblemTable,
  id: string,
): readonly TemplateResult[] | typeof nothing {
  const own = problems.filter(({ at }) => at.table === table && at.id === id);
  return own.length === 0
    ? nothing
    : own.map(
        ({ severity, message, wayOut }) =>
          html`<span class="said ${severity}">${message} <span class="way-out">${wayOut}</span></span>`,
      );
}
