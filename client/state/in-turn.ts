import { getState, setState } from './app-state.ts';

let last: Promise<unknown> = Promise.resolve();

/**
 * Does `work` after everything asked for earlier. Each edit must carry the revision the one before it led to, so
 * edits of one window go out one at a time, in the order they were made.
 */
export function inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
  setState({ pending: getState().pending + 1 });
  const result = last.then(work).finally(() => setState({ pending: getState().pending - 1 }));
  last = result.catch(() => undefined);
  return result;
}
