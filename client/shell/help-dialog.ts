import { html } from 'lit-html';
import { openDialog } from './open-dialog.ts';

/** What the keyboard does, grouped as it is used. */
const SHORTCUTS: readonly {
  readonly title: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}[] = [
  {
    title: 'Cells',
    keys: [
      ['Typing', 'replaces the cell; arrows then move on'],
      ['F2', 'edits what is there'],
      ['Enter, Shift+Enter', 'takes the entry and moves down or up'],
      ['Tab, Shift+Tab', 'takes the entry and moves right or left'],
      ['Escape', 'leaves the cell as it was'],
      ['Delete', 'clears the selected cells'],
      ['Enter on a computed number', 'opens its working'],
    ],
  },
  {
    title: 'Ranges',
    keys: [
      ['Shift+Arrows', 'selects; with Ctrl to the edge'],
      ['Shift+Space, Ctrl+Space', 'selects whole rows, whole columns'],
      ['Ctrl+A', 'selects everything'],
      ['Ctrl+C, Ctrl+X, Ctrl+V', 'copies, cuts, pastes; from other spreadsheets too'],
      ['Ctrl+D, Ctrl+R', 'fills down, fills right'],
      ['Ctrl+Enter while typing', 'takes the entry into every selected cell'],
    ],
  },
  {
    title: 'The list',
    keys: [
      ['Ctrl+F', 'finds; Escape shows everything again'],
      ['Ctrl+Shift+L', 'filters by the column'],
      ['Alt+Left, Alt+Right', 'closes, opens the group'],
      ['On a header: Enter', 'sorts: up, down, list order'],
      ['Alt+Down', 'filters by the column'],
      ['Shift+Left, Shift+Right', 'moves the column'],
      ['Alt+Left, Alt+Right', 'makes it narrower, wider'],
    ],
  },
  {
    title: 'Rows',
    keys: [
      ['Ctrl+Enter', 'inserts a part below'],
      ['Alt+Up, Alt+Down', 'moves the selected parts; the mouse drags their numbers'],
      ['Alt+Shift+Down', 'duplicates the selected parts'],
      ['Ctrl+Delete', 'deletes the selected parts'],
    ],
  },
  {
    title: 'Everywhere',
    keys: [
      ['Ctrl+Z', 'undoes'],
      ['Ctrl+Y, Ctrl+Shift+Z', 'does again'],
      ['F6, Shift+F6', 'goes to the next or last region of the page'],
      ['Ctrl+P', 'prints the room as a sheet of paper'],
      ['Escape', 'closes the working and the problems'],
      ['?', 'opens this list'],
    ],
  },
];

export function openHelp(): void {
  if (document.querySelector('dialog[open]') !== null) return;
  openDialog(
    'Keyboard and help',
    (close) => html`
      <div class="body help">
        <h2>Keyboard</h2>
        <div class="shortcuts">
          ${SHORTCUTS.map(
            ({ title, keys }) => html`<section>
              <h3>${title}</h3>
              <dl>${keys.map(([key, does]) => html`<div><dt>${key}</dt><dd>${does}</dd></div>`)}</dl>
            </section>`,
          )}
        </div>
        <h2>Lengths</h2>
        <p>
          Write them as you would on paper: <code>600</code>, <code>60 cm</code>, <code>23 5/8</code>, <code>2'-6"</code>. A plain number is in the
          project's unit. <code>=</code> begins a sum with named sizes, such as <code>=shelf_width - 2*ply</code>.
        </p>
        <h2>Filling in</h2>
        <p>
          The small square at the corner of a selection fills the cells it is dragged over. Where the selection shows a step, the fill
          goes on in steps: <code>Shelf 1</code>, <code>Shelf 2</code> is followed by <code>Shelf 3</code>, and <code>300</code>,
          <code>350</code> by <code>400</code>. The last number in a text counts, and the rest has to be the same. A single cell is
          repeated; with Alt held when the mouse is let go (or Ctrl+Alt+D) it counts up by ones. Ctrl+D goes on in steps too when only
          the beginning of the selection is filled in.
        </p>
        <p>Every underlined number opens to show how it was worked out.</p>
        <div class="actions"><button class="button primary" @click=${close}>Close</button></div>
      </div>
    `,
  );
}
