import './typing-card.css';
import { type NamePlace, nameAtCaret, type OfferedNames, offeredNames } from './name-at-caret.ts';
import type { TypedReading, TypingHelp } from './typing-help.ts';

/** A pause this long in the typing asks for the reading, ms. */
const ASK_AFTER_MS = 150;
/** A text that cannot be read is usually half typed: only a longer pause says so, ms beyond the first. */
const COMPLAIN_AFTER_MS = 500;
const GAP_PX = 4;
const LIST_ID = 'typing-names';
const NOTHING: OfferedNames = { names: [], marked: -1 };

export interface TypingCard {
  /** Offers names and asks for the reading of what the input holds now. */
  typed(): void;
  /** True when the key was meant for the list of names, which then has done with it. */
  key(event: KeyboardEvent): boolean;
  remove(): void;
}

/** A card beside a cell that is being typed in: names to complete, and what the text is read as. */
export function typingCard(input: HTMLInputElement, cell: HTMLElement, help: TypingHelp): TypingCard {
  const card = document.createElement('div');
  const list = document.createElement('ul');
  const reading = document.createElement('p');
  let offer = NOTHING;
  let place: NamePlace | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** What is wrong with the text as it stands, kept back while names are offered that may put it right. */
  let complaint: TypedReading | null = null;
  /** Answers to anything but the newest question are dropped. */
  let asked = 0;

  card.className = 'typing-card';
  card.hidden = true;
  list.id = LIST_ID;
  list.setAttribute('role', 'listbox');
  list.setAttribute('aria-label', 'Named sizes');
  reading.setAttribute('role', 'status');
  reading.setAttribute('aria-live', 'polite');
  card.append(list, reading);
  (cell.closest('.sheet-host') ?? document.body).append(card);
  input.setAttribute('role', 'combobox');
  input.setAttribute('aria-autocomplete', 'list');
  input.setAttribute('aria-controls', LIST_ID);
  // The press would take the focus from the input and end the edit before the click is heard.
  card.addEventListener('mousedown', (event) => event.preventDefault());
  list.addEventListener('click', (event) => {
    const item = event.target instanceof Element ? event.target.closest('li') : null;
    if (item !== null) take([...list.children].indexOf(item));
  });
  input.addEventListener('input', typed);
  window.addEventListener('scroll', settle, { capture: true, passive: true });
  showNames(NOTHING);

  function typed(): void {
    place = nameAtCaret(input.value, input.selectionStart ?? input.value.length);
    showNames(place === null ? NOTHING : offeredNames(help.names(), place.typed));
    clearTimeout(timer);
    complaint = null;
    asked += 1;
    reading.classList.add('stale');
    if (input.value.trim() === '') showReading(null);
    else timer = setTimeout(ask, ASK_AFTER_MS, input.value, asked);
  }

  async function ask(text: string, question: number): Promise<void> {
    const answer = await help.read(text);
    if (question !== asked) return;
    if (answer === null || answer.ok) showReading(answer);
    else timer = setTimeout(complain, COMPLAIN_AFTER_MS, answer);
  }

  function complain(answer: TypedReading): void {
    complaint = answer;
    showReading(list.hidden ? answer : null);
  }

  function showReading(answer: TypedReading | null): void {
    reading.classList.remove('stale');
    reading.replaceChildren();
    if (answer !== null) {
      const text = document.createElement('strong');
      text.textContent = answer.ok ? `Reads as ${answer.text}` : answer.text;
      const detail = document.createElement('span');
      detail.textContent = answer.detail;
      reading.append(text, ...(answer.detail === '' ? [] : [' ', detail]));
    }
    reading.dataset.kind = answer?.ok === false ? 'refusal' : 'reading';
    settle();
  }

  function showNames(next: OfferedNames): void {
    offer = next;
    list.replaceChildren(
      ...next.names.map(({ name, value }, index) => {
        const item = document.createElement('li');
        item.id = `${LIST_ID}-${index}`;
        item.setAttribute('role', 'option');
        const detail = document.createElement('small');
        detail.textContent = value;
        item.append(name, detail);
        return item;
      }),
    );
    list.hidden = next.names.length === 0;
    input.setAttribute('aria-expanded', String(!list.hidden));
    mark(next.marked);
    settle();
  }

  function mark(index: number): void {
    offer = { ...offer, marked: index };
    for (const [at, item] of [...list.children].entries())
      item.setAttribute('aria-selected', String(at === index));
    if (index < 0) input.removeAttribute('aria-activedescendant');
    else input.setAttribute('aria-activedescendant', `${LIST_ID}-${index}`);
  }

  function take(index: number): void {
    const name = offer.names[index]?.name;
    if (name === undefined || place === null) return;
    input.setRangeText(name, place.start, place.end, 'end');
    typed();
    showNames(NOTHING);
  }

  function key(event: KeyboardEvent): boolean {
    if (list.hidden || event.isComposing || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey)
      return false;
    const count = offer.names.length;
    switch (event.key) {
      case 'ArrowDown':
        mark((offer.marked + 1) % count);
        return true;
      case 'ArrowUp':
        mark(offer.marked <= 0 ? count - 1 : offer.marked - 1);
        return true;
      case 'Escape':
        showNames(NOTHING);
        if (complaint !== null) showReading(complaint);
        return true;
      case 'Enter':
      case 'Tab':
        if (offer.marked < 0) return false;
        take(offer.marked);
        return true;
      default:
        return false;
    }
  }

  /** Below the cell, or above it where there is no room; never outside the window. */
  function settle(): void {
    card.hidden = list.hidden && reading.childElementCount === 0;
    if (card.hidden) return;
    const box = cell.getBoundingClientRect();
    card.style.minWidth = `${box.width}px`;
    const size = card.getBoundingClientRect();
    const below = box.bottom + GAP_PX + size.height < window.innerHeight;
    card.style.top = `${below ? box.bottom + GAP_PX : box.top - GAP_PX - size.height}px`;
    card.style.left = `${Math.max(GAP_PX, Math.min(box.left, window.innerWidth - size.width - GAP_PX))}px`;
  }

  function remove(): void {
    clearTimeout(timer);
    asked += 1;
    window.removeEventListener('scroll', settle, { capture: true });
    card.remove();
  }

  return { typed, key, remove };
}
