import { Worker } from 'node:worker_threads';
import type { CalendarReport, CalendarTaskMessage } from './calendar-messages.ts';
import { IDLE_MS, PATIENCE_MS } from './calendar-settings.ts';

/** One thread that plans calendars, started when it is first needed and again after it has been ended. */
export interface CalendarThread {
  /** Hands over a calendar; nothing may be under way. */
  readonly run: (task: CalendarTaskMessage, longestMs: number) => void;
  /** What is under way is not wanted any more; a `failed` report follows soon, unless it ends first. */
  readonly giveUp: () => void;
  readonly close: () => void;
}

export function calendarThread(hear: (report: CalendarReport) => void): CalendarThread {
  let worker: Worker | null = null;
  let running: number | null = null;
  let deadline: NodeJS.Timeout | null = null;
  let idle: NodeJS.Timeout | null = null;
  let closed = false;

  function start(): Worker {
    const started = new Worker(new URL('./start-calendar-worker.mjs', import.meta.url), { execArgv: [] });
    // The thread must not keep the program from ending.
    started.unref();
    started.on('message', (report: CalendarReport) => {
      if (started === worker && report.id === running) over(report);
    });
    started.on('error', (error) => lost(started, error.stack ?? error.message));
    started.on('exit', () => lost(started, 'the calendar thread has ended'));
    return started;
  }

  function over(report: CalendarReport): void {
    running = null;
    if (deadline !== null) clearTimeout(deadline);
    deadline = null;
    idle = setTimeout(end, IDLE_MS);
    idle.unref();
    if (!closed) hear(report);
  }

  function lost(from: Worker, message: string): void {
    if (from !== worker) return;
    worker = null;
    if (running !== null) over({ kind: 'failed', id: running, message });
  }

  function end(): void {
    if (idle !== null) clearTimeout(idle);
    idle = null;
    const ending = worker;
    worker = null;
    void ending?.terminate();
  }

  /** Ends the thread, and reports what it was doing as failed. */
  function cut(message: string): void {
    const id = running;
    end();
    if (id !== null) over({ kind: 'failed', id, message });
  }

  function cutAfter(ms: number, message: string): void {
    if (deadline !== null) clearTimeout(deadline);
    deadline = setTimeout(() => cut(message), ms);
    deadline.unref();
  }

  return {
    run(task, longestMs) {
      if (running !== null) throw new Error(`calendar ${running} is still being planned`);
      if (idle !== null) clearTimeout(idle);
      idle = null;
      worker ??= start();
      running = task.id;
      worker.postMessage(task);
      cutAfter(longestMs, `no calendar was found within ${longestMs} ms`);
    },
    giveUp() {
      if (running !== null) cutAfter(PATIENCE_MS, 'the calendar was not wanted any more');
    },
    close() {
      closed = true;
      running = null;
      if (deadline !== null) clearTimeout(deadline);
      end();
    },
  };
}
