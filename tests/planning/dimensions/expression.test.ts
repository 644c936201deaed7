import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import peggy from 'peggy';
import { describe, expect, it } from 'vitest';
import {
  type CellScope,
  readLengthCell,
  readQuantityCell,
} from '../../../server/planning/dimensions/read-cell.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';

const folder = new URL('../../../server/planning/dimensions/', import.meta.url);

const SIZES: Readonly<Record<string, number>> = { seat_depth: 450, ply: 18, größe: 100, nothing: 0 };

function scope(units: UnitSystem = 'metric'): CellScope {
  const names = [...Object.keys(SIZES), 'waiting'];
  return {
    units,
    values: new Map(Object.entries(SIZES)),
    named: new Map(names.map((name) => [name, { id: `id-${name}`, name, value: '', note: '' }])),
  };
}

const mm = (text: string, units: UnitSystem = 'metric') => {
  const { value, refusal } = readLengthCell(text, scope(units), true);
  return value ?? refusal?.code ?? 'waits';
};
const pieces = (text: string, units: UnitSystem = 'metric') => {
  const { value, refusal } = readQuantityCell(text, scope(units));
  return value ?? refusal?.code ?? 'waits';
};

describe('a cell that starts with an equals sign', () => {
  it('is read by the committed parser, which is what the grammar generates', () => {
    const grammar = readFileSync(new URL('expression.peggy', folder), 'utf8');
    const committed = readFileSync(new URL('expression-parser.mjs', folder), 'utf8');
    expect(peggy.generate(grammar, { output: 'source', format: 'es' }).trim()).toBe(committed.trim());
  });

  it.each([
    ['=seat_depth - 2*ply', 414], // 450 - 36
    ['= Seat_Depth-2*PLY', 414],
    ['=2*(seat_depth + ply)', 936],
    ['=seat_depth/3', 150],
    ['=-(ply - seat_depth)', 432],
    ['=seat_depth*ply/ply', 450], // an area over a length is a length
    ['=größe × 2 ÷ 4', 50],
    ['=min(seat_depth, 400)', 400],
    ['=max(ply; 10 mm)', 18],
    ['=max(ply)', 18],
    ['=1 m - 1 cm', 990],
    ['=23 5/8"', 600.075], // 23.625 x 25.4
    ['=23⅝"', 600.075],
    ['=2\' 6"', 762], // 30 x 25.4
    ['=2 ft 6 1/2 in', 774.7], // 30.5 x 25.4
    ["=1' + 1 mm", 305.8],
    ['=3/4" * 2', 38.1],
    ['=.5 m', 500],
    ['=nothing', 0],
    ['=1 - 1', 0],
  ])('makes %s %d mm in a metric project', (text, expected) => {
    expect(mm(text)).toBeCloseTo(expected as number, 9);
  });

  it('takes a number without a unit in the project unit where it meets a length, and as plain in products', () => {
    expect(mm('=564', 'metric')).toBe(564);
    expect(mm('=23 5/8', 'us')).toBeCloseTo(600.075, 9);
    expect(mm('=5/8', 'us')).toBeCloseTo(15.875, 9); // a division of bare numbers, taken in inches
    expect(mm('=ply + 1', 'us')).toBeCloseTo(18 + 25.4, 9);
    expect(mm('=ply * 2', 'us')).toBe(36);
    expect(mm('=min(ply, 1/2)', 'us')).toBeCloseTo(12.7, 9);
    expect(mm('=2*(1 + 2) + ply', 'us')).toBeCloseTo(6 * 25.4 + 18, 9);
  });

  it('rounds to whole project units, or to a step', () => {
    expect(mm('=round(612.5)')).toBe(613); // halves up
    expect(mm('=round(612.49 mm)')).toBe(612);
    expect(mm('=floor(ply/4)')).toBe(4); // 4.5 mm
    expect(mm('=ceil(ply/4)')).toBe(5);
    expect(mm('=roundup(613, 5)')).toBe(615);
    expect(mm('=roundup(615, 5)')).toBe(615);
    expect(mm('=rounddown(619 mm, 5)')).toBe(615);
    expect(mm('=roundup(1 in, 1)', 'us')).toBeCloseTo(25.4, 9);
    expect(mm('=round(ply)', 'us')).toBeCloseTo(25.4, 9); // 0.71 in
    // Binary noise must not add or take a step: 3 x 0.1 is a hair over 0.3, and 0.6 / 0.1 a hair under 6.
    expect(mm('=roundup(3*0.1 mm, 0.1 mm)')).toBeCloseTo(0.3, 9);
    expect(mm('=rounddown(0.6 mm, 0.1 mm)')).toBeCloseTo(0.6, 9);
    // 1.5 x 25.4 / 25.4 is 1.4999999999999998: a half all the same.
    expect(mm('=round(1.5", 1")', 'us')).toBeCloseTo(50.8, 9);
    expect(mm('=round(1.49", 1")', 'us')).toBeCloseTo(25.4, 9);
    expect(mm('=roundup(23 5/8", 1/16")', 'us')).toBeCloseTo(600.075, 9);
    expect(mm('=roundup(23 5/8" + 0.001 mm, 1/16")', 'us')).toBeCloseTo(379 * 1.5875, 9);
  });

  it('counts pieces, from plain numbers and from a size over a size', () => {
    expect(pieces('=2*3')).toBe(6);
    expect(pieces('=seat_depth/ply')).toBe(25);
    expect(pieces('=floor(seat_depth/größe)')).toBe(4);
    expect(pieces('=(0.1 m + 0.2 m)/(0.1 m)')).toBe(3);
    expect(pieces('=5/2')).toBe('quantity-not-whole');
    expect(pieces('=1 - 3')).toBe('quantity-not-whole');
    expect(pieces('=ply')).toBe('quantity-unreadable');
    expect(pieces('=1000*1000')).toBe('quantity-too-large');
  });

  it.each([
    ['=', 'expression-invalid'],
    ['=1 +', 'expression-invalid'],
    ['=1 + * 2', 'expression-invalid'],
    ['=(1', 'expression-invalid'],
    ['=2ply', 'expression-invalid'],
    ['=1.2.3', 'expression-invalid'],
    ['=1e9', 'expression-invalid'],
    ['=ply; drop', 'expression-invalid'],
    ['=ply.constructor', 'expression-invalid'],
    ['=sqrt(4)', 'expression-invalid'],
    ['=round()', 'expression-invalid'],
    ['=round(1, 2, 3)', 'expression-invalid'],
    ['=round(ply, 0)', 'expression-invalid'],
    ['=ply/0', 'expression-invalid'],
    ['=ply/(1 - 1)', 'expression-invalid'],
    ['=ply*ply', 'expression-invalid'], // an area
    ['=1/ply', 'expression-invalid'],
    ['=ply/größe', 'expression-invalid'], // a plain number
    ['=ply/größe + ply', 'expression-invalid'],
    ['=ply*ply + ply', 'expression-invalid'],
    ['=max(ply, ply*ply)', 'expression-invalid'],
    ['=23-5/8"', 'expression-invalid'], // mixed number or minus?
    ['=ply - 10-1/2', 'expression-invalid'],
    ['=2\'-6"', 'expression-invalid'],
    ['=2\' 14"', 'expression-invalid'],
    ['=1,5', 'expression-invalid'], // decimal comma or two values?
    ['=max(1,5)', 'expression-invalid'],
    ['=21 13/1', 'dimension-truncated'],
    ['=4263/64"', 'dimension-ambiguous'],
    ['=shelf', 'expression-unknown-name'],
    ['=constructor', 'expression-unknown-name'],
    ['=__proto__', 'expression-unknown-name'],
    ['=ply - seat_depth', 'dimension-not-positive'],
    ['=1000 m', 'dimension-too-large'],
    ['=99999999999999999999*99999999999999999999', 'dimension-too-large'],
  ])('refuses %s with %s', (text, code) => {
    expect(mm(text)).toBe(code);
  });

  it('refuses numbers beyond counting and texts beyond reading', () => {
    expect(mm(`=${'9'.repeat(400)}`)).toBe('dimension-too-large');
    expect(mm(`=${'9'.repeat(200)}*${'9'.repeat(200)}*m`)).toBe('dimension-too-large');
    expect(mm(`=${'1+'.repeat(300)}1`)).toBe('dimension-too-long');
    expect(mm(`=${'('.repeat(249)}1${')'.repeat(249)}`)).toBe(1);
    expect(mm(`=${'('.repeat(499)}`)).toBe('expression-invalid');
    expect(mm(`=${'-'.repeat(498)}1`)).toBe(1);
  });

  it('waits without a fault of its own for a size that has no value', () => {
    const reading = readLengthCell('=waiting + ply', scope());
    expect(reading).toMatchObject({ value: null, refusal: null });
    expect(reading.working.notes?.join()).toContain('waiting');
  });

  it('shows in its working the sizes it uses and where they come from', () => {
    const { working } = readLengthCell('=seat_depth - 2*ply', scope());
    expect(working.rule).toBe('=seat_depth - 2*ply');
    expect(working.inputs).toEqual([
      { name: 'seat_depth', value: 450, unit: 'mm', from: 'sizes/id-seat_depth/valueMm' },
      { name: 'ply', value: 18, unit: 'mm', from: 'sizes/id-ply/valueMm' },
    ]);
  });

  it('never throws, whatever follows the equals sign', () => {
    const pieces = fc.constantFrom(
      ...[
        '1',
        '2.5',
        '3/4',
        '½',
        '"',
        "'",
        ' mm',
        'ply',
        'x',
        '(',
        ')',
        '+',
        '-',
        '*',
        '/',
        ',',
        ' ',
        'max(',
        '.',
      ],
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 80 }),
          fc.array(pieces, { maxLength: 20 }).map((some) => some.join('')),
        ),
        fc.constantFrom<UnitSystem>('metric', 'us'),
        (text, units) => {
          const length = readLengthCell(`=${text}`, scope(units));
          expect(length.value === null || (length.value > 0 && length.value <= 100_000)).toBe(true);
          const quantity = readQuantityCell(`=${text}`, scope(units));
          expect(quantity.value === null || Number.isInteger(quantity.value)).toBe(true);
        },
      ),
      { numRuns: 5000 },
    );
  });
});

