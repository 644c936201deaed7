import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CellScope, readLengthCell } from '../../../server/planning/dimensions/read-cell.ts';
import { selfContainedExpression } from '../../../server/planning/dimensions/self-contained-expression.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';

const SIZES: Readonly<Record<string, number>> = { seat_depth: 450, ply: 18, größe: 100 };

function scope(units: UnitSystem): CellScope {
  return {
    units,
    values: new Map(Object.entries(SIZES)),
    named: new Map(Object.keys(SIZES).map((name) => [name, { id: name, name, value: '', note: '' }])),
  };
}

describe('selfContainedExpression', () => {
  it.each([
    ['=seat_depth - 36', '=seat_depth - 36 mm', '=seat_depth - 36"'],
    ['=564', '=564 mm', '=564"'],
    ['=2*36', '=2*36 mm', '=2*36"'],
    ['= 2 * 3 * 36 ', '= 2 * 3 * 36 mm ', '= 2 * 3 * 36" '],
    ['=72/2', '=72 mm/2', '=72"/2'],
    ['=2*5/8', '=2*5 mm/8', '=2*5"/8'],
    ['=seat_depth-2*ply', '=seat_depth-2*ply', '=seat_depth-2*ply'],
    ['=seat_depth/3 - 1.5', '=seat_depth/3 - 1.5 mm', '=seat_depth/3 - 1.5"'],
    ['=(1+2)*ply - 4', '=(1+2)*ply - 4 mm', '=(1+2)*ply - 4"'],
    ['=2*(ply+1)', '=2*(ply+1 mm)', '=2*(ply+1")'],
    ['=2*( 1 + 2 )', '=2*( 1 mm + 2 mm )', '=2*( 1" + 2" )'],
    ['=-(3 - ply)', '=-(3 mm - ply)', '=-(3" - ply)'],
    ['=ply - -3', '=ply - -3 mm', '=ply - -3"'],
    ['=1 m - 36', '=1 m - 36 mm', '=1 m - 36"'],
    ["=2' + 3", "=2' + 3 mm", '=2\' + 3"'],
    ['=ply × 2 − 36', '=ply × 2 − 36 mm', '=ply × 2 − 36"'],
    ['=36 + größe', '=36 mm + größe', '=36" + größe'],
    ['=min(seat_depth, 400)', '=min(seat_depth, 400 mm)', '=min(seat_depth, 400")'],
    ['=max(2*3; 4)', '=max(2*3 mm; 4 mm)', '=max(2*3"; 4")'],
    ['=roundup(613, 5)', '=roundup(613 mm, 5 mm)', '=roundup(613", 5")'],
    ['=roundup(seat_depth/3, 5)', '=roundup(seat_depth/3, 5 mm)', '=roundup(seat_depth/3, 5")'],
    // Without a step a length rounds to a whole unit of the project, so the step has to be said as well.
    ['=round(ply/4)', '=round(ply/4, 1 mm)', '=round(ply/4, 1")'],
    ['=ROUND( ply / 4 ) + 2', '=ROUND( ply / 4, 1 mm ) + 2 mm', '=ROUND( ply / 4, 1" ) + 2"'],
    ['=floor((ply+1))', '=floor((ply+1 mm), 1 mm)', '=floor((ply+1"), 1")'],
    ['=ply + round(2.5)', '=ply + round(2.5 mm, 1 mm)', '=ply + round(2.5", 1")'],
    ['=ply * round(2.5)', '=ply * round(2.5)', '=ply * round(2.5)'],
    ['=ply * max(1, seat_depth/größe + 2)', '=ply * max(1, seat_depth/größe + 2)', null],
    // Numbers that multiply or divide stay as they are, also where they are sums.
    ['=ply*(2 + 3)/4', '=ply*(2 + 3)/4', '=ply*(2 + 3)/4'],
    ['=ply*(ply + 2)/(größe - 3)', '=ply*(ply + 2 mm)/(größe - 3 mm)', '=ply*(ply + 2")/(größe - 3")'],
    // A size that is not there yet is a length all the same.
    ['=shelf - 36', '=shelf - 36 mm', '=shelf - 36"'],
  ])('writes %s as %s or, in inches, %s', (typed, metric, us) => {
    expect(selfContainedExpression(typed, 'metric')).toBe(metric);
    expect(selfContainedExpression(typed, 'us')).toBe(us ?? metric);
  });

  it('keeps inch fractions together, and mixed numbers in either unit', () => {
    expect(selfContainedExpression('=5/8', 'us')).toBe('=5/8"');
    expect(selfContainedExpression('=ply + 5/8', 'us')).toBe('=ply + 5/8"');
    expect(selfContainedExpression('=ply -5/8', 'us')).toBe('=ply -5/8"');
    expect(selfContainedExpression('=3/4 * 2', 'us')).toBe('=3/4 * 2"');
    expect(selfContainedExpression('=seat_depth - 23 5/8', 'us')).toBe('=seat_depth - 23 5/8"');
    expect(selfContainedExpression('=23⅝', 'us')).toBe('=23⅝"');
    expect(selfContainedExpression('=½', 'us')).toBe('=½"');
    expect(selfContainedExpression('=seat_depth - 23 5/8', 'metric')).toBe('=seat_depth - 23 5/8 mm');
    // Not a fraction of an inch as it stands; with an inch mark behind it, it would be asked about.
    expect(selfContainedExpression('=23/8', 'us')).toBe('=23"/8');
    expect(selfContainedExpression('=5 / 8', 'us')).toBe('=5" / 8');
    expect(selfContainedExpression('=5/8/2', 'us')).toBe('=5/8"/2');
  });

  it.each([
    ['600', 'no calculation'],
    ['=', 'nothing to read'],
    ['=ply +', 'cut short'],
    ['=2ply', 'unreadable'],
    ['=ply - 10-1/2', 'readable two ways'],
    ['=max(1,5)', 'readable two ways'],
    ['=21 13/1 + ply', 'a fraction cut off'],
    ['=21 7/10 + 3', 'a fraction that a unit would make readable'],
    ['=sqrt(4)', 'no such function'],
    ['=round(1, 2, 3)', 'a value too many'],
    ['=ply*ply + 3', 'an area and a number'],
    ['=ply*ply', 'an area'],
    ['=ply/größe', 'a plain number'],
    ['=1 + ply/größe', 'a plain number'],
  ])('leaves %s as typed: %s', (typed) => {
    expect(selfContainedExpression(typed, 'metric')).toBe(typed);
    expect(selfContainedExpression(typed, 'us')).toBe(typed);
  });

  it('leaves a calculation as typed that units would make too long to be read', () => {
    const sum = (terms: number) => `=${Array.from({ length: terms }, () => '1').join('+')}`;
    // 100 terms are 200 characters, and 500 with a unit of three characters on each; one more term is too many.
    expect(selfContainedExpression(sum(100), 'metric')).toHaveLength(500);
    expect(selfContainedExpression(sum(101), 'metric')).toBe(sum(101));
  });
});

