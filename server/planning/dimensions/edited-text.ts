/** Characters from `start` to before `end` give way to `text`; with `end` at `start` it is put in between. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * What does a text read once pieces of it are replaced? `edits`: places in the text as given, not overlapping, in any
 * order; those at one place follow each other as given. Result: the new text, all else untouched. No units, no source.
 *
 * Example: `ply + 2` with 2 mm in place of 6 to 7 is `ply + 2 mm`.
 */
export function editedText(text: string, edits: readonly TextEdit[]): string {
  let written = '';
  let done = 0;
  for (const { start, end, text: added } of edits.toSorted((a, b) => a.start - b.start)) {
    written += text.slice(done, start) + added;
    done = end;
  }
  return written + text.slice(done);
}
