import type { UnitSystem } from '../project-input.ts';
import { MAX_EXPRESSION } from './constants.ts';
import { editedText, type TextEdit } from './edited-text.ts';
import { evaluateExpression } from './evaluate-expression.ts';
import { FUNCTION_NAMES, MOST_ROUNDING_VALUES, ROUNDING_NAMES } from './expression-functions.ts';
import type { ExpressionTree } from './expression-tree.ts';
import { PROJECT_UNIT } from './length-in-mm.ts';
import { doubtfulFraction } from './notation/doubtful-fraction.ts';
import { parseExpression } from './parse-expression.ts';

/** What a part of a calculation is, whatever the named sizes come to; see `Dimensioned`. */
interface Dimension {
  readonly power: number;
  readonly bare: boolean;
}

const LENGTH: Dimension = { power: 1, bare: false };
const NO_NAMES: ReadonlyMap<string, number> = new Map();

/**
 * How is a calculation for a length written so that it means the same in a project of either unit system?
 *
 * `text`: the cell, equals sign included. `units`: of the project it is written in. Result: the text with the
 * project's unit (` mm` or `"`) behind each number that stands for a length and with the step of each rounding that
 * has none; spaces stay as typed. In a product the last factor takes the unit, in a quotient what is divided; an inch
 * fraction takes it as one size. A text that cannot be read, that is no length, or that would grow beyond 500
 * characters stays as typed. A rule of ours, from the rules of `evaluateExpression`.
 *
 * Example: `=seat_depth - 36` becomes `=seat_depth - 36 mm`, `=2*36` becomes `=2*36 mm`, `=round(ply/4)` becomes
 * `=round(ply/4, 1 mm)`.
 */
export function selfContainedExpression(text: string, units: UnitSystem): string {
  const parsed = text.trimStart().startsWith('=') ? parseExpression(text) : null;
  if (!parsed?.ok) return text;
  const start = text.indexOf('=') + 1;
  const body = text.slice(start);
  const unit = PROJECT_UNIT[units] === 'in' ? '"' : ' mm';
  const insertions: TextEdit[] = [];

  const whole = dimensionOf(parsed.tree);
  if (whole === null || (whole.power !== 1 && !whole.bare)) return text;
  if (whole.bare) makeLength(parsed.tree);
  const written = text.slice(0, start) + editedText(body, insertions);
  return written.length > MAX_EXPRESSION ? text : written;

  /** Null where the calculation is refused; on the way, numbers that meet a length become lengths. */
  function dimensionOf(tree: ExpressionTree): Dimension | null {
    switch (tree.type) {
      case 'size': {
        const size = evaluateExpression(tree, { units, values: NO_NAMES });
        return size.ok ? size : null;
      }
      case 'name':
        return LENGTH;
      case 'doubt':
        return null;
      case 'negative':
        return dimensionOf(tree.operand);
      case 'call':
        return dimensionOfCall(tree);
      case 'binary': {
        if (tree.operator === '+' || tree.operator === '-') return dimensionOfAll([tree.left, tree.right]);
        const left = dimensionOf(tree.left);
        const right = dimensionOf(tree.right);
        if (left === null || right === null) return null;
        const power = tree.operator === '*' ? left.power + right.power : left.power - right.power;
        return { power, bare: left.bare && right.bare };
      }
    }
  }

  function dimensionOfCall(call: ExpressionTree & { readonly type: 'call' }): Dimension | null {
    const rounds = ROUNDING_NAMES.has(call.name);
    if (!FUNCTION_NAMES.includes(call.name) || (rounds && call.operands.length > MOST_ROUNDING_VALUES))
      return null;
    const dimension = dimensionOfAll(call.operands);
    if (dimension?.power === 1) addStep(call);
    return dimension;
  }

  /** Of parts that are added or compared, as `alike` has it. */
  function dimensionOfAll(trees: readonly ExpressionTree[]): Dimension | null {
    const dimensions = trees.map(dimensionOf);
    const power = dimensions.find((one) => one?.bare === false)?.power ?? 0;
    for (const [index, one] of dimensions.entries()) {
      const tree = trees[index];
      if (one === null || tree === undefined) return null;
      if (one.power === power) continue;
      if (!one.bare || power !== 1) return null;
      makeLength(tree);
    }
    return { power, bare: dimensions.every((one) => one?.bare) };
  }

  /** Puts the unit into a part made of numbers only. */
  function makeLength(tree: ExpressionTree): void {
    switch (tree.type) {
      case 'size':
        insert(tree.end, unit);
        return;
      case 'negative':
        makeLength(tree.operand);
        return;
      case 'call':
        tree.operands.forEach(makeLength);
        addStep(tree);
        return;
      case 'binary':
        if (tree.operator === '/' && unit === '"' && isInchFraction(body.slice(tree.start, tree.end)))
          insert(tree.end, unit);
        else {
          if (tree.operator !== '*') makeLength(tree.left);
          if (tree.operator !== '/') makeLength(tree.right);
        }
    }
  }

  function insert(at: number, added: string): void {
    insertions.push({ start: at, end: at, text: added });
  }

  function addStep({ name, operands, end }: ExpressionTree & { readonly type: 'call' }): void {
    if (!ROUNDING_NAMES.has(name) || operands.length === MOST_ROUNDING_VALUES) return;
    insert(body.slice(0, end - 1).trimEnd().length, `, 1${unit}`);
  }
}

/** `5/8`: below one, and read as one size once an inch mark stands behind it. */
function isInchFraction(text: string): boolean {
  const [, over, under] = /^(\d+)\/(\d+)$/.exec(text) ?? [];
  if (over === undefined || under === undefined || Number(over) >= Number(under)) return false;
  return doubtfulFraction({ over, under, text, typeset: false }, { mixed: false, marked: true }) === null;
}
