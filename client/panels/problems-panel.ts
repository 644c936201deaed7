import './problems-panel.css';
import { html, type TemplateResult } from 'lit-html';
import type { Problem, ProblemPlace, Severity } from '../../server/planning/problem.ts';
import { icon } from '../shell/icons.ts';
import { type AppState, actions } from '../state/store.ts';
import { placeWords } from './place-words.ts';

const GROUPS: readonly { readonly severity: Severity; readonly title: string; readonly means: string }[] = [
  { severity: 'error', title: 'Errors', means: 'a figure cannot be worked out' },
  { severity: 'warning', title: 'Warnings', means: 'worked out, but doubtful' },
  { severity: 'note', title: 'Notes', means: 'worth knowing' },
];

/** Everything found in the user's data, worst first; each entry leads to its cell. */
export function renderProblemsPanel(state: AppState): TemplateResult {
  const problems = state.project?.plan.problems ?? [];
  return html`
    <header class="sheet-head">
      <h2>Problems</h2>
      <button class="button plain icon" aria-label="Close problems" @click=${close}>${icon('close')}</button>
    </header>
    <div class="sheet-body problems">
      ${
        problems.length === 0
          ? html`<p class="none">Nothing stands in the way: every cell is understood and every figure could be worked out.</p>`
          : GROUPS.map((group) =>
              renderGroup(
                state,
                group,
                problems.filter(({ severity }) => severity === group.severity),
              ),
            )
      }
    </div>
  `;
}

function renderGroup(
  state: AppState,
  group: (typeof GROUPS)[number],
  problems: readonly Problem[],
): TemplateResult {
  if (problems.length === 0) return html``;
  return html`<section class="problem-group ${group.severity}">
    <h3><span class="count ${group.severity}">${problems.length}</span> ${group.title} <small>${group.means}</small></h3>
    <ul>
      ${problems.map(
        (problem) => html`<li>
          <button class="problem" @click=${() => go(problem.at)}>
            <span class="place">${placeWords(state, problem.at)}</span>
            <span class="message">${problem.message}</span>
            <span class="way-out">${problem.wayOut}</span>
          </button>
        </li>`,
      )}
    </ul>
  </section>`;
}

/** On a narrow window the panel would cover the cell it leads to. */
function go(place: ProblemPlace): void {
  if (matchMedia('(width < 64rem)').matches) actions.showProblems(false);
  actions.goTo(place);
}

function close(): void {
  actions.showProblems(false);
  document.querySelector<HTMLElement>('#problems-button')?.focus();
}
