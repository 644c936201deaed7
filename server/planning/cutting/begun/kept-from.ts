/**
 * Names the sheet that an offcut on hand was cut from, so that it is put in stock once only.
 *
 * `key`: of the layout, see layoutKey. `sheet`: which of its equal sheets, from 0. Size of the offcut: mm. Result: a text that
 * begins with the key. Rule of ours. Example: keptFrom('0f', 1, 800, 300) is "0f 1 800x300".
 */
export function keptFrom(key: string, sheet: number, lengthMm: number, widthMm: number): string {
  return `${key} ${sheet} ${lengthMm}x${widthMm}`;
}

/** The key of the layout that an offcut was cut from; empty for stock that came from elsewhere. */
export function layoutKeptFrom(text: string): string {
  return text.split(' ')[0] ?? '';
}

/** The layout and the sheet of it that an offcut was cut from: "0f 1". */
export function sheetKeptFrom(text: string): string {
  return text.split(' ').slice(0, 2).join(' ');
}
