import { describe, expect, it } from 'vitest';
import { nameAtCaret, offeredNames } from '../../../client/grid/name-at-caret.ts';

/** `|` stands for the caret. */
function at(marked: string) {
  const caret = marked.indexOf('|');
  return nameAtCaret(marked.replace('|', ''), caret);
}

describe('the name at the caret', () => {
  it('is what of it is typed, or an empty place where one can stand', () => {
    expect(at('=|')).toEqual({ start: 1, end: 1, typed: '' });
    expect(at('=sea|')).toEqual({ start: 1, end: 4, typed: 'sea' });
    expect(at('= 2*pl|')).toEqual({ start: 4, end: 6, typed: 'pl' });
    expect(at('=depth - |')).toEqual({ start: 9, end: 9, typed: '' });
    expect(at('=max(de|; 3)')).toEqual({ start: 5, end: 7, typed: 'de' });
    expect(at('=pl|y - 2')).toEqual({ start: 1, end: 4, typed: 'pl' });
    expect(at('=größ|')).toEqual({ start: 1, end: 5, typed: 'größ' });
  });

  it('is none where no name can stand', () => {
    for (const text of [
      '600|',
      'ply|',
      '|',
      '|=ply',
      '=2|',
      '=2 m|',
      '=2m|',
      '=23 5/8 i|',
      '=(2)|',
      '=ply |',
      '=ply 2|',
    ])
      expect([text, at(text)]).toEqual([text, null]);
  });
});

const sizes = ['seat_depth', 'ply', 'back_ply', 'Plinth', 'seat height'].map((name) => ({ name, value: '' }));
const offered = (typed: string) => {
  const { names, marked } = offeredNames(sizes, typed);
  return [names.map(({ name }) => name), marked];
};

describe('the names offered', () => {
  it('are all that a calculation can use before anything is typed, none of them marked', () => {
    expect(offered('')).toEqual([['seat_depth', 'ply', 'back_ply', 'Plinth'], -1]);
  });

  it('begin with what is typed, or hold it, whatever the capitals; the first is marked', () => {
    expect(offered('PL')).toEqual([['ply', 'Plinth', 'back_ply'], 0]);
    expect(offered('seat')).toEqual([['seat_depth'], 0]);
  });

  it('leave a name that is typed in full to be taken as it is', () => {
    expect(offered('ply')).toEqual([['back_ply'], -1]);
    expect(offered('Seat_Depth')).toEqual([[], -1]);
    expect(offered('x')).toEqual([[], -1]);
  });

  it('are eight at most', () => {
    const many = Array.from({ length: 20 }, (_, index) => ({ name: `size_${index}`, value: '' }));
    expect(offeredNames(many, 'size').names).toHaveLength(8);
  });
});
