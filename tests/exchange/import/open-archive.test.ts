import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openArchive } from '../../../server/exchange/import/open-archive.ts';
import { zipArchive } from './zip-archive.ts';

const files = { 'a.txt': 'one one one one', 'folder/b.txt': 'two', 'c.txt': '' };
const MOST = 1_000_000;

function contents(archive: Buffer): Record<string, string> | string {
  const opened = openArchive(archive, MOST);
  return opened.ok
    ? Object.fromEntries(opened.entries.map(({ path, data }) => [path, data.toString()]))
    : opened.fault;
}

describe('opening an archive', () => {
  it.each([
    ['packed', {}],
    ['as they stand', { stored: true }],
    ['with their sizes behind them', { streamed: true }],
  ])('reads files that lie in it %s', (_name, options) => {
    expect(contents(zipArchive(files, options))).toEqual(files);
  });

  it('does not unpack more than it may, whatever the archive says of itself', () => {
    const bomb = { 'a.xml': Buffer.alloc(5_000_000) };
    for (const options of [{}, { streamed: true }, { claimedSize: 10 }, { stored: true }])
      expect(contents(zipArchive(bomb, options))).toBe('too-large');
    const many = Object.fromEntries(
      Array.from({ length: 20 }, (_, index) => [`${index}`, Buffer.alloc(100_000)]),
    );
    expect(contents(zipArchive(many))).toBe('too-large');
    expect(openArchive(zipArchive({ a: 'x'.repeat(MOST) }), MOST).ok).toBe(true);
    expect(openArchive(zipArchive({ a: 'x'.repeat(MOST + 1) }), MOST).ok).toBe(false);
  });

  it('says that a locked archive is locked, and that what is none is none', () => {
    expect(contents(zipArchive(files, { flags: 1 }))).toBe('encrypted');
    expect(contents(Buffer.from(''))).toBe('not-an-archive');
    expect(contents(Buffer.from('Part,Qty,Length,Width\nSide,2,600,300\n'))).toBe('not-an-archive');
  });

  it('finds every archive that was cut short before its table of contents', () => {
    const archive = zipArchive(files);
    const table = archive.indexOf('PK\u0001\u0002');
    for (let length = 4; length < table; length++) {
      expect(['broken', 'not-an-archive']).toContain(contents(archive.subarray(0, length)));
    }
  });

  it('never hands out changed data as if it were sound', () => {
    for (const options of [{}, { streamed: true }, { stored: true }]) {
      const archive = zipArchive(files, options);
      fc.assert(
        fc.property(fc.nat(archive.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
          const changed = Buffer.from(archive);
          changed[at] = (changed[at] ?? 0) ^ flip;
          const read = openArchive(changed, MOST);
          const sound = Object.values(files);
          if (read.ok) for (const { data } of read.entries) expect(sound).toContain(data.toString());
        }),
        { numRuns: 300 },
      );
    }
  });
});
