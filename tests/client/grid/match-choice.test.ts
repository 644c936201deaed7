import { describe, expect, it } from 'vitest';
import { filterChoices, matchChoice } from '../../../client/grid/match-choice.ts';

const choices = [
  { value: 'hidden', text: 'hidden', hint: 'in a joint or against a wall' },
  { value: 'birch-veneer-22', text: 'birch 22', detail: 'Birch veneer edge banding 22 mm' },
  { value: 'walnut-veneer-22', text: 'walnut 22', detail: 'Walnut veneer edge banding 22 mm' },
  { value: 'white-1', text: 'white 1', detail: 'White plastic edging 1 mm' },
];
const texts = (typed: string): string[] => filterChoices(choices, typed).map(({ text }) => text);

describe('the choices of a cell', () => {
  it('are found by value, short name or long name in any case and spacing', () => {
    expect(matchChoice(choices, 'walnut-veneer-22')?.value).toBe('walnut-veneer-22');
    expect(matchChoice(choices, '  Walnut   22 ')?.value).toBe('walnut-veneer-22');
    expect(matchChoice(choices, 'birch veneer edge banding 22 mm')?.value).toBe('birch-veneer-22');
  });

  it('are not guessed at from part of a name', () => {
    expect(matchChoice(choices, 'walnut')).toBeNull();
    expect(matchChoice(choices, '')).toBeNull();
  });

  it('narrow to those in which every typed word begins a word', () => {
    expect(texts('w')).toEqual(['walnut 22', 'white 1']);
    expect(texts('veneer 22')).toEqual(['birch 22', 'walnut 22']);
    expect(texts('alnut')).toEqual([]);
  });

  it('show those whose short name begins with the text first, and all for no text', () => {
    expect(
      filterChoices(
        [
          { value: '1', text: 'pale oak' },
          { value: '2', text: 'oak 3' },
        ],
        'oak',
      ).map(({ text }) => text),
    ).toEqual(['oak 3', 'pale oak']);
    expect(texts(' ')).toEqual(['hidden', 'birch 22', 'walnut 22', 'white 1']);
  });

  it('are not found by what merely explains them', () => {
    expect(texts('wall')).toEqual([]);
  });
});
