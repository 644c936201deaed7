import type { UnitSystem } from '../project-input.ts';
import { MM_PER_UNIT } from './constants.ts';
import { alike, type Dimensioned } from './dimensioned.ts';
import { applyFunction } from './expression-functions.ts';
import type { ExpressionTree } from './expression-tree.ts';
import { PROJECT_UNIT } from './length-in-mm.ts';
import { nameKey } from './name-key.ts';
import { doubtfulFraction } from './notation/doubtful-fraction.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

export interface ExpressionScope {
  readonly units: UnitSystem;
  /** Named sizes in mm, under their `nameKey`. */
  readonly values: ReadonlyMap<string, number>;
}

/**
 * What does a calculation come to?
 *
 * `tree`: as parsed. `scope`: the project's unit and named sizes, mm. Result: a number with its dimension, or a
 * refusal. Numbers without a unit are plain in products and quotients; added to or compared with a length they take
 * the project's unit. Lengths multiply to areas and divide to plain numbers. A rule of ours.
 *
 * Example: `=600 - 2*18` in a metric project is a bare 564, which a length cell takes as 564 mm.
 */
export function evaluateExpression(tree: ExpressionTree, scope: ExpressionScope): Dimensioned | Refusal {
  const unitMm = MM_PER_UNIT[PROJECT_UNIT[scope.units]];
  switch (tree.type) {
    case 'size':
      return writtenSize(tree);
    case 'name':
      return namedSize(tree.name, scope.values);
    case 'doubt':
      return doubt(tree.kind);
    case 'negative': {
      const operand = evaluateExpression(tree.operand, scope);
      return operand.ok ? { ...operand, value: -operand.value } : operand;
    }
    case 'call': {
      const operands: Dimensioned[] = [];
      for (const branch of tree.operands) {
        const operand = evaluateExpression(branch, scope);
        if (!operand.ok) return operand;
        operands.push(operand);
      }
      return finite(applyFunction(tree.name, operands, unitMm));
    }
    case 'binary': {
      const left = evaluateExpression(tree.left, scope);
      if (!left.ok) return left;
      const right = evaluateExpression(tree.right, scope);
      return right.ok ? finite(combine(tree.operator, left, right, unitMm)) : right;
    }
  }
}

function combine(
  operator: '+' | '-' | '*' | '/',
  left: Dimensioned,
  right: Dimensioned,
  unitMm: number,
): Dimensioned | Refusal {
  const bare = left.bare && right.bare;
  if (operator === '*')
    return { ok: true, value: left.value * right.value, power: left.power + right.power, bare };
  if (operator === '/')
    return right.value === 0
      ? refuse('expression-invalid', 'The calculation divides by zero.', 'Check the size below the bar.')
      : { ok: true, value: left.value / right.value, power: left.power - right.power, bare };
  const same = alike([left, right], unitMm);
  if (!same.ok) return same;
  const [first = 0, second = 0] = same.values;
  return { ok: true, value: operator === '+' ? first + second : first - second, power: same.power, bare };
}

function finite(result: Dimensioned | Refusal): Dimensioned | Refusal {
  return !result.ok || Number.isFinite(result.value)
    ? result
    : refuse(
        'dimension-too-large',
        'The calculation comes to more than can be counted.',
        'Check its numbers.',
      );
}

function writtenSize(tree: ExpressionTree & { readonly type: 'size' }): Dimensioned | Refusal {
  const { value, unit, fraction } = tree;
  if (fraction !== null) {
    const digits = { over: String(fraction.over), under: String(fraction.under) };
    const written = { mixed: fraction.mixed, marked: unit !== null || !fraction.mixed };
    const fault = doubtfulFraction({ ...fraction, ...digits }, written);
    if (fault !== null) return fault;
  }
  return finite({
    ok: true,
    value: unit === null ? value : value * MM_PER_UNIT[unit],
    power: unit === null ? 0 : 1,
    bare: unit === null,
  });
}

function namedSize(name: string, values: ReadonlyMap<string, number>): Dimensioned | Refusal {
  const value = values.get(nameKey(name));
  if (value !== undefined) return { ok: true, value, power: 1, bare: false };
  const known = [...values.keys()].slice(0, 5).join(', ');
  return refuse(
    'expression-unknown-name',
    `There is no size named ${quoted(name)}.`,
    `Add it under Sizes${known === '' ? '' : `, or use one that is there: ${known}`}.`,
  );
}

function doubt(kind: 'hyphen' | 'comma' | 'feet'): Refusal {
  switch (kind) {
    case 'hyphen':
      return refuse(
        'expression-invalid',
        'A hyphen in the calculation can be a minus or join a number and its fraction.',
        'Write 23 5/8 for a mixed number, or 23 - 5/8 with spaces for a subtraction.',
      );
    case 'comma':
      return refuse(
        'expression-invalid',
        'A comma in the calculation can be a decimal comma or part two values.',
        'Write decimals with a point, and put a space behind a comma between values.',
      );
    case 'feet':
      return refuse(
        'expression-invalid',
        'A size in the calculation has 12 inches or more behind its feet.',
        'Write feet and inches such as 6\' 7 1/2", or all of it in inches.',
      );
  }
}
