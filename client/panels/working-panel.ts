import './panels.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { guard } from 'lit-html/directives/guard.js';
import { ref } from 'lit-html/directives/ref.js';
import type { ProjectState } from '../../server/http/contract.ts';
import type { Figure, WorkingInput } from '../../server/planning/figure.ts';
import { screenIcon } from '../fields/screen-icons.ts';
import { canonicalText, figureText } from '../format/figure-text.ts';
import { icon } from '../shell/icons.ts';
import { type AppState, actions } from '../state/store.ts';
import { figureTitle } from './figure-title.ts';
import { followFigure, holdFocus } from './sheet-focus.ts';

type OpenWorking = NonNullable<AppState['working']>;

/** The sheet that says how one number was worked out; its frame is the shell's. */
export function renderWorkingPanel(state: AppState): TemplateResult {
  const { working, project } = state;
  if (working === null || project === null) return html``;
  const { name, subject } = figureTitle(project, working.at);
  followFigure();
  return html`
    <header class="sheet-head working-head">
      ${trail(project, working)}
      <div class="working-bar">
        ${
          working.trail.length === 0
            ? nothing
            : html`<button
              type="button"
              class="button plain icon"
              aria-label="Back to the figure before"
              title="Back"
              @click=${actions.backWorking}
            >
              ${screenIcon('back')}
            </button>`
        }
        <h2 id="working-title" tabindex="-1" ${ref(holdFocus)}>${name}<span>${subject}</span></h2>
        <button
          type="button"
          class="button plain icon"
          aria-label="Close the working"
          title="Close (Esc)"
          @click=${actions.closeWorking}
        >
          ${icon('close')}
        </button>
      </div>
    </header>
    <div class="sheet-body working-body" aria-live="polite">
      ${
        working.figure === null
          ? html`<p class="working-wait">Looking it up…</p>`
          : guard([working.figure, project.settings], () => body(project, working.figure as Figure))
      }
    </div>
  `;
}

/** The figures walked through to get here; each leads back to itself. */
function trail(project: ProjectState, { trail: steps }: OpenWorking): TemplateResult | typeof nothing {
  if (steps.length === 0) return nothing;
  return html`<nav class="working-trail" aria-label="Figures opened before">
    <ol>
      ${steps.map((at, index) => {
        const { name, subject } = figureTitle(project, at);
        return html`<li>
          <button type="button" class="figure" title=${subject} @click=${() => void goBackTo(steps.length - index)}>
            ${name}
          </button>
        </li>`;
      })}
    </ol>
  </nav>`;
}

function goBackTo(steps: number): void {
  for (let step = 0; step < steps; step += 1) actions.backWorking();
}

function body({ settings }: ProjectState, { value, unit, working }: Figure): TemplateResult {
  const canonical = canonicalText(value, unit, settings);
  return html`
    <p class="working-value">
      <strong>${figureText(value, unit, settings)}</strong>
      ${canonical === null ? nothing : html`<span>${canonical}</span>`}
    </p>
    <section aria-labelledby="working-rule">
      <h3 id="working-rule">Rule</h3>
      <p class="working-rule">${ruleLines(working.rule)}</p>
    </section>
    ${
      working.inputs.length === 0
        ? nothing
        : html`<section aria-labelledby="working-inputs">
          <h3 id="working-inputs">What went in</h3>
          <table class="working-inputs">
            <thead class="visually-hidden">
              <tr><th scope="col">Input and where it comes from</th><th scope="col">Value</th></tr>
            </thead>
            <tbody>
              ${working.inputs.map((input) => inputRow(input, settings))}
            </tbody>
          </table>
        </section>`
    }
    ${
      working.notes === undefined || working.notes.length === 0
        ? nothing
        : html`<section aria-labelledby="working-notes">
          <h3 id="working-notes">Worth knowing</h3>
          <ul class="working-notes">${working.notes.map((note) => html`<li>${note}</li>`)}</ul>
        </section>`
    }
  `;
}

function inputRow(input: WorkingInput, settings: ProjectState['settings']): TemplateResult {
  const { name, value, unit, from, source } = input;
  const text =
    typeof value === 'string' || unit === '' ? figurelessText(value) : figureText(value, unit, settings);
  const canonical = typeof value === 'number' && unit !== '' ? canonicalText(value, unit, settings) : null;
  return html`<tr>
    <th scope="row">
      ${name}${source === undefined || source === '' ? nothing : html`<small>${source}</small>`}
    </th>
    <td>
      ${
        from === undefined
          ? html`<span class=${value === null ? 'unknown' : ''}>${text}</span>`
          : html`<button
            type="button"
            class="figure ${value === null ? 'unknown' : ''}"
            data-figure=${from}
            title="Open how this was worked out"
            @click=${() => void actions.openWorking(from)}
          >${text}</button>`
      }
      ${canonical === null ? nothing : html`<small>${canonical}</small>`}
    </td>
  </tr>`;
}

function figurelessText(value: number | string | null): string {
  return value === null ? 'unknown' : String(value);
}

/** A rule that reads "x = y" stands better with the equals sign leading the second line. */
function ruleLines(rule: string): TemplateResult {
  const at = rule.indexOf(' = ');
  if (at === -1) return html`${rule}`;
  return html`<span>${rule.slice(0, at)}</span> <span>= ${rule.slice(at + 3)}</span>`;
}
