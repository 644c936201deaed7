import type { StoredCalendar } from '../../db/calendar-answer.repository.ts';
import type { CalendarPlan } from '../http/contract.ts';
import { stableHash } from '../planning/cutting/found/stable-hash.ts';

/** What calendar programs have been told of one task. Times are ISO 8601. */
export interface ToldEvent {
  readonly start: string;
  readonly end: string;
  /** Rises whenever start or end change, as RFC 5545 wants it. */
  readonly sequence: number;
  /** When it was last changed. */
  readonly at: string;
}

/** A project's calendar as last worked out. */
export interface KeptCalendar {
  readonly plannedFrom: Date;
  readonly feedToken: string;
  readonly question: string;
  /** Null before the first plan. */
  readonly answer: { readonly firstDate: string; readonly plan: CalendarPlan } | null;
  readonly events: Readonly<Record<string, ToldEvent>>;
}

export function toStored({ plannedFrom, feedToken, question, answer, events }: KeptCalendar): StoredCalendar {
  const row = {
    plannedFrom: plannedFrom.toISOString(),
    feedToken,
    question,
    answer: answer === null ? null : JSON.stringify(answer),
    events: JSON.stringify(events),
  };
  return { ...row, checkText: checkOf(row) };
}

/** Null when the row is damaged, or of an earlier program whose plans say less than is shown of them now. */
export function fromStored(row: StoredCalendar): KeptCalendar | null {
  if (row.checkText !== checkOf(row)) return null;
  const { feedToken, question } = row;
  const answer = row.answer === null ? null : (JSON.parse(row.answer) as KeptCalendar['answer']);
  const isOlder = answer !== null && !('uncured' in answer.plan);
  return {
    plannedFrom: new Date(row.plannedFrom),
    feedToken,
    question: isOlder ? '' : question,
    answer: isOlder ? null : answer,
    events: JSON.parse(row.events) as KeptCalendar['events'],
  };
}

function checkOf({
  plannedFrom,
  feedToken,
  question,
  answer,
  events,
}: Omit<StoredCalendar, 'checkText'>): string {
  return stableHash(JSON.stringify([plannedFrom, feedToken, question, answer, events]));
}

/** What calendar programs are told of a new plan: a task that moved gets the next sequence. */
export function toldEvents(
  before: KeptCalendar['events'],
  tasks: readonly { readonly id: string; readonly start: Date; readonly end: Date }[],
  at: Date,
): KeptCalendar['events'] {
  const told = { ...before };
  for (const { id, start, end } of tasks) {
    const known = told[id];
    const event = { start: start.toISOString(), end: end.toISOString() };
    if (known?.start === event.start && known.end === event.end) continue;
    told[id] = { ...event, sequence: known === undefined ? 0 : known.sequence + 1, at: at.toISOString() };
  }
  return told;
}