/**
 * A slow twin: random calculations are built as trees of exact fractions (BigInt), printed as text, and read back by
 * the program. The twin never parses and never uses floating point.
 */
interface Exact {
  readonly text: string;
  readonly over: bigint;
  readonly under: bigint;
  readonly power: number;
  readonly bare: boolean;
  /** Weight of the outermost operator, for brackets: 3 atom, 2 product, 1 sum. */
  readonly weight: number;
}

const UNIT_OVER = {
  mm: [1n, 1n],
  cm: [10n, 1n],
  m: [1000n, 1n],
  '"': [254n, 10n],
  "'": [3048n, 10n],
} as const;
const wrap = (tree: Exact, weight: number): string => (tree.weight < weight ? `(${tree.text})` : tree.text);

const atom: fc.Arbitrary<Exact> = fc.oneof(
  fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 9 })).map(([whole, tenth]) => ({
    text: tenth === 0 ? `${whole}` : `${whole}.${tenth}`,
    over: BigInt(whole * 10 + tenth),
    under: 10n,
    power: 0,
    bare: true,
    weight: 3,
  })),
  fc
    .tuple(fc.integer({ min: 0, max: 500 }), fc.constantFrom('mm', 'cm', 'm', '"', "'"))
    .map(([whole, unit]) => {
      const [over, under] = UNIT_OVER[unit as keyof typeof UNIT_OVER];
      return { text: `${whole}${unit}`, over: BigInt(whole) * over, under, power: 1, bare: false, weight: 3 };
    }),
  fc.tuple(fc.integer({ min: 1, max: 60 }), fc.constantFrom(1, 3, 5, 7)).map(([whole, eighths]) => ({
    text: `${whole} ${eighths}/8"`,
    over: BigInt(whole * 8 + eighths) * 254n,
    under: 80n,
    power: 1,
    bare: false,
    weight: 3,
  })),
  fc.constantFrom('seat_depth', 'ply').map((name) => ({
    text: name,
    over: BigInt(SIZES[name] ?? 0),
    under: 1n,
    power: 1,
    bare: false,
    weight: 3,
  })),
);

