import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../../server/planning/dimensions/read-length.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';

/** Millimetres of a text that must be readable. */
function mm(text: string, units: UnitSystem = 'metric'): number {
  const reading = readLength(text, units);
  if (!reading.ok) throw new Error(`${text}: ${reading.message}`);
  return reading.mm;
}

function code(text: string, units: UnitSystem = 'metric'): string {
  const reading = readLength(text, units);
  return reading.ok ? `read as ${reading.mm} mm` : reading.code;
}

// Expected millimetres: inches x 25.4 (exact definition), worked out beside each line.
const READ_IN_EITHER_PROJECT: readonly (readonly [string, number])[] = [
  ['600 mm', 600],
  ['600mm', 600],
  ['600 millimetres', 600],
  ['60 cm', 600],
  ['0.6 m', 600],
  ['0,6 m', 600],
  ['12,5 mm', 12.5],
  ['ca. 1,5 mm', 1.5],
  ['approx. 600 mm', 600],
  ['≈600 mm', 600],
  ['23 5/8"', 600.075], // 23.625 x 25.4
  ['23-5/8"', 600.075],
  ['23‑5/8″', 600.075], // no-break hyphen, double prime
  ['23⅝"', 600.075],
  ['23 ⅝ in.', 600.075],
  ['15 7/8"', 403.225], // 15.875 x 25.4
  ['8-1/2”', 215.9], // 8.5 x 25.4
  ['11¼”', 285.75], // 11.25 x 25.4
  ['23/32″ plywood', 18.25625], // 0.71875 x 25.4
  ['90-1/2″', 2298.7], // 90.5 x 25.4
  ['.714" wide', 18.1356], // 0.714 x 25.4
  ['.714"', 18.1356],
  ['42 63⁄64in', 1091.803125], // 42.984375 x 25.4
  ['42⁶³⁄₆₄ in', 1091.803125], // raised and lowered digits cannot be glued
  ['6\' 7 1/2"', 2019.3], // 79.5 x 25.4
  ['2\'-6"', 762], // 30 x 25.4
  ['2\' - 6"', 762],
  ['4’3-1/2”', 1308.1], // 51.5 x 25.4
  ["6'7", 2006.6], // 79 x 25.4
  ['2 ft 6 in', 762],
  ['4 feet', 1219.2], // 4 x 304.8
  ['5.5 ft', 1676.4],
  ['5 1/2 feet', 1676.4],
  ["8''", 203.2], // 8 x 25.4
  ['8’’', 203.2],
  ['24 inches long', 609.6],
  ['1 inch', 25.4],
  ['5/4"', 31.75], // 1.25 x 25.4; marked as inches, so not a lumber name
  ['2/6"', 8.466666667], // 1/3 x 25.4; marked as inches, so not a door
  ['600\u00a0mm', 600],
  ['600\u2009mm', 600],
  ['1,220.5 mm', 1220.5],
  ['1.220,5 mm', 1220.5],
  ['0,125 mm', 0.125],
  ['19 mm (3/4")', 19],
  ['  600   mm ', 600],
  ['100 m', 100_000],
];

