import type { ColumnLayout } from '../../grid/column-layout.ts';
import { readColumnLayout, writeColumnLayout } from '../../grid/read-column-layout.ts';

const KEY = 'plywright.part-columns';

/** How the columns of the part list were last arranged in this browser. */
export const columnMemory = {
  get: (): ColumnLayout => readColumnLayout(localStorage.getItem(KEY)),
  set: (layout: ColumnLayout): void => localStorage.setItem(KEY, writeColumnLayout(layout)),
};
