import { render, type TemplateResult } from 'lit-html';

const GAP_PX = 4;
/** A press on the button of an open panel closes the panel first; the click that follows is not to open it again. */
const SAME_CLICK_MS = 350;

let closed: { readonly button: Element; readonly at: number } | null = null;

/**
 * Opens a small panel beside its button. It closes with Escape and with a press outside, and the focus goes back to
 * where it was. `content` is drawn again whenever it calls `redraw`.
 */
export function openPanel(
  button: HTMLElement,
  label: string,
  content: (redraw: () => void, close: () => void) => TemplateResult,
): void {
  if (closed?.button === button && performance.now() - closed.at < SAME_CLICK_MS) return;
  const panel = document.createElement('div');
  panel.className = 'list-panel';
  panel.popover = 'auto';
  panel.setAttribute('role', 'dialog');
  panel.setAttribute('aria-label', label);
  const redraw = (): void => void render(content(redraw, close), panel);
  const close = (): void => panel.hidePopover();
  panel.addEventListener('toggle', (event) => {
    if ((event as ToggleEvent).newState !== 'closed') return;
    closed = { button, at: performance.now() };
    button.removeAttribute('aria-expanded');
    panel.remove();
  });
  panel.addEventListener('keydown', (event) => {
    // Beyond the panel, Escape would close what else is open on the page.
    if (event.key === 'Escape') event.stopPropagation();
    walk(panel, event);
  });
  document.body.append(panel);
  redraw();
  panel.showPopover();
  button.setAttribute('aria-expanded', 'true');
  place(panel, button.getBoundingClientRect());
  panel.querySelector<HTMLElement>('input, button')?.focus();
}

/** Below the button, or above it where there is no room; never outside the window. The style sheet has its own idea on phones. */
function place(panel: HTMLElement, button: DOMRect): void {
  const { width, height } = panel.getBoundingClientRect();
  const below = button.bottom + GAP_PX + height < window.innerHeight;
  const top = below ? button.bottom + GAP_PX : Math.max(GAP_PX, button.top - GAP_PX - height);
  const left = Math.max(GAP_PX, Math.min(button.left, window.innerWidth - width - GAP_PX));
  panel.style.setProperty('--panel-top', `${top}px`);
  panel.style.setProperty('--panel-left', `${left}px`);
}

/** Arrow keys go from line to line; Enter on a tick closes, as the choice is made already. */
function walk(panel: HTMLElement, event: KeyboardEvent): void {
  if (!(event.target instanceof HTMLInputElement) || event.altKey) return;
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (event.key === 'Enter') {
    event.preventDefault();
    panel.hidePopover();
  }
  if (step === 0 || event.target.type === 'radio') return;
  event.preventDefault();
  const lines = [...panel.querySelectorAll<HTMLInputElement>('input')];
  lines[(lines.indexOf(event.target) + step + lines.length) % lines.length]?.focus();
}
