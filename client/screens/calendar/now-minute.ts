import type { CalendarAnswer } from '../../../server/http/contract.ts';
import { actions, getState } from '../../state/store.ts';

const MS_PER_MINUTE = 60_000;

const heardAt = new WeakMap<CalendarAnswer, number>();

/** The present minute: the server's at the time of its answer, and what has gone by since. */
export function nowMinute(answer: CalendarAnswer): number {
  const since = heardAt.get(answer);
  if (since === undefined) {
    heardAt.set(answer, Date.now());
    return answer.nowMinute;
  }
  return answer.nowMinute + Math.floor((Date.now() - since) / MS_PER_MINUTE);
}

setInterval(() => {
  if (getState().screen === 'calendar' && !document.hidden) actions.redraw();
}, MS_PER_MINUTE);
