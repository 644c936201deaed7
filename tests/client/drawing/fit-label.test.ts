import { describe, expect, it } from 'vitest';
import { fitLabel } from '../../../client/drawing/fit-label.ts';

const words = { number: '3', name: 'Seat divider', size: '13 1/16" × 19 3/4"' };
const texts = (width: number, height: number): unknown => {
  const fitted = fitLabel(words, width, height);
  return fitted && { lines: fitted.lines.map(({ text }) => text), turned: fitted.turned };
};

describe('the label of a piece', () => {
  it('is number, name and size where there is room', () => {
    expect(texts(200, 80)).toEqual({ lines: ['3 · Seat divider', words.size], turned: false });
  });

  it('runs upwards on a piece that is high and narrow', () => {
    expect(texts(40, 200)).toEqual({ lines: ['3 · Seat divider', words.size], turned: true });
  });

  it('breaks a long name, rather than cutting it short', () => {
    const long = { ...words, name: 'Divider between drawers and door', size: '13"' };
    const fitted = fitLabel(long, 130, 70);
    expect(fitted?.lines.map(({ text }) => text)).toEqual(['3 · Divider between', 'drawers and door', '13"']);
  });

  it('is the bare number where nothing more fits, smaller where it must be, and nothing on a sliver', () => {
    expect(texts(30, 20)).toEqual({ lines: ['3'], turned: false });
    expect(fitLabel(words, 300, 9)?.lines[0]?.size).toBeLessThan(10);
    expect(fitLabel(words, 300, 5)).toBeNull();
    expect(fitLabel(words, 0, 0)).toBeNull();
  });

  it('of an offcut is its size alone when the word does not fit as well', () => {
    const offcut = { number: '', name: 'offcut', size: '297 mm × 40 mm' };
    expect(fitLabel(offcut, 120, 40)?.lines.map(({ text }) => text)).toEqual(['offcut', offcut.size]);
    expect(fitLabel(offcut, 120, 18)?.lines.map(({ text }) => text)).toEqual([offcut.size]);
    expect(fitLabel(offcut, 30, 18)).toBeNull();
  });

  it('never claims more room than the piece has', () => {
    for (let width = 0; width < 260; width += 7)
      for (let height = 0; height < 260; height += 7) {
        const fitted = fitLabel(words, width, height);
        if (fitted === null) continue;
        expect(fitted.width).toBeLessThanOrEqual(width);
        expect(fitted.height).toBeLessThanOrEqual(height);
      }
  });
});