describe('readLength', () => {
  it.each(READ_IN_EITHER_PROJECT)('reads %s as %d mm in a project of either unit', (text, expected) => {
    expect(mm(text, 'metric')).toBeCloseTo(expected, 8);
    expect(mm(text, 'us')).toBeCloseTo(expected, 8);
  });

  it('reads a bare number in the unit of the project', () => {
    expect(mm('600', 'metric')).toBe(600);
    expect(mm('24', 'us')).toBeCloseTo(609.6, 8); // 24 x 25.4
    expect(mm('23 5/8', 'us')).toBeCloseTo(600.075, 8);
    expect(mm('42-3/4', 'us')).toBeCloseTo(1085.85, 8); // 42.75 x 25.4
    expect(mm('3/4', 'us')).toBeCloseTo(19.05, 8);
    expect(mm('4/16', 'us')).toBeCloseTo(6.35, 8);
    expect(mm('⅓', 'us')).toBeCloseTo(8.466666667, 8);
  });

  it('makes the text self-contained, and leaves alone what already is', () => {
    const normalised = (text: string, units: UnitSystem) => {
      const reading = readLength(text, units);
      return reading.ok ? reading.normalised : reading.code;
    };
    expect(normalised('600', 'metric')).toBe('600 mm');
    expect(normalised('23 5/8', 'us')).toBe('23 5/8"');
    expect(normalised('24 wide', 'us')).toBe('24" wide');
    expect(normalised('  60   cm ', 'us')).toBe('60 cm');
    expect(normalised('2\u00a0ft', 'metric')).toBe('2 ft');
    expect(normalised("6'7", 'metric')).toBe("6'7");
    expect(normalised('600wide', 'metric')).toBe('600 mm wide');
  });

  it.each([['1,220'], ['1,220 mm'], ['12,345"']])(
    'asks about %s, whose comma can be a decimal or a thousands mark',
    (text) => {
      expect(code(text)).toBe('dimension-ambiguous');
      expect(code(text, 'us')).toBe('dimension-ambiguous');
    },
  );

  it.each(['116 "', '1316 "', '18 "', '34 12 "', '34 12"', '38 ″'])(
    'asks about %s, where a fraction bar may be lost',
    (text) => {
      expect(code(text)).toBe('dimension-ambiguous');
      expect(code(text, 'us')).toBe('dimension-ambiguous');
    },
  );

  it('offers the fraction that may be meant', () => {
    const reading = readLength('1316 "', 'us');
    expect(!reading.ok && reading.wayOut).toContain('13/16"');
    const two = readLength('34 12 "', 'us');
    expect(!two.ok && two.wayOut).toContain('34 1/2"');
    const glued = readLength('4263⁄64in', 'us');
    expect(!glued.ok && glued.wayOut).toContain('42 63/64"');
  });

  it('reads whole inches with a space before the mark when no fraction could have been lost', () => {
    expect(mm('24 "')).toBeCloseTo(609.6, 8); // 2/4 is not how anyone writes a half
    expect(mm('18"')).toBeCloseTo(457.2, 8);
    expect(mm('18 in')).toBeCloseTo(457.2, 8);
  });

  it.each(['21 13/1', '21 13/1"', '13/1"', '21 17/16"', '21 1/3', '3/1"', '1 5/0"'])(
    'refuses %s as cut off',
    (text) => {
      expect(code(text, 'us')).toBe('dimension-truncated');
    },
  );

  it.each(['4263⁄64in', '113/16"', '4263/64'])(
    'asks about %s, a whole number glued to its fraction',
    (text) => {
      expect(code(text, 'us')).toBe('dimension-ambiguous');
    },
  );

  it.each(['2/6', '6/8', '3/0', '2/8', '1/6'])('asks whether %s is a door size', (text) => {
    const reading = readLength(text, 'us');
    expect(!reading.ok && reading.code).toBe('dimension-ambiguous');
    expect(!reading.ok && reading.message).toContain('door');
  });

  it.each(['5/4', '5/4 stock', '8/4', '3/4 stock', '2 x 4s', "8' 2 x 4s", '2x4'])(
    'refuses %s, a lumber name',
    (text) => {
      const reading = readLength(text, 'us');
      expect(!reading.ok && reading.code).toBe('dimension-ambiguous');
      expect(!reading.ok && reading.message + reading.wayOut).toMatch(/lumber|rough-sawn/);
    },
  );

  it.each(['24 - 14 inches long', '24-14', '23 - 5/8"', '23 -5/8"'])(
    'asks about the hyphen in %s',
    (text) => {
      expect(code(text, 'us')).toBe('dimension-ambiguous');
    },
  );

  it.each(['23 5/8', '23⅝', '3/4', '½'])('asks about %s without a unit in a metric project', (text) => {
    expect(code(text, 'metric')).toBe('dimension-ambiguous');
  });

  it.each(['1 220', '600 x 400', '4\' 16"', '5.5\' 3"', "6' 7 mm", '18 mm (3/4")'])(
    'asks about %s, which says two things',
    (text) => {
      expect(code(text)).toBe('dimension-ambiguous');
    },
  );

  it.each([
    'NaN',
    'Infinity',
    '1e9',
    '1e3 mm',
    '600 mmm',
    'seat_depth',
    '=a',
    '1.2.3',
    '1,2,3',
    '1.5 1/2"',
    '99999/64"',
    '0/8"',
    'mm',
    '"',
    '600 mm please',
    '600 mm (',
    '+5',
    '١٢',
  ])('cannot read %s', (text) => {
    expect(code(text)).toBe('dimension-unreadable');
  });

  it('cannot read a fraction of a fraction', () => {
    expect(code('13/16/2"', 'us')).toBe('dimension-unreadable');
  });

  it('refuses an empty cell, one too long to be a size, and sizes no part can have', () => {
    expect(code('')).toBe('dimension-missing');
    expect(code(' \u00a0\t')).toBe('dimension-missing');
    expect(code('9'.repeat(10_000))).toBe('dimension-too-long');
    expect(code('6'.repeat(201))).toBe('dimension-too-long');
    expect(code('-5')).toBe('dimension-not-positive');
    expect(code('−5 mm')).toBe('dimension-not-positive');
    expect(code('0')).toBe('dimension-not-positive');
    expect(code('0.0 mm')).toBe('dimension-not-positive');
    expect(code('100.001 m')).toBe('dimension-too-large');
    expect(code('9'.repeat(150))).toBe('dimension-too-large');
    expect(code('9'.repeat(190) + '9'.repeat(10))).toBe('dimension-too-large');
  });

  it('takes zero where zero is meant to be possible, and still nothing below', () => {
    expect(readLength('0', 'metric', { allowZero: true })).toMatchObject({ ok: true, mm: 0 });
    expect(readLength('-1', 'metric', { allowZero: true })).toMatchObject({ code: 'dimension-not-positive' });
  });

  it('quotes the offending text, and cuts it short', () => {
    const reading = readLength(`${'z'.repeat(150)}`, 'metric');
    expect(!reading.ok && reading.message.length).toBeLessThan(100);
  });

  it('never throws, and reads what it normalised as the same length in either unit system', () => {
    const plausible = fc
      .tuple(
        fc.constantFrom('', 'ca. ', '≈'),
        fc.constantFrom('600', '12,5', '.5', '23 5/8', '23-5/8', '8½', '3/4', "2'-6", '4’3-1/2', '0'),
        fc.constantFrom('', ' ', '\u2009'),
        fc.constantFrom('', '"', '”', "''", 'mm', 'cm', 'in.', 'feet', ' wide'),
      )
      .map((pieces) => pieces.join(''));
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc
        .array(
          fc.constantFrom(
            ...['1', '12', '3/4', '5⁄8', '½', '.', ',', ' ', '-', '–', "'", '"', '”', '″', "''", 'mm', 'in'],
            ...['m', 'ft', 'x', '×', 'wide', 'ca.', '(', ')', '⁶', '/', '0', '\u00a0'],
          ),
          { maxLength: 9 },
        )
        .map((pieces) => pieces.join('')),
      plausible,
    );
    let readable = 0;
    fc.assert(
      fc.property(texts, fc.constantFrom<UnitSystem>('metric', 'us'), (text, units) => {
        const reading = readLength(text, units, { allowZero: true });
        if (!reading.ok) return;
        readable++;
        for (const again of ['metric', 'us'] as const)
          expect(readLength(reading.normalised, again, { allowZero: true })).toEqual(reading);
      }),
      { numRuns: 5000 },
    );
    expect(readable).toBeGreaterThan(500);
  });

  it('reads every whole number, sixteenth and tenth of a millimetre back as written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), fc.integer({ min: 1, max: 15 }), (tenths, over) => {
        expect(mm(`${tenths / 10} mm`)).toBeCloseTo(tenths / 10, 9);
        const inches = tenths % 3900;
        // A fraction of sixteenths is exact in binary, so only the conversion rounds.
        expect(mm(`${inches} ${over}/16"`)).toBeCloseTo((inches + over / 16) * 25.4, 8);
        expect(mm(`${inches}-${over}/16`, 'us')).toBeCloseTo((inches + over / 16) * 25.4, 8);
      }),
    );
  });
});
