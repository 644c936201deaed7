import { MINUTES_PER_DAY } from '../../climate/constants.ts';

/**
 * Which spans of time reach into a stretch of days? A span is filed under every day it touches.
 *
 * Minutes since midnight of day 0; days after the last share one list. Source: definition.
 */
export class DayLists {
  readonly #lists: number[][];
  readonly #used: number[] = [];

  constructor(days: number) {
    this.#lists = Array.from({ length: days + 1 }, () => []);
  }

  add(item: number, fromMinute: number, toMinute: number): void {
    const last = this.day(toMinute);
    for (let day = this.day(fromMinute); day <= last; day++) {
      this.#lists[day]?.push(item);
      this.#used.push(day);
    }
  }

  remove(item: number, fromMinute: number, toMinute: number): void {
    const last = this.day(toMinute);
    for (let day = this.day(fromMinute); day <= last; day++) {
      const list = this.#lists[day] as number[];
      list.splice(list.lastIndexOf(item), 1);
    }
  }

  clear(): void {
    for (const day of this.#used) (this.#lists[day] as number[]).length = 0;
    this.#used.length = 0;
  }

  /** Items filed under a day. */
  of(day: number): readonly number[] {
    return this.#lists[day] as number[];
  }

  day(minute: number): number {
    return Math.min(this.#lists.length - 1, Math.max(0, Math.floor(minute / MINUTES_PER_DAY)));
  }
}
