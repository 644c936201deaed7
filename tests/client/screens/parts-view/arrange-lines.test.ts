import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangeLines } from '../../../../client/screens/parts/view/arrange-lines.ts';
import { filterValues } from '../../../../client/screens/parts/view/filter-values.ts';
import { heldRows } from '../../../../client/screens/parts/view/held-rows.ts';
import {
  type ListView,
  PLAIN_VIEW,
  withFilter,
  withGroupOpen,
  withGroups,
  withNextSort,
  withoutFilters,
  withSearch,
  withTouched,
} from '../../../../client/screens/parts/view/list-view.ts';
import { book, columns, keysOf, lineOf } from './sample-lines.ts';

const LINES = [
  lineOf('1', { name: 'Side', section: 'Carcass', materialId: 'ply-18' }, 1800),
  lineOf('2', { name: 'Shelf 10', section: 'Carcass', materialId: 'ply-18', note: 'Loose' }, 600),
  lineOf('3', { name: 'Shelf 9', section: 'Door', materialId: 'ply-6' }, 600),
  lineOf('4', { name: 'Plinth', section: '', materialId: 'ply-18' }, null),
  lineOf('5', { name: 'Top', section: 'Door', materialId: 'ebony' }, 90),
];
const arranged = (view: ListView) => arrangeLines(LINES, view, columns);
const shown = (view: ListView): string => keysOf(arranged(view).lines);

describe('the search', () => {
  const found = (search: string): string => shown(withSearch(PLAIN_VIEW, search));

  it('looks in name, section, material, note and sizes as they are shown, whatever the case', () => {
    expect(found('shelf')).toBe('2 3');
    expect(found('DOOR')).toBe('3 5');
    expect(found('plywood door')).toBe('3');
    expect(found('loose')).toBe('2');
    expect(found('1800')).toBe('1');
    // Shown as typed, as it cannot be read.
    expect(found('13/1')).toBe('4');
  });

  it('wants every word, each in whatever cell', () => {
    expect(found('shelf carcass')).toBe('2');
    expect(found('shelf  ebony')).toBe('');
    // The end of one cell and the start of the next make no word.
    expect(found('sidecarcass')).toBe('');
  });

  it('reads a number from its beginning', () => {
    expect(found('600')).toBe('2 3');
    expect(found('00')).toBe('');
    expect(found('18')).toBe('1 2 4');
  });

  it('shows everything when it is empty or only spaces', () => {
    expect(found('')).toBe('1 2 3 4 5');
    expect(found('   ')).toBe('1 2 3 4 5');
    expect(arranged(withSearch(PLAIN_VIEW, '  ')).matching).toBe(5);
  });

  it('sees what is typed and still on its way', () => {
    const line = lineOf('6', { name: 'Rail' }, 500, { name: 'Stile' });
    expect(keysOf(arrangeLines([line], withSearch(PLAIN_VIEW, 'stile'), columns).lines)).toBe('6');
  });
});

describe('filters', () => {
  it('show the chosen values of a column, and agree with each other and with the search', () => {
    const doors = withFilter(PLAIN_VIEW, 'section', new Set(['Door']));
    expect(shown(doors)).toBe('3 5');
    const both = withFilter(doors, 'materialId', new Set(['ply-6', 'ply-18']));
    expect(shown(both)).toBe('3');
    expect(shown(withSearch(both, 'top'))).toBe('');
    expect(shown(withoutFilters(both))).toBe('1 2 3 4 5');
    expect(shown(withFilter(both, 'section', null))).toBe('1 2 3 4');
  });

  it('can show the rows without a value, and nothing at all', () => {
    expect(shown(withFilter(PLAIN_VIEW, 'section', new Set([''])))).toBe('4');
    expect(shown(withFilter(PLAIN_VIEW, 'section', new Set()))).toBe('');
  });

  it('keep rows in sight that were edited or added since, until they are changed', () => {
    const doors = withFilter(PLAIN_VIEW, 'section', new Set(['Door']));
    const touched = withTouched(doors, ['1'], ['4']);
    expect(shown(touched)).toBe('1 3 4 5');
    expect(arranged(touched)).toMatchObject({ matching: 2, kept: 2 });
    expect(shown(withSearch(touched, 'shelf'))).toBe('3');
    // Without a filter there is nothing to keep.
    expect(withTouched(PLAIN_VIEW, ['1'], [])).toBe(PLAIN_VIEW);
  });

  it('offer the values of a column by name with their rows, the empty one last', () => {
    expect(filterValues(LINES, 'materialId', book)).toEqual([
      { value: 'ply-6', text: 'birch 6', rows: 1 },
      { value: 'ply-18', text: 'birch 18', rows: 3 },
      { value: 'ebony', text: 'ebony', rows: 1 },
    ]);
    expect(filterValues(LINES, 'section', book).at(-1)).toEqual({ value: '', text: 'no section', rows: 1 });
  });
});

