import { html, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { type ColumnLayout, columnOrder, movedColumn, movedGroup } from '../../../grid/column-layout.ts';
import { icon } from '../../../shell/icons.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import { openPanel } from './open-panel.ts';

export interface ColumnActs {
  readonly columns: readonly PartColumn[];
  layout(): ColumnLayout;
  isShown(columnId: string): boolean;
  arrange(layout: ColumnLayout): void;
  usual(): void;
}

/** Which columns are shown, in which order, and the way back to the usual ones. Alt+Up and Alt+Down move the line in focus. */
export function openColumnsPanel(button: HTMLElement, acts: ColumnActs): void {
  const { columns } = acts;
  const byId = new Map(columns.map((column) => [column.id, column]));

  openPanel(button, 'Columns', (redraw) => {
    const order = columnOrder(columns, acts.layout().order).flatMap((id) => byId.get(id) ?? []);
    const free = order.filter(({ pinned }) => pinned !== true);
    const groups = new Set<string>();
    return html`
      <h2>Columns</h2>
      <div class="ticks columns" @keydown=${onKey}>
        ${free.map((column) => {
          const { group } = column;
          if (group === undefined) return line([column], headerText(column), 'column', column.id);
          if (groups.has(group)) return line([column], headerText(column), 'column inner', column.id);
          groups.add(group);
          const members = free.filter((one) => one.group === group);
          return html`${line(members, group, 'group', group)} ${line([column], headerText(column), 'column inner', column.id)}`;
        })}
      </div>
      <div class="panel-acts">
        <button class="button plain" @click=${back}>Back to the usual columns</button>
      </div>
    `;

    function line(members: readonly PartColumn[], text: string, kind: string, name: string): TemplateResult {
      const shown = members.filter(({ id }) => acts.isShown(id)).length;
      const mover = (step: 1 | -1, words: string): TemplateResult =>
        html`<button
          class="button plain mover"
          tabindex="-1"
          aria-label="Move ${text} ${words}"
          title="Move ${words} (Alt+${step < 0 ? 'Up' : 'Down'})"
          ?disabled=${moved(kind, name, step) === null}
          @click=${() => move(kind, name, step)}
        >
          ${icon(step < 0 ? 'up' : 'down')}
        </button>`;
      return html`<div class="tick-line ${kind}">
        <label class="tick">
          <input
            type="checkbox"
            data-kind=${kind}
            data-name=${name}
            .checked=${live(shown === members.length)}
            .indeterminate=${live(shown > 0 && shown < members.length)}
            @change=${(event: Event) => show(members, (event.target as HTMLInputElement).checked)}
          />
          <span>${text}</span>
        </label>
        ${mover(-1, 'to the left')} ${mover(1, 'to the right')}
      </div>`;
    }

    function show(members: readonly PartColumn[], visible: boolean): void {
      const layout = acts.layout();
      const said = Object.fromEntries(members.map(({ id }) => [id, visible]));
      acts.arrange({ ...layout, visible: { ...layout.visible, ...said } });
      redraw();
    }

    function moved(kind: string, name: string, step: 1 | -1): string[] | null {
      const { order } = acts.layout();
      return kind === 'group'
        ? movedGroup(columns, order, name, step)
        : movedColumn(columns, order, name, step);
    }

    function move(kind: string, name: string, step: 1 | -1): void {
      const order = moved(kind, name, step);
      if (order === null) return;
      acts.arrange({ ...acts.layout(), order });
      redraw();
      const line = `input[data-name="${CSS.escape(name)}"]${kind === 'group' ? '[data-kind="group"]' : ':not([data-kind="group"])'}`;
      document.querySelector<HTMLElement>(`.list-panel ${line}`)?.focus();
    }

    function onKey(event: KeyboardEvent): void {
      const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
      if (!event.altKey || step === 0 || !(event.target instanceof HTMLInputElement)) return;
      event.preventDefault();
      const { kind, name } = event.target.dataset;
      if (kind !== undefined && name !== undefined) move(kind, name, step);
    }

    function back(): void {
      acts.usual();
      redraw();
    }
  });
}

function headerText({ header }: PartColumn): string {
  return typeof header === 'string' ? header : header();
}
