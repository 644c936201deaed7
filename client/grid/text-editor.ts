import type { ICellEditorComp, ICellEditorParams } from 'ag-grid-community';
import type { SheetColumn, SheetRow } from './grid-column.ts';
import { type TypingCard, typingCard } from './typing-card.ts';

/** A cell is edited as one line; what is pasted beyond this is a mistake. */
const LONGEST_CELL = 2000;

export interface EditorExtras {
  readonly sheetColumn: SheetColumn<SheetRow>;
  /** Commits and goes to a neighbour: Tab and Enter always do, arrows after typing over a cell. */
  readonly leaveBy: (event: KeyboardEvent) => void;
  /** Closes the editor with the cell as it was. */
  readonly giveUp: (event: KeyboardEvent) => void;
}

type Params = ICellEditorParams<SheetRow, unknown> & EditorExtras;

/**
 * One line of text. Typing over a cell starts from the typed character and lets arrow keys commit and move on;
 * F2, Enter and double click start from the cell's text with arrow keys moving the caret.
 */
export class TextEditor implements ICellEditorComp {
  private readonly input = document.createElement('input');
  private startText = '';
  private selectAll = false;
  private typedOver = false;
  private card: TypingCard | null = null;

  init(params: Params): void {
    const { sheetColumn, eventKey, data, eGridCell } = params;
    this.typedOver = eventKey !== null && eventKey.length === 1;
    this.startText = sheetColumn.editText?.(data) ?? sheetColumn.raw(data);
    this.selectAll = eventKey === null;
    this.input.className = 'cell-input';
    this.input.type = 'text';
    this.input.maxLength = LONGEST_CELL;
    this.input.spellcheck = false;
    this.input.autocomplete = 'off';
    this.input.setAttribute('aria-label', sheetColumn.describe);
    this.input.value = this.typedOver ? (eventKey ?? '') : this.startText;
    if (sheetColumn.numeric) this.input.classList.add('numeric');
    this.input.addEventListener('mousedown', () => {
      this.typedOver = false;
    });
    if (sheetColumn.typing !== undefined) this.card = typingCard(this.input, eGridCell, sheetColumn.typing);
    this.input.addEventListener('keydown', (event) => {
      if (this.card?.key(event)) {
        event.preventDefault();
        event.stopPropagation();
        return;
      }
      if (event.key === 'Escape' && !event.isComposing) return params.giveUp(event);
      const arrow = this.typedOver && event.key.startsWith('Arrow') && !event.shiftKey;
      if (arrow || event.key === 'Tab' || event.key === 'Enter') params.leaveBy(event);
    });
  }

  getGui(): HTMLElement {
    return this.input;
  }

  afterGuiAttached(): void {
    this.input.focus();
    if (this.selectAll) this.input.select();
    else this.input.setSelectionRange(this.input.value.length, this.input.value.length);
    if (this.typedOver) this.card?.typed();
  }

  destroy(): void {
    this.card?.remove();
  }

  /** Null when the text is as it was, so that opening a cell and pressing Enter never rewrites it in rounded form. */
  getValue(): string | null {
    return !this.typedOver && this.input.value === this.startText ? null : this.input.value.trim();
  }
}
