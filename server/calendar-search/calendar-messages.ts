import type { CalendarInput } from '../planning/calendar/calendar-input.ts';
import type { CalendarPlan } from '../planning/calendar/calendar-plan.ts';

/** What the calendar thread is asked, and what it answers. Plain data, copied from one thread to the other. */
export interface CalendarTaskMessage {
  readonly id: number;
  readonly input: CalendarInput;
}

export type CalendarReport =
  | { readonly kind: 'planned'; readonly id: number; readonly plan: CalendarPlan }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
