/** One step each time this many milliseconds pass while the pointer is held outside the body. */
const STEP_EVERY_MS = 60;

/** While the pressed pointer is outside the sheet's body, asks for one row or column more, until it is let go. */
export function startAutoScroll(
  host: HTMLElement,
  press: MouseEvent,
  step: (rows: number, columns: number) => void,
): void {
  const body = host.querySelector('.ag-grid-scrollable-area') ?? host;
  let pointer = { x: press.clientX, y: press.clientY };
  const timer = window.setInterval(() => {
    const box = body.getBoundingClientRect();
    const rows = pointer.y > box.bottom ? 1 : pointer.y < box.top ? -1 : 0;
    const columns = pointer.x > box.right ? 1 : pointer.x < box.left ? -1 : 0;
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
