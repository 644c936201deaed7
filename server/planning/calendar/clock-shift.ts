/** From this minute on the clock on the wall is so many minutes ahead of the minutes gone by; negative: behind. */
export interface ClockShift {
  /** Real minutes since midnight at the start of day 0. */
  readonly fromMinute: number;
  readonly aheadMin: number;
}
