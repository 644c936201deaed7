import { parentPort, workerData } from 'node:worker_threads';
import { carryOutSearch } from './carry-out-search.ts';
import type { SearchReport, SearchTask, SearchThreadData } from './search-messages.ts';

/** The search thread: takes tasks one after another and reports on each. Holds no state between them. */

const port = parentPort;
if (port === null) throw new Error('search-worker.ts is started as a worker thread only.');
const stop = new Int32Array((workerData as SearchThreadData).stop);

port.on('message', (task: SearchTask) => {
  const tell = (report: SearchReport): void => port.postMessage(report);
  try {
    carryOutSearch(task, {
      tell,
      isStopped: () => Atomics.load(stop, 0) >= task.id,
      clock: () => performance.now(),
    });
  } catch (error) {
    tell({
      kind: 'failed',
      id: task.id,
      message: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
});
