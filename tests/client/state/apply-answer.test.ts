import { describe, expect, it } from 'vitest';
import { applyAnswer } from '../../../client/state/apply-answer.ts';
import type { ChangeAnswer, ProjectState } from '../../../server/http/contract.ts';

const row = (id: string, position: number, name = id): unknown => ({ id, position, name });
const planOf = (id: string, lengthMm: number): unknown => ({ id, lengthMm });

const project = {
  id: '1',
  revision: 4,
  settings: { name: 'before' },
  rows: { parts: [row('1', 1), row('2', 2), row('3', 3)], sizes: [row('9', 1)] },
  plan: { parts: [planOf('1', 100), planOf('2', 200), planOf('3', 300)], totals: { pieces: 3 } },
  canUndo: false,
  canRedo: false,
  undoLabel: null,
  redoLabel: null,
} as unknown as ProjectState;

const answer = {
  revision: 5,
  settings: { name: 'after' },
  changed: { parts: [row('2', 2, 'renamed'), row('4', 1.5)] },
  removed: { parts: ['3'] },
  inserted: { 'new-1': '4' },
  plan: { parts: [planOf('2', 222), planOf('4', 400)], totals: { pieces: 4 } },
  removedPartPlans: ['3'],
  canUndo: true,
  canRedo: false,
  undoLabel: 'rename',
  redoLabel: null,
} as unknown as ChangeAnswer;

describe('an answer applied to the project', () => {
  const next = applyAnswer(project, answer);

  it('replaces, adds and removes rows by id and keeps them in their places', () => {
    expect(next.rows.parts.map(({ id, name }) => [id, name])).toEqual([
      ['1', '1'],
      ['4', '4'],
      ['2', 'renamed'],
    ]);
  });

  it('keeps rows, tables and settings that did not change as the same objects', () => {
    expect(next.rows.parts[0]).toBe(project.rows.parts[0]);
    expect(next.rows.sizes).toBe(project.rows.sizes);
    expect(applyAnswer(project, { ...answer, settings: { ...project.settings } }).settings).toBe(
      project.settings,
    );
    expect(next.plan.parts.find(({ id }) => id === '1')).toBe(project.plan.parts[0]);
  });

  it('puts in the part figures that changed in the order of the list, and takes out those of removed parts', () => {
    expect(next.plan.parts.map(({ id, lengthMm }) => [id, lengthMm])).toEqual([
      ['1', 100],
      ['4', 400],
      ['2', 222],
    ]);
    expect(next.plan.totals.pieces).toBe(4);
  });

  it('takes revision, settings and undo from the answer and leaves the old project as it was', () => {
    expect([next.revision, next.settings.name, next.canUndo, next.undoLabel]).toEqual([
      5,
      'after',
      true,
      'rename',
    ]);
    expect(project.rows.parts).toHaveLength(3);
    expect(project.revision).toBe(4);
  });
});
