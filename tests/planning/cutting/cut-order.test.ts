import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutOrder } from '../../../server/planning/cutting/cut-order.ts';
import type { CutNode } from '../../../server/planning/plan-output.ts';

const part = (partId: string, lengthMm: number, widthMm: number): CutNode => ({
  type: 'part',
  partId,
  turned: false,
  lengthMm,
  widthMm,
});
const offcut = (lengthMm: number, widthMm: number): CutNode => ({ type: 'offcut', lengthMm, widthMm });
const split = (
  along: 'length' | 'width',
  lengthMm: number,
  widthMm: number,
  children: readonly CutNode[],
): CutNode => ({ type: 'split', along, lengthMm, widthMm, children });

/** kind, what lies on the saw, setting, from-to, what comes free. */
function told(layout: Parameters<typeof cutOrder>[0], kerfMm: number): unknown[] {
  return cutOrder(layout, kerfMm).map(({ number, kind, strip, settingMm, atMm, fromMm, toMm, frees }) => [
    number,
    kind,
    strip,
    settingMm,
    atMm,
    [fromMm, toMm],
    frees.map((piece) =>
      piece.type === 'part' ? piece.partId : piece.type === 'strip' ? `strip ${piece.strip}` : 'offcut',
    ),
  ]);
}

describe('the order of the saw cuts', () => {
  it('frees whole strips first, then cuts strip by strip', () => {
    // 1000 x 500, untrimmed, kerf 4. Rips: 200 | 4 | 146 | 4 | 146 makes 500.
    // Strip 1: 400 | 4 | 300 | 4 | 292 makes 1000. Strip 2: 600 | 4 | 396.
    const cut = split('width', 1000, 500, [
      split('length', 1000, 200, [part('a', 400, 200), part('b', 300, 200), offcut(292, 200)]),
      split('length', 1000, 146, [part('c', 600, 146), part('d', 396, 146)]),
      offcut(1000, 146),
    ]);
    expect(told({ lengthMm: 1000, widthMm: 500, cut }, 4)).toEqual([
      [1, 'rip', null, 200, 200, [0, 1000], ['strip 1']],
      // 200 + 4 + 146
      [2, 'rip', null, 146, 350, [0, 1000], ['strip 2', 'offcut']],
      [3, 'crosscut', 1, 400, 400, [0, 200], ['a']],
      // 400 + 4 + 300
      [4, 'crosscut', 1, 300, 704, [0, 200], ['b', 'offcut']],
      // The second strip lies from 204 to 350.
      [5, 'crosscut', 2, 600, 600, [204, 350], ['c', 'd']],
    ]);
  });

  it('begins with the trim of a full sheet: its long edges, then its ends', () => {
    // 10 off each side of 1000 x 500 leaves 980 x 480: 484 | 4 | 492. The kerf of the trim lies in the trim.
    const cut = split('length', 980, 480, [part('a', 484, 480), part('b', 492, 480)]);
    const layout = { lengthMm: 1000, widthMm: 500, cut };
    expect(told(layout, 4)).toEqual([
      [1, 'trim', null, 10, 6, [0, 1000], []],
      [2, 'trim', null, 10, 490, [0, 1000], []],
      [3, 'trim', null, 10, 6, [0, 500], []],
      [4, 'trim', null, 10, 990, [0, 500], []],
      // 10 + 484
      [5, 'crosscut', null, 484, 494, [10, 490], ['a', 'b']],
    ]);
    expect(cutOrder(layout, 4).at(-1)?.full).toBe(true);
  });

  it('cuts the last piece off a remainder no wider than the kerf', () => {
    // 48 + 4 + 45 of 100 leaves 3, less than the kerf: lost in the cut, so not in the tree.
    const cut = split('length', 100, 50, [part('a', 48, 50), part('b', 45, 50)]);
    expect(told({ lengthMm: 100, widthMm: 50, cut }, 4)).toEqual([
      [1, 'crosscut', null, 48, 48, [0, 50], ['a']],
      [2, 'crosscut', null, 45, 97, [0, 50], ['b']],
    ]);
  });

  it('needs one cut for a part beside an offcut, and none for a part that fills its stock', () => {
    const one = split('length', 100, 50, [part('a', 40, 50), offcut(56, 50)]);
    expect(told({ lengthMm: 100, widthMm: 50, cut: one }, 4)).toEqual([
      [1, 'crosscut', null, 40, 40, [0, 50], ['a', 'offcut']],
    ]);
    expect(cutOrder({ lengthMm: 100, widthMm: 50, cut: part('a', 100, 50) }, 4)).toEqual([]);
  });

  it('tells a short cut from one that runs from end to end', () => {
    const strip = split('length', 100, 20, [part('a', 40, 20), offcut(56, 20)]);
    const cut = split('width', 100, 50, [strip, offcut(100, 26)]);
    expect(cutOrder({ lengthMm: 100, widthMm: 50, cut }, 4).map(({ full }) => full)).toEqual([true, false]);
  });

  it('numbers parts by their place in the tree, equal ones apart', () => {
    const same = part('a', 30, 20);
    const strip = split('length', 98, 20, [same, same, same]);
    const cut = split('width', 98, 50, [strip, part('b', 98, 26)]);
    const pieces = cutOrder({ lengthMm: 98, widthMm: 50, cut }, 4).flatMap(({ frees }) =>
      frees.flatMap((piece) => (piece.type === 'part' ? [[piece.partId, piece.piece]] : [])),
    );
    expect(pieces).toEqual([
      ['b', 3],
      ['a', 0],
      ['a', 1],
      ['a', 2],
    ]);
  });

  it('frees every part and every offcut exactly once, whatever the tree', () => {
    // Trees are grown from the leaves: a split takes the widest child and the kerfs between.
    const leaf = fc
      .record({
        off: fc.boolean(),
        length: fc.integer({ min: 20, max: 400 }),
        width: fc.integer({ min: 20, max: 400 }),
      })
      .map(({ off, length, width }): CutNode => (off ? offcut(length, width) : part('p', length, width)));
    const { tree } = fc.letrec<{ tree: CutNode }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 3 },
        leaf,
        fc
          .tuple(
            fc.constantFrom('length' as const, 'width' as const),
            fc.array(tie('tree'), { minLength: 2, maxLength: 4 }),
          )
          .map(([along, children]) => grown(along, children)),
      ),
    }));
    fc.assert(
      fc.property(tree, (cut) => {
        const cuts = cutOrder({ lengthMm: cut.lengthMm, widthMm: cut.widthMm, cut }, 3);
        const freed = cuts.flatMap(({ frees }) => frees.filter(({ type }) => type !== 'strip'));
        const inTree = leaves(cut);
        expect(freed.length).toBe(cut.type === 'split' ? inTree.length : 0);
        expect(cuts.map(({ number }) => number)).toEqual(cuts.map((_, index) => index + 1));
        for (const { fromMm, toMm, atMm } of cuts) {
          expect(toMm).toBeGreaterThan(fromMm);
          expect(atMm).toBeGreaterThan(0);
        }
      }),
    );
  });
});

function grown(along: 'length' | 'width', children: readonly CutNode[]): CutNode {
  const size = (child: CutNode): number => (along === 'length' ? child.lengthMm : child.widthMm);
  const across = Math.max(...children.map((child) => (along === 'length' ? child.widthMm : child.lengthMm)));
  const run = children.reduce((sum, child) => sum + size(child), 3 * (children.length - 1));
  return along === 'length' ? split(along, run, across, children) : split(along, across, run, children);
}

function leaves(node: CutNode): CutNode[] {
  return node.type === 'split' ? node.children.flatMap(leaves) : [node];
}
