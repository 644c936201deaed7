import { Worker } from 'node:worker_threads';
import type { SearchReport, SearchTask, SearchThreadData } from './search-messages.ts';

/** How long a task may take to notice that it is to stop before its thread is ended, ms. */
const PATIENCE_MS = 3000;
/** A thread without work is let go after this, ms; it holds some 40 MB. */
const IDLE_MS = 60_000;
/** Room for short-lived objects in the thread, MB: with little of it, five thousand parts take 40 MB less, at the same speed. Ours, measured. */
const YOUNG_MB = 8;
/** Room for what lasts, MB: three times what the largest jobs take. With the usual limit the thread tidies up much later. Ours, measured. */
const OLD_MB = 512;

/** One thread that searches, started when it is first needed and again after it has failed. */
export interface SearchThread {
  /** Hands over a task; the one before must have ended. */
  readonly run: (task: SearchTask) => void;
  /** Asks tasks up to this id to stop; they end with a report, at the latest when the patience is over. */
  readonly stop: (id: number) => void;
  readonly close: () => Promise<void>;
}

const WORKER = new URL('./start-search-worker.mjs', import.meta.url);

/** `file`: the module that the thread runs. */
export function searchThread(hear: (report: SearchReport) => void, file = WORKER): SearchThread {
  const stop = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const stopped = new Int32Array(stop);
  let worker: Worker | null = null;
  let running: number | null = null;
  let patience: NodeJS.Timeout | null = null;
  let idle: NodeJS.Timeout | null = null;

  function start(): Worker {
    const workerData: SearchThreadData = { stop };
    const started = new Worker(file, {
      workerData,
      execArgv: [],
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB, maxOldGenerationSizeMb: OLD_MB },
    });
    // The thread must not keep the program from ending.
    started.unref();
    started.on('message', (report: SearchReport) => {
      if (started !== worker || report.id !== running) return;
      if (report.kind === 'ended' || report.kind === 'failed') free();
      hear(report);
    });
    started.on('error', (error) => lost(started, error.stack ?? error.message));
    started.on('exit', () => lost(started, 'the search thread has ended'));
    return started;
  }

  function free(): void {
    running = null;
    if (patience !== null) clearTimeout(patience);
    patience = null;
    idle = setTimeout(() => void end(), IDLE_MS);
    idle.unref();
  }

  /** The thread is gone; what it was doing has failed, or was stopped the hard way. */
  function lost(from: Worker, message: string): void {
    if (from !== worker) return;
    worker = null;
    if (running === null) return;
    const id = running;
    free();
    hear(
      Atomics.load(stopped, 0) >= id ? { kind: 'ended', id, stopped: true } : { kind: 'failed', id, message },
    );
  }

  async function end(): Promise<void> {
    if (idle !== null) clearTimeout(idle);
    idle = null;
    const ending = worker;
    worker = null;
    await ending?.terminate();
  }

  return {
    run(task) {
      if (running !== null) throw new Error(`task ${running} has not ended`);
      if (idle !== null) clearTimeout(idle);
      idle = null;
      worker ??= start();
      running = task.id;
      worker.postMessage(task);
    },
    stop(id) {
      Atomics.store(stopped, 0, Math.max(id, Atomics.load(stopped, 0)));
      if (running === null || running > id || patience !== null) return;
      patience = setTimeout(() => void worker?.terminate(), PATIENCE_MS);
      patience.unref();
    },
    async close() {
      running = null;
      if (patience !== null) clearTimeout(patience);
      await end();
    },
  };
}
