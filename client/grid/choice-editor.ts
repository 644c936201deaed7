import type { ICellEditorComp, ICellEditorParams } from 'ag-grid-community';
import type { Choice, SheetRow } from './grid-column.ts';
import { filterChoices } from './match-choice.ts';
import type { EditorExtras } from './text-editor.ts';

type Params = ICellEditorParams<SheetRow, unknown> & EditorExtras;

/** A line to type in over a list that typing narrows; Enter and Tab take the marked choice, Escape leaves the cell as it was. */
export class ChoiceEditor implements ICellEditorComp {
  private readonly box = document.createElement('div');
  private readonly input = document.createElement('input');
  private readonly list = document.createElement('ul');
  private readonly nothing = document.createElement('p');
  private choices: readonly Choice[] = [];
  private offered: readonly Choice[] = [];
  private marked = -1;
  private current = '';
  private finish: () => void = () => undefined;
  private leaveBy: EditorExtras['leaveBy'] = () => undefined;

  init(params: Params): void {
    const { sheetColumn, eventKey, data } = params;
    this.choices = sheetColumn.choices?.() ?? [];
    this.current = sheetColumn.raw(data);
    this.finish = () => params.stopEditing(true);
    this.leaveBy = params.leaveBy;
    this.build(sheetColumn.describe, sheetColumn.width);
    const typed = eventKey !== null && eventKey.length === 1 ? eventKey : '';
    this.input.value = typed;
    this.offer(typed);
    const shown = this.choices.find((choice) => choice.value === this.current);
    this.input.placeholder = shown?.text ?? this.current;
  }

  getGui(): HTMLElement {
    return this.box;
  }

  isPopup(): boolean {
    return true;
  }

  getPopupPosition(): 'over' {
    return 'over';
  }

  afterGuiAttached(): void {
    // The grid puts the editor in a popup of its own, which needs a name as well.
    this.box
      .closest('[role="dialog"]')
      ?.setAttribute('aria-label', this.input.getAttribute('aria-label') ?? '');
    this.input.focus();
    this.showMarked();
  }

  getValue(): string | null {
    const choice = this.offered[this.marked];
    return choice === undefined || choice.value === this.current ? null : choice.value;
  }

  /** True while nothing is called what is typed, so that there is nothing to take. */
  isStuck(): boolean {
    return this.offered.length === 0;
  }

  private build(label: string, width: number): void {
    this.box.className = 'choice-editor';
    this.box.style.minWidth = `${Math.max(width, 220)}px`;
    this.input.className = 'cell-input';
    this.input.setAttribute('role', 'combobox');
    this.input.setAttribute('aria-label', label);
    this.input.setAttribute('aria-expanded', 'true');
    this.input.setAttribute('aria-controls', 'choice-list');
    this.input.setAttribute('aria-autocomplete', 'list');
    this.input.autocomplete = 'off';
    this.input.spellcheck = false;
    this.list.id = 'choice-list';
    this.list.setAttribute('role', 'listbox');
    this.list.setAttribute('aria-label', label);
    this.nothing.className = 'choice-nothing';
    this.nothing.setAttribute('role', 'status');
    this.box.append(this.input, this.list, this.nothing);
    this.input.addEventListener('input', () => this.offer(this.input.value));
    this.input.addEventListener('keydown', (event) => this.key(event));
    // mousedown would take the focus from the input and end the edit before the click is heard.
    this.list.addEventListener('mousedown', (event) => event.preventDefault());
    this.list.addEventListener('click', (event) => this.pick(event));
  }

  private offer(typed: string): void {
    this.offered = filterChoices(this.choices, typed);
    const current = this.offered.findIndex((choice) => choice.value === this.current);
    this.marked = typed.trim() === '' ? current : this.offered.length > 0 ? 0 : -1;
    this.list.replaceChildren(...this.offered.map(option));
    this.list.hidden = this.offered.length === 0;
    this.nothing.textContent = this.offered.length === 0 ? `Nothing here is called “${typed.trim()}”.` : '';
    this.showMarked();
  }

  private key(event: KeyboardEvent): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && this.offered.length > 0) {
      event.preventDefault();
      event.stopPropagation();
      this.marked = (this.marked + step + this.offered.length) % this.offered.length;
      this.showMarked();
    }
    if (event.key !== 'Enter' && event.key !== 'Tab') return;
    // They commit; with nothing to commit they would silently drop what was typed.
    if (this.offered.length === 0) {
      event.preventDefault();
      event.stopPropagation();
    } else this.leaveBy(event);
  }

  private pick(event: MouseEvent): void {
    const item = (event.target as Element).closest('li');
    if (item === null) return;
    this.marked = [...this.list.children].indexOf(item);
    this.finish();
  }

  private showMarked(): void {
    for (const [index, item] of [...this.list.children].entries()) {
      item.setAttribute('aria-selected', String(index === this.marked));
      if (index === this.marked) item.scrollIntoView({ block: 'nearest' });
    }
    if (this.marked < 0) this.input.removeAttribute('aria-activedescendant');
    else this.input.setAttribute('aria-activedescendant', `choice-${this.marked}`);
  }
}

function option(choice: Choice, index: number): HTMLElement {
  const item = document.createElement('li');
  item.id = `choice-${index}`;
  item.setAttribute('role', 'option');
  if (choice.swatch !== undefined) {
    const swatch = document.createElement('span');
    swatch.className = 'swatch';
    swatch.style.background = choice.swatch;
    item.append(swatch);
  }
  const name = document.createElement('span');
  name.textContent = choice.text;
  item.append(name);
  const more = choice.detail ?? choice.hint;
  if (more !== undefined) {
    const detail = document.createElement('small');
    detail.textContent = more;
    item.append(detail);
  }
  return item;
}
