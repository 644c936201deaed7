import { getState } from '../state/store.ts';

/** Where the keyboard was when the sheet opened; it goes back there when the sheet closes. */
let opener: HTMLElement | null = null;
let title: HTMLElement | null = null;
let shownAt: string | null = null;

/** Given the sheet's title when it appears, and nothing when the sheet goes. */
export function holdFocus(element: Element | undefined): void {
  if (element instanceof HTMLElement) {
    opener = document.activeElement instanceof HTMLElement ? document.activeElement : null;
    title = element;
    followFigure();
    return;
  }
  const sheet = title?.closest('aside');
  // Whoever has gone on to work elsewhere with the sheet open is not pulled back.
  const inside = sheet?.contains(document.activeElement) ?? false;
  const back = opener;
  opener = null;
  title = null;
  shownAt = null;
  if (inside) requestAnimationFrame(() => back?.isConnected && back.focus());
}

/** Moves the focus to the title when another figure is shown, so that it is read out and the arrow keys scroll it. */
export function followFigure(): void {
  const at = getState().working?.at ?? null;
  if (title === null || at === shownAt) return;
  shownAt = at;
  const now = title;
  requestAnimationFrame(() => {
    now.focus({ preventScroll: true });
    now.closest('aside')?.querySelector('.sheet-body')?.scrollTo({ top: 0 });
  });
}
