import { html } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { GroupField } from '../view/list-view.ts';
import { openPanel } from './open-panel.ts';

const CHOICES: readonly { readonly by: GroupField | null; readonly text: string }[] = [
  { by: null, text: 'No groups' },
  { by: 'section', text: 'By section' },
  { by: 'materialId', text: 'By material' },
];

export interface GroupActs {
  groupBy(): GroupField | null;
  setGroupBy(by: GroupField | null): void;
  openAll(open: boolean): void;
}

/** How the list is grouped, and all groups opened or closed at once. */
export function openGroupPanel(button: HTMLElement, acts: GroupActs): void {
  openPanel(button, 'Groups', (redraw, close) => {
    const now = acts.groupBy();
    return html`
      <fieldset class="ticks">
        <legend class="visually-hidden">Groups</legend>
        ${CHOICES.map(
          ({ by, text }) => html`<label class="tick">
            <input
              type="radio"
              name="group-by"
              .checked=${live(by === now)}
              @change=${() => {
                acts.setGroupBy(by);
                redraw();
              }}
            />
            <span>${text}</span>
          </label>`,
        )}
      </fieldset>
      <div class="panel-acts">
        <button class="button plain" ?disabled=${now === null} @click=${() => done(true)}>Open all</button>
        <button class="button plain" ?disabled=${now === null} @click=${() => done(false)}>Close all</button>
      </div>
    `;

    function done(open: boolean): void {
      acts.openAll(open);
      close();
    }
  });
}