describe('sorting', () => {
  const sorted = (columnId: string, presses: number): string => {
    let view = PLAIN_VIEW;
    for (let press = 0; press < presses; press += 1) view = withNextSort(view, columnId);
    return shown(view);
  };

  it('goes by millimetres, with what cannot be read last in both directions', () => {
    expect(sorted('length', 1)).toBe('5 2 3 1 4');
    expect(sorted('length', 2)).toBe('1 2 3 5 4');
  });

  it('comes back to the order of the list at the third press', () => {
    expect(sorted('length', 3)).toBe('1 2 3 4 5');
  });

  it('goes by names as people count, and by what a cell shows', () => {
    expect(sorted('name', 1)).toBe('4 3 2 1 5');
    // Birch 6 before birch 18, and the name nobody knows by itself.
    expect(sorted('materialId', 1)).toBe('3 1 2 4 5');
    expect(sorted('section', 1)).toBe('1 2 3 5 4');
  });

  it('puts rows added since at the end', () => {
    const view = withTouched(withNextSort(PLAIN_VIEW, 'length'), ['1'], ['5']);
    expect(shown(view)).toBe('2 3 1 4 5');
    // Choosing an order again puts them in.
    expect(shown(withNextSort(view, 'length'))).toBe('1 2 3 5 4');
  });

  it('keeps equal rows as the list has them, and every row once', () => {
    const some = fc.array(fc.option(fc.integer({ min: 1, max: 4 })), { maxLength: 30 });
    fc.assert(
      fc.property(some, fc.constantFrom(1, 2), (lengths, presses) => {
        const lines = lengths.map((length, index) => lineOf(String(index), {}, length));
        let view = PLAIN_VIEW;
        for (let press = 0; press < presses; press += 1) view = withNextSort(view, 'length');
        const result = arrangeLines(lines, view, columns).lines;
        expect(result.length).toBe(lines.length);
        result.forEach((line, index) => {
          const next = result[index + 1];
          if (next === undefined) return;
          const [a, b] = [line.plan?.lengthMm ?? null, next.plan?.lengthMm ?? null];
          if (a === b) expect(line.number).toBeLessThan(next.number);
          else if (b !== null) expect(a !== null && (presses === 1 ? a < b : a > b)).toBe(true);
        });
      }),
    );
  });
});

describe('groups', () => {
  const grouped = withGroups(PLAIN_VIEW, 'section');
  const groupsOf = (view: ListView): string[] =>
    (arranged(view).groups ?? []).map(
      ({ value, size, lines, open }) => `${value}/${size}${open ? '' : ' closed'}: ${keysOf(lines)}`,
    );

  it('stand by name with the nameless last, each sorted inside', () => {
    expect(groupsOf(grouped)).toEqual(['Carcass/2: 1 2', 'Door/2: 3 5', '/1: 4']);
    expect(groupsOf(withNextSort(grouped, 'length'))).toEqual(['Carcass/2: 2 1', 'Door/2: 5 3', '/1: 4']);
  });

  it('leave out groups without a match, and know how many rows they have in all', () => {
    expect(groupsOf(withSearch(grouped, 'top'))).toEqual(['Door/2: 5']);
  });

  it('remember that they are closed', () => {
    const closed = withGroupOpen(grouped, 'Door', false);
    expect(groupsOf(closed)[1]).toBe('Door/2 closed: 3 5');
    expect(groupsOf(withGroupOpen(closed, 'Door', true))).toEqual(groupsOf(grouped));
    expect(withGroupOpen(closed, 'Door', false)).toBe(closed);
  });

  it('take a row at once that is given another value', () => {
    const moving = LINES.map((line) =>
      line.key === '1' ? lineOf('1', { section: 'Carcass' }, 1800, { section: 'Door' }) : line,
    );
    const groups = arrangeLines(moving, grouped, columns).groups ?? [];
    expect(groups.map(({ value, lines }) => `${value}: ${keysOf(lines)}`)).toEqual([
      'Carcass: 2',
      'Door: 1 3 5',
      ': 4',
    ]);
  });
});

describe('while an editor is open', () => {
  it('rows stay where they are, take what is new in them, and new ones stand last', () => {
    const [one, two, three] = LINES as [(typeof LINES)[0], (typeof LINES)[0], (typeof LINES)[0]];
    const newTwo = lineOf('2', { name: 'Shelf 11' }, 700);
    const added = lineOf('9', { name: 'New' }, 1);
    const held = heldRows([one, two, three], [newTwo, added, one], [newTwo, added, one]);
    expect(keysOf(held)).toBe('1 2 9');
    expect(held[1]).toBe(newTwo);
  });
});
