import { MAX_EXPRESSION, UNIT_WORDS } from './constants.ts';
import { SyntaxError as ParseFault, parse } from './expression-parser.mjs';
import type { ExpressionTree } from './expression-tree.ts';
import { nameNodes } from './name-nodes.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

export interface ParsedExpression {
  readonly ok: true;
  readonly tree: ExpressionTree;
  /** Names used, as written, each once. */
  readonly names: readonly string[];
}

/**
 * What does a cell that starts with "=" say?
 *
 * `text`: the cell, equals sign included, at most 500 characters. Result: its tree and the names it uses, or a
 * refusal that says from where on it cannot be read. No units, no source: the grammar is ours (expression.peggy).
 *
 * Example: `=seat_depth - 2*ply` uses the names seat_depth and ply.
 */
export function parseExpression(text: string): ParsedExpression | Refusal {
  if (text.length > MAX_EXPRESSION)
    return refuse(
      'dimension-too-long',
      `The calculation is ${text.length} characters long.`,
      `Use at most ${MAX_EXPRESSION} characters; give a name to part of it under Sizes.`,
    );
  const body = text.trim().replace(/^=/, '');
  if (body.trim() === '')
    return refuse('expression-invalid', 'Nothing follows the equals sign.', 'Type a calculation or a size.');
  try {
    const tree = parse(body, { units: UNIT_WORDS });
    return { ok: true, tree, names: [...new Set(nameNodes(tree).map(({ name }) => name))] };
  } catch (fault) {
    if (!(fault instanceof ParseFault)) throw fault;
    const rest = body.slice(fault.location.start.offset).trim();
    return refuse(
      'expression-invalid',
      rest === '' ? `${quoted(text)} ends too early.` : `${quoted(text)} cannot be read at ${quoted(rest)}.`,
      'Use numbers, named sizes, + - * / and brackets, such as =seat_depth - 2*ply.',
    );
  }
}
