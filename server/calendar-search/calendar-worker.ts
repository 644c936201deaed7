import { parentPort } from 'node:worker_threads';
import { planNearOrFar } from '../planning/calendar/plan-near-or-far.ts';
import type { CalendarReport, CalendarTaskMessage } from './calendar-messages.ts';

/** The calendar thread: plans one calendar after another. Holds no state between them. */

const port = parentPort;
if (port === null) throw new Error('calendar-worker.ts is started as a worker thread only.');

port.on('message', ({ id, input }: CalendarTaskMessage) => {
  const tell = (report: CalendarReport): void => port.postMessage(report);
  try {
    tell({ kind: 'planned', id, plan: planNearOrFar(input) });
  } catch (error) {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    tell({ kind: 'failed', id, message });
  }
});
