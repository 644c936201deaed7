import { editedText } from './edited-text.ts';
import { nameKey } from './name-key.ts';
import { nameNodes } from './name-nodes.ts';
import { parseExpression } from './parse-expression.ts';

/**
 * How does a cell read once a named size it uses is called differently?
 *
 * `text`: the cell as stored. `from`, `to`: names; capitals in `from` do not matter, as in `nameKey`. Result: the text
 * with every mention of the size replaced, spaces as typed. Only whole names count: `ply` is none of `ply_back`, of the
 * function `min(` or of a unit. A cell that is no calculation, or cannot be read as one, stays as it is. No units, no
 * source: a definition.
 *
 * Example: `=2*Ply - ply_back` with ply called board is `=2*board - ply_back`.
 */
export function renamedInExpression(text: string, from: string, to: string): string {
  if (!text.trimStart().startsWith('=')) return text;
  const parsed = parseExpression(text);
  if (!parsed.ok) return text;
  const start = text.indexOf('=') + 1;
  const uses = nameNodes(parsed.tree).filter(({ name }) => nameKey(name) === nameKey(from));
  return editedText(
    text,
    uses.map((use) => ({ start: start + use.start, end: start + use.end, text: to })),
  );
}
