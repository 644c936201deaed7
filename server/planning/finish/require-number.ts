export interface NumberRange {
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
}

/**
 * Is a caller's number finite and inside its range? Throws RangeError naming the function, the parameter, the value
 * and the range with its unit; a parameter that passes comes back unchanged.
 *
 * No source: a definition of ours. NaN and infinities never pass.
 * Example: requireNumber('coatLitres: areaM2', -1, { atLeast: 0 }, 'm2') throws "... at least 0 m2, got -1".
 */
export function requireNumber(what: string, value: number, range: NumberRange, unit: string): number {
  const { above = Number.NEGATIVE_INFINITY, atLeast = Number.NEGATIVE_INFINITY } = range;
  const { atMost = Number.POSITIVE_INFINITY } = range;
  if (Number.isFinite(value) && value > above && value >= atLeast && value <= atMost) return value;
  const bounds = [
    ...(range.above === undefined ? [] : [`above ${range.above} ${unit}`]),
    ...(range.atLeast === undefined ? [] : [`at least ${range.atLeast} ${unit}`]),
    ...(range.atMost === undefined ? [] : [`at most ${range.atMost} ${unit}`]),
  ];
  throw new RangeError(`${what} must be a finite number ${bounds.join(' and ')}, got ${value}`);
}
