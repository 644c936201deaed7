import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../../server/planning/dimensions/read-length.ts';
import { readSizeSet } from '../../../server/planning/dimensions/read-size-set.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';

function sizes(text: string, units: UnitSystem = 'metric'): readonly number[] | string {
  const reading = readSizeSet(text, units);
  return reading.ok ? reading.sizes.map(({ mm }) => mm) : `${reading.code} at ${reading.index}`;
}

describe('readSizeSet', () => {
  // Notations as printed in magazines, plans, data sheets and shop listings; mm = in x 25.4, ft x 304.8.
  it.each([
    ['2800 x 1220 x 18.0mm', [2800, 1220, 18]],
    ["2' x 4' x 1/2\"", [609.6, 1219.2, 12.7]],
    ["203,2mm X 15m (8''x49')", [203.2, 15_000]],
    ['22mm x 1.0mm x 100m', [22, 1, 100_000]],
    ['22mmx1.0mmx100m', [22, 1, 100_000]],
    ['48×96"', [1219.2, 2438.4]],
    ["5x5'", [1524, 1524]],
    ["4' wide and 8' long", [1219.2, 2438.4]],
    ['4 feet wide by 8 feet long', [1219.2, 2438.4]],
    ['4’3-1/2” x 8-1/2”', [1308.1, 215.9]],
    ['11¼” x 59¼”', [285.75, 1504.95]],
    ['1/2 x 3/4"', [12.7, 19.05]],
  ])('reads %s in a project of either unit', (text, expected) => {
    expect(sizes(text, 'metric')).toEqual(expected);
    expect(sizes(text, 'us')).toEqual(expected);
  });

  it('reads bare numbers in the unit of the project', () => {
    expect(sizes('600 x 400')).toEqual([600, 400]);
    expect(sizes('48 x 96', 'us')).toEqual([1219.2, 2438.4]);
    expect(sizes('90-1/2″ x 42-3/4', 'us')).toEqual([2298.7, 1085.85]);
    expect(sizes('600', 'metric')).toEqual([600]);
  });

  it('says which size is which when the text does', () => {
    const reading = readSizeSet("4' wide and 8' long", 'us');
    expect(reading.ok && reading.sizes.map(({ role }) => role)).toEqual(['width', 'length']);
  });

  it('gives each size a text of its own that reads back as the same length', () => {
    const reading = readSizeSet('2800 x 1220 x 18.0mm', 'us');
    expect(reading.ok && reading.sizes.map(({ normalised }) => normalised)).toEqual([
      '2800 mm',
      '1220 mm',
      '18.0mm',
    ]);
  });

  it.each([
    ['2/6 x 6/8', 'dimension-ambiguous at 0'], // doors: 2 ft 6 in by 6 ft 8 in
    ['21 13/1 x 9 3/4', 'dimension-truncated at 0'],
    ['9 3/4" x 21 13/1', 'dimension-truncated at 1'],
    ['24 - 14 inches long, by 3/4 x 3/4 inch square', 'dimension-ambiguous at 0'],
    ['2 x 4s', 'dimension-ambiguous at 1'],
    ["8' 2 x 4s", 'dimension-ambiguous at 1'], // "2 x 4s" is the lumber name
    ['2 x 4', 'dimension-ambiguous at 0'],
    ['4 x 8', 'dimension-ambiguous at 0'],
    ['5/4 x 6"', 'dimension-ambiguous at 0'],
    ["2' x 4", 'dimension-ambiguous at 1'],
    ['1,220 x 2,440 mm', 'dimension-ambiguous at 0'],
    ['600 x 0 mm', 'dimension-not-positive at 1'],
    ['600 x 400 x', 'dimension-unreadable at 2'],
    ['600 x abc', 'dimension-unreadable at 1'],
    ["203mm x 15m (8''x60')", 'dimension-ambiguous at 1'], // 60 ft is 18.3 m
    ['600 x 400 mm oak', 'dimension-unreadable at 1'],
    ['', 'dimension-missing at 0'],
  ])('refuses %s and says where', (text, expected) => {
    expect(sizes(text, 'us')).toBe(expected);
  });

  it('refuses a text too long to be a set of sizes', () => {
    expect(sizes('6'.repeat(10_000), 'us')).toBe('dimension-too-long at 0');
  });

  it('asks for the unit of a bare size beside one in another unit than the project', () => {
    expect(sizes('90" x 42', 'metric')).toBe('dimension-ambiguous at 1');
    expect(sizes('1/2 x 3/4', 'metric')).toBe('dimension-ambiguous at 0');
  });

  it('never throws, and every size reads back alone as the same length', () => {
    const pieces = fc.constantFrom(
      ...[
        '1',
        '48',
        '3/4',
        '½',
        '.5',
        ',',
        ' ',
        '-',
        "'",
        '"',
        'mm',
        'ft',
        ' x ',
        '×',
        ' by ',
        ' wide',
        '(',
        ')',
      ],
    );
    const size = fc
      .tuple(
        fc.constantFrom('600', '48', '.5', '23 5/8', '8½', '4-1/2'),
        fc.constantFrom('', '"', 'mm', "'", ' ft wide'),
      )
      .map((some) => some.join(''));
    const texts = fc.oneof(
      fc.array(size, { minLength: 1, maxLength: 4 }).map((some) => some.join(' x ')),
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.array(pieces, { maxLength: 12 }).map((some) => some.join('')),
    );
    let readable = 0;
    fc.assert(
      fc.property(texts, fc.constantFrom<UnitSystem>('metric', 'us'), (text, units) => {
        const reading = readSizeSet(text, units);
        if (!reading.ok) return;
        readable++;
        for (const { mm, normalised } of reading.sizes)
          for (const again of ['metric', 'us'] as const)
            expect(readLength(normalised, again)).toMatchObject({ ok: true, mm });
      }),
      { numRuns: 5000 },
    );
    expect(readable).toBeGreaterThan(500);
  });
});
