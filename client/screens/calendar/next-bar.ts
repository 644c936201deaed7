import type { Task } from './calendar-book.ts';

export type BarKey = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown' | 'Home' | 'End';

/**
 * Which bar an arrow key leads to: left and right along the lane, up and down to the bar nearest in time on the lane
 * beside, Home and End to the first and last of the lane. Null where there is none further.
 */
export function nextBar(
  tasks: readonly Task[],
  lanes: readonly string[],
  fromId: string,
  key: BarKey,
): string | null {
  const from = tasks.find(({ id }) => id === fromId);
  if (from === undefined) return tasks[0]?.id ?? null;
  const onLane = (lane: string | undefined): readonly Task[] =>
    tasks.filter(({ batchId }) => batchId === lane);
  const own = onLane(from.batchId);
  const place = own.indexOf(from);
  switch (key) {
    case 'ArrowLeft':
      return own[place - 1]?.id ?? null;
    case 'ArrowRight':
      return own[place + 1]?.id ?? null;
    case 'Home':
      return own[0]?.id ?? null;
    case 'End':
      return own.at(-1)?.id ?? null;
    case 'ArrowUp':
    case 'ArrowDown': {
      const lane = lanes[lanes.indexOf(from.batchId) + (key === 'ArrowUp' ? -1 : 1)];
      const [nearest] = [...onLane(lane)].sort(
        (a, b) => Math.abs(a.startMinute - from.startMinute) - Math.abs(b.startMinute - from.startMinute),
      );
      return nearest?.id ?? null;
    }
  }
}
