import { beforeEach, describe, expect, it } from 'vitest';
import { getState, setState } from '../../../client/state/app-state.ts';
import { hearCutting } from '../../../client/state/cutting-actions.ts';
import type { CuttingSearchAnswer, ProjectState } from '../../../server/http/contract.ts';

const answer = (sequence: number, state: string) =>
  ({
    sequence,
    revision: 3,
    planVersion: 0,
    materials: [{ id: 'ply', state }],
  }) as unknown as CuttingSearchAnswer;
const shown = () => getState().cutting?.materials[0]?.state;

describe('what the server says of the searches', () => {
  beforeEach(() => setState({ project: { id: '7', revision: 3 } as ProjectState, cutting: null }));

  it('is shown as it comes', () => {
    hearCutting('7', answer(1, 'running'));
    expect(shown()).toBe('running');
    hearCutting('7', answer(2, 'idle'));
    expect(shown()).toBe('idle');
  });

  it('stays when an earlier answer arrives after it: stopped is stopped, however late the answer to “Stop” is', () => {
    hearCutting('7', answer(12, 'idle'));
    hearCutting('7', answer(11, 'running'));
    expect(shown()).toBe('idle');
  });

  it('is left alone when it is about another project', () => {
    hearCutting('7', answer(21, 'idle'));
    hearCutting('8', answer(22, 'running'));
    expect(shown()).toBe('idle');
  });
});