function exactSum(left: Exact, right: Exact, minus: boolean): Exact | null {
  // A bare number beside a length is millimetres here: the twin runs in a metric project.
  const bare = left.bare && right.bare;
  const power = bare ? 0 : left.bare ? right.power : left.power;
  for (const side of [left, right]) if (side.power !== power && !(side.bare && power === 1)) return null;
  const over = left.over * right.under + (minus ? -1n : 1n) * right.over * left.under;
  return {
    text: `${wrap(left, 1)} ${minus ? '-' : '+'} ${wrap(right, 2)}`,
    over,
    under: left.under * right.under,
    power,
    bare,
    weight: 1,
  };
}

const exactTree = fc.letrec<{ tree: Exact | null }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 5, depthIdentifier: 'calculation' },
    atom,
    fc.tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/'), tie('tree')).map(([left, operator, right]) => {
      if (left === null || right === null) return null;
      if (operator === '+' || operator === '-') return exactSum(left, right, operator === '-');
      if (operator === '/' && right.over === 0n) return null;
      const flip = operator === '/';
      return {
        text: `${wrap(left, 2)} ${operator} ${wrap(right, 3)}`,
        over: left.over * (flip ? right.under : right.over),
        under: left.under * (flip ? right.over : right.under),
        power: left.power + (flip ? -right.power : right.power),
        bare: left.bare && right.bare,
        weight: 2,
      };
    }),
  ),
})).tree;

describe('the calculation against exact fractions', () => {
  it('comes to the same length', () => {
    let compared = 0;
    fc.assert(
      fc.property(exactTree, (tree) => {
        if (tree === null || !(tree.power === 1 || tree.bare)) return;
        const sign = tree.under < 0n ? -1n : 1n;
        // Twelve decimals of the exact quotient.
        const exact = Number((sign * tree.over * 10n ** 12n) / (sign * tree.under)) / 1e12;
        const { value, refusal } = readLengthCell(`=${tree.text}`, scope(), true);
        if (exact < -1e-6) expect(refusal?.code).toBe('dimension-not-positive');
        else if (exact > 100_001) expect(refusal?.code).toBe('dimension-too-large');
        else if (exact > 1e-6 && exact < 99_999) {
          compared++;
          // Products of a few hundred each lose at most some thousand units in the last of 53 bits.
          expect(value).not.toBeNull();
          expect(Math.abs((value ?? 0) - exact)).toBeLessThan(1e-6 + 1e-9 * exact);
        }
      }),
      { numRuns: 4000 },
    );
    expect(compared).toBeGreaterThan(500);
  });
});
