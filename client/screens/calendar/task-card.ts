import { render, type TemplateResult } from 'lit-html';

/** The card beside a bar under the pointer or the keyboard. There is one; it stays while the pointer is on it. */

const GAP = 8;
const LEAVE_MS = 180;

let card: HTMLElement | null = null;
let leaving: ReturnType<typeof setTimeout> | undefined;

export function showTaskCard(anchor: Element, title: string, content: TemplateResult): void {
  clearTimeout(leaving);
  card ??= makeCard();
  render(content, card);
  card.setAttribute('aria-label', title);
  if (!card.isConnected) document.querySelector('#main')?.append(card);
  if (!card.matches(':popover-open')) card.showPopover();
  place(card, anchor.getBoundingClientRect());
}

export function hideTaskCard(): void {
  clearTimeout(leaving);
  if (card?.matches(':popover-open') === true) card.hidePopover();
  card?.remove();
}

/** Hides the card unless the pointer goes onto it. */
export function leaveTaskCard(): void {
  clearTimeout(leaving);
  leaving = setTimeout(hideTaskCard, LEAVE_MS);
}

function makeCard(): HTMLElement {
  const made = document.createElement('div');
  made.className = 'task-card';
  made.popover = 'manual';
  made.setAttribute('role', 'tooltip');
  made.addEventListener('pointerenter', () => clearTimeout(leaving));
  made.addEventListener('pointerleave', leaveTaskCard);
  document.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') hideTaskCard();
  });
  // The bar moves away under its card.
  document.addEventListener('scroll', hideTaskCard, { capture: true, passive: true });
  return made;
}

/** Below the bar, or above it where there is no room, and never beyond the page's sides. */
function place(element: HTMLElement, bar: DOMRect): void {
  const { width, height } = element.getBoundingClientRect();
  const x = Math.max(GAP, Math.min(bar.left, innerWidth - width - GAP));
  const below = bar.bottom + GAP;
  const y = below + height + GAP <= innerHeight ? below : Math.max(GAP, bar.top - height - GAP);
  element.style.translate = `${Math.round(x)}px ${Math.round(y)}px`;
}
