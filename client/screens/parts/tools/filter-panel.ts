import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { openPanel } from './open-panel.ts';

/** One value of a column, with the number of rows that hold it. */
export interface FilterValue {
  readonly value: string;
  readonly text: string;
  readonly rows: number;
}

/** Longer lists can be narrowed by typing. */
const NARROWED_FROM = 10;

/** The values of a column with ticks; every tick shows at once in the list behind. `chosen` null: all of them. */
export function openFilterPanel(
  button: HTMLElement,
  name: string,
  values: readonly FilterValue[],
  chosen: () => ReadonlySet<string> | null,
  choose: (values: ReadonlySet<string> | null) => void,
): void {
  let narrow = '';

  openPanel(button, `Filter by ${name}`, (redraw) => {
    const now = chosen();
    const isOn = (value: string): boolean => now === null || now.has(value);
    const on = values.filter(({ value }) => isOn(value)).length;
    const offered = values.filter(({ text }) =>
      text.toLocaleLowerCase().includes(narrow.toLocaleLowerCase()),
    );

    function set(next: ReadonlySet<string>): void {
      choose(values.every(({ value }) => next.has(value)) ? null : next);
      redraw();
    }
    function turn(value: string, shown: boolean): void {
      const next = new Set(values.flatMap((one) => (isOn(one.value) ? [one.value] : [])));
      if (shown) next.add(value);
      else next.delete(value);
      set(next);
    }
    return html`
      <h2>Show ${name}</h2>
      ${
        values.length < NARROWED_FROM
          ? nothing
          : html`<input
            class="input"
            type="search"
            aria-label="Find a value"
            placeholder="Find a value"
            autocomplete="off"
            @input=${(event: InputEvent) => {
              narrow = (event.target as HTMLInputElement).value;
              redraw();
            }}
          />`
      }
      <label class="tick all">
        <input
          type="checkbox"
          .checked=${live(on === values.length)}
          .indeterminate=${live(on > 0 && on < values.length)}
          @change=${(event: Event) =>
            set(new Set((event.target as HTMLInputElement).checked ? values.map(({ value }) => value) : []))}
        />
        <span>All</span>
      </label>
      <div class="ticks" role="group" aria-label="Values">
        ${offered.map((one) => tick(one, isOn(one.value), (shown) => turn(one.value, shown)))}
      </div>
    `;
  });
}

function tick({ text, rows }: FilterValue, on: boolean, turn: (shown: boolean) => void): TemplateResult {
  return html`<label class="tick">
    <input
      type="checkbox"
      .checked=${live(on)}
      @change=${(event: Event) => turn((event.target as HTMLInputElement).checked)}
    />
    <span>${text}</span><small>${rows}</small>
  </label>`;
}
