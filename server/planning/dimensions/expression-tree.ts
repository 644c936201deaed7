import type { LengthUnit } from './constants.ts';

/** Where a piece of an expression stands, in characters behind the equals sign. */
interface Span {
  readonly start: number;
  readonly end: number;
}

/** What an expression says, as the grammar in expression.peggy reads it. */
export type ExpressionTree = Span &
  (
    | {
        readonly type: 'binary';
        readonly operator: '+' | '-' | '*' | '/';
        readonly left: ExpressionTree;
        readonly right: ExpressionTree;
      }
    | { readonly type: 'negative'; readonly operand: ExpressionTree }
    | { readonly type: 'call'; readonly name: string; readonly operands: readonly ExpressionTree[] }
    | { readonly type: 'name'; readonly name: string }
    | {
        readonly type: 'size';
        readonly value: number;
        /** Null when no unit is written. */
        readonly unit: LengthUnit | null;
        readonly fraction: {
          readonly over: number;
          readonly under: number;
          readonly text: string;
          readonly typeset: boolean;
          /** Follows a whole number. */
          readonly mixed: boolean;
        } | null;
      }
    /** Can be read two ways: `23-5/8` (mixed number or minus), `1,5` (decimal comma or two values), `2' 14"`. */
    | { readonly type: 'doubt'; readonly kind: 'hyphen' | 'comma' | 'feet' }
  );
