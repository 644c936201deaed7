/** Rows of a list carry `data-row="table/id"`, their buttons `data-act`. The keyboard keeps its place by these. */

function later(work: () => void): void {
  requestAnimationFrame(work);
}

/** Puts the focus into the first control of a row that was just added. */
export function focusRow(table: string, id: string | null): void {
  if (id === null) return;
  later(() =>
    document
      .querySelector<HTMLElement>(`[data-row="${CSS.escape(`${table}/${id}`)}"] :is(input, select, button)`)
      ?.focus(),
  );
}

/** Puts the focus where work goes on after a dialog whose opener is about to leave the page. */
export function focusNext(selector: string): void {
  later(() => [...document.querySelectorAll<HTMLElement>(selector)].at(-1)?.focus());
}

/** Gives the focus back to a row's button after the row has moved; an end stop hands it to the other direction. */
export function focusAct(table: string, id: string, ...acts: readonly string[]): void {
  later(() => {
    const row = document.querySelector(`[data-row="${CSS.escape(`${table}/${id}`)}"]`);
    for (const act of acts) {
      const button = row?.querySelector<HTMLButtonElement>(`[data-act="${act}"]`);
      if (button !== null && button !== undefined && !button.disabled) return button.focus();
    }
  });
}

/** Where the focus goes when the row around `from` disappears: the row after it, before it, or the list's add button. */
export function focusAfterRemoval(from: Element): () => void {
  const row = from.closest('[data-row]');
  const table = row?.getAttribute('data-row')?.split('/')[0];
  const beside = [row?.nextElementSibling, row?.previousElementSibling]
    .map((element) => element?.getAttribute('data-row') ?? null)
    .find((name) => name !== null);
  return () =>
    later(() => {
      const next =
        beside === undefined
          ? null
          : document.querySelector<HTMLElement>(`[data-row="${CSS.escape(beside)}"] [data-act="remove"]`);
      const target = next ?? document.querySelector<HTMLElement>(`[data-add="${table ?? ''}"]`);
      target?.focus();
    });
}