/** Calculations as people write them: names, bare numbers and sizes, with and without spaces. */
const space = fc.constantFrom('', ' ');
const operand = fc.oneof(
  fc.constantFrom(
    'seat_depth',
    'Ply',
    'größe',
    '2',
    '3',
    '36',
    '0.5',
    '1.5',
    '12',
    '5/8',
    '23 5/8',
    '23⅝',
    '½',
  ),
  fc.constantFrom('18 mm', '2 cm', '0.4 m', '3/4"', '7"', "2'", '1 1/2 in', '2 ft 6 in'),
  fc.integer({ min: 1, max: 900 }).map(String),
);
const calculation = fc
  .letrec<{ sum: string }>((tie) => ({
    sum: fc.oneof(
      { maxDepth: 5, depthIdentifier: 'sum' },
      operand,
      fc
        .tuple(tie('sum'), space, fc.constantFrom('+', ' - ', '*', '/', '×', '÷', ' −'), space, tie('sum'))
        .map((pieces) => pieces.join('')),
      fc.tuple(space, tie('sum'), space).map(([before, sum, after]) => `(${before}${sum}${after})`),
      fc
        .tuple(fc.constantFrom('min', 'max', 'Max'), tie('sum'), fc.constantFrom(', ', '; ', ';'), tie('sum'))
        .map(([name, first, between, second]) => `${name}(${first}${between}${second})`),
      fc
        .tuple(
          fc.constantFrom('round', 'floor', 'ceil', 'roundup'),
          tie('sum'),
          space,
          fc.constantFrom('', ', 5', '; 1/2'),
        )
        .map(([name, sum, after, step]) => `${name}(${sum}${step}${after})`),
      tie('sum').map((sum) => `-${sum}`),
    ),
  }))
  .sum.map((sum) => `=${sum}`);

const either = fc.constantFrom<UnitSystem>('metric', 'us');
const other = (units: UnitSystem): UnitSystem => (units === 'us' ? 'metric' : 'us');

/** What the cell comes to, mm, or why it cannot be read. */
function outcome(text: string, units: UnitSystem): string | number {
  const { value, refusal } = readLengthCell(text, scope(units), true);
  return value ?? refusal?.code ?? 'waits';
}

/** Two ways of adding up the same doubles differ in their last digits only. */
function same(a: string | number, b: string | number): boolean {
  return typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= 1e-6 + 1e-9 * a : a === b;
}

describe('a calculation made self-contained', () => {
  it('comes to the same in its own project and after the units are switched', () => {
    let compared = 0;
    let changed = 0;
    fc.assert(
      fc.property(calculation, either, (text, units) => {
        const written = selfContainedExpression(text, units);
        const before = outcome(text, units);
        expect([written, same(before, outcome(written, units))]).toEqual([written, true]);
        if (typeof before !== 'number') return;
        compared++;
        if (written !== text) changed++;
        expect([written, same(before, outcome(written, other(units)))]).toEqual([written, true]);
      }),
      { numRuns: 4000 },
    );
    expect(compared).toBeGreaterThan(500);
    expect(changed).toBeGreaterThan(300);
  });

  it('is not changed a second time, in either unit system', () => {
    fc.assert(
      fc.property(calculation, either, either, (text, units, later) => {
        const written = selfContainedExpression(text, units);
        const { value } = readLengthCell(text, scope(units), true);
        expect(selfContainedExpression(written, units)).toBe(written);
        if (value !== null) expect(selfContainedExpression(written, later)).toBe(written);
      }),
      { numRuns: 2000 },
    );
  });

  it('only gains units and steps: without them it is what was typed', () => {
    fc.assert(
      fc.property(calculation, either, (text, units) => {
        const added = units === 'us' ? /, 1"|"/g : /, 1 mm| mm/g;
        expect(selfContainedExpression(text, units).replaceAll(added, '')).toBe(text.replaceAll(added, ''));
      }),
    );
  });

  it('keeps any text that is no calculation', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), either, (text, units) => {
        const typed = text.trimStart().startsWith('=') ? `x${text}` : text;
        expect(selfContainedExpression(typed, units)).toBe(typed);
      }),
    );
  });
});
