/** One step each time this many milliseconds pass while the pointer is held outside the body. */
const STEP_EVERY_MS = 60;

/** While the pressed pointer is outside the sheet's body, asks for one row or column more, until it is let go. */
export function startAutoScroll(
  host: HTMLElement,
  press: MouseEvent,
  step: (rows: number, columns: number) => void,
): void {
  let pointer = { x: press.clientX, y: press.clientY };
  // A drag down the pinned columns is no drag to the left.
  const beganAmongPinned = press.clientX < bodyBox(host).left;
  const timer = window.setInterval(() => {
    const box = bodyBox(host);
    const rows = pointer.y > box.bottom ? 1 : pointer.y < box.top ? -1 : 0;
    const columns = pointer.x > box.right ? 1 : pointer.x < box.left && !beganAmongPinned ? -1 : 0;
    if (rows !== 0 || columns !== 0) step(rows, columns);
  }, STEP_EVERY_MS);
  const follow = (event: MouseEvent): void => {
    pointer = { x: event.clientX, y: event.clientY };
  };
  window.addEventListener('mousemove', follow);
  window.addEventListener(
    'mouseup',
    () => {
      window.clearInterval(timer);
      window.removeEventListener('mousemove', follow);
    },
    { once: true },
  );
}

/** The part of the sheet in which rows and columns scroll: without headers, pinned columns and totals. */
function bodyBox(host: HTMLElement): { top: number; bottom: number; left: number; right: number } {
  const box = (selector: string): DOMRect | undefined =>
    host.querySelector(selector)?.getBoundingClientRect();
  const viewport = box('.ag-grid-viewport') ?? host.getBoundingClientRect();
  const bottomRows = box('.ag-grid-pinned-bottom-rows');
  return {
    top: box('.ag-grid-pinned-top-rows')?.bottom ?? viewport.top,
    bottom: bottomRows === undefined || bottomRows.height === 0 ? viewport.bottom : bottomRows.top,
    left: box('.ag-row .ag-grid-pinned-left-cells')?.right ?? viewport.left,
    right: viewport.right,
  };
}
