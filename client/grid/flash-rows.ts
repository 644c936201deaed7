/** Tints rows for a moment, as far as they are on screen; the style sheet says how long. */
export function flashRows(host: HTMLElement, keys: readonly string[]): void {
  // Once the grid has put the rows where they now belong.
  requestAnimationFrame(() => {
    for (const key of keys) {
      const row = host.querySelector(`.ag-row[row-id="${CSS.escape(key)}"]`);
      if (row === null) continue;
      row.classList.remove('just-moved');
      requestAnimationFrame(() => row.classList.add('just-moved'));
      row.addEventListener('animationend', () => row.classList.remove('just-moved'), { once: true });
    }
  });
}
