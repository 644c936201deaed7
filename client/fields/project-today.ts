import { getState } from '../state/store.ts';
import { isoToday } from './iso-today.ts';

/** Today where the project is, as the server last said; the reader's own today before that. */
export function projectToday(): string {
  const { buying, ledger } = getState();
  return buying?.today ?? ledger?.today ?? isoToday();
}
