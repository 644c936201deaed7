import type { LengthUnit } from './constants.ts';
import type { ExpressionTree } from './expression-tree.ts';

/** Made from expression.peggy. Throws SyntaxError where the text does not follow the grammar. */
export function parse(
  text: string,
  options: { readonly units: ReadonlyMap<string, LengthUnit> },
): ExpressionTree;

declare class ParseFault extends Error {
  readonly location: { readonly start: { readonly offset: number } };
}

export { ParseFault as SyntaxError };
