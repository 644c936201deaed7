import { describe, expect, it } from 'vitest';
import { readRoute, SCREEN_NAMES, writeRoute } from '../../../client/state/route.ts';

describe('the address of a screen', () => {
  it('reads back what it wrote, for every screen and for odd ids', () => {
    for (const screen of SCREEN_NAMES)
      for (const projectId of ['12', 'a/b', 'ü ?#'])
        expect(readRoute(writeRoute({ projectId, screen }))).toEqual({ projectId, screen });
  });

  it('takes an unknown screen for the part list and an unknown address for no project', () => {
    expect(readRoute('#/p/3/dungeon')).toEqual({ projectId: '3', screen: 'parts' });
    for (const hash of ['', '#', '#main', '#/p/', '#/x/3/parts'])
      expect(readRoute(hash)).toEqual({ projectId: null, screen: 'parts' });
  });
});
