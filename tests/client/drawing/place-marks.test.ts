import { describe, expect, it } from 'vitest';
import { type MarkedLine, placeMarks } from '../../../client/drawing/place-marks.ts';

const room = { x: 0, y: 0, width: 200, height: 100 };
const line = (text: string, x1: number, y1: number, x2: number, y2: number): MarkedLine => ({
  text,
  x1,
  y1,
  x2,
  y2,
});

describe('the numbers of the cuts', () => {
  it('stand at the beginning of their cut', () => {
    // Radius 7.5 and 2 more from the edge.
    expect(placeMarks([line('1', 0, 50, 200, 50)], [], room)).toEqual([
      { text: '1', x: 9.5, y: 50, radius: 7.5 },
    ]);
  });

  it('make way for a text, and for one another where cuts meet', () => {
    const text = { x: 0, y: 40, width: 60, height: 20 };
    const [first, second] = placeMarks(
      [line('1', 0, 50, 200, 50), line('2', 195, 0, 195, 100)],
      [text],
      room,
    );
    expect((first?.x ?? 0) - 7.5).toBeGreaterThanOrEqual(60);
    const apart = Math.hypot((first?.x ?? 0) - (second?.x ?? 0), (first?.y ?? 0) - (second?.y ?? 0));
    expect(apart).toBeGreaterThanOrEqual(15);
  });

  it('stay on the sheet, also for a cut along its edge', () => {
    const [mark] = placeMarks([line('1', 0, 100, 200, 100)], [], room);
    expect(mark?.y).toBe(92.5);
  });

  it('are left out rather than laid over one another', () => {
    const many = Array.from({ length: 20 }, (_, index) => line(String(index + 1), 10, index, 30, index));
    const marks = placeMarks(many, [], { x: 0, y: 0, width: 40, height: 20 });
    expect(marks.length).toBeGreaterThan(0);
    for (const [index, mark] of marks.entries())
      for (const other of marks.slice(index + 1))
        expect(Math.hypot(mark.x - other.x, mark.y - other.y)).toBeGreaterThanOrEqual(
          mark.radius + other.radius,
        );
  });
});
