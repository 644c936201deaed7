import { STEP_WORDS } from '../finish/words.ts';
import type { Task } from './calendar-book.ts';

export const FACE_WORDS: Readonly<Record<Task['face'], string>> = {
  show: 'show face',
  back: 'back face',
  both: 'both faces',
};

export const STATE_WORDS: Readonly<Record<Task['state'], string>> = {
  planned: 'planned',
  pinned: 'pinned',
  done: 'done',
  assumed: 'taken as done',
};

/** "Topcoat 2" where the step has several coats, else "Topcoat". */
export function taskTitle({ kind, number }: Pick<Task, 'kind' | 'number'>, coats: number): string {
  return coats > 1 ? `${STEP_WORDS[kind]} ${number}` : STEP_WORDS[kind];
}

/** Hands-on work still to be done. */
export function isOpen({ state }: Pick<Task, 'state'>): boolean {
  return state === 'planned' || state === 'pinned';
}
