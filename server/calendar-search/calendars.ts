import { randomBytes } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import type { Logger } from 'pino';
import { putCalendarAnswer, readCalendarAnswer } from '../../db/calendar-answer.repository.ts';
import { Refusal } from '../../db/refusal.ts';
import type { CalendarAnswer, CalendarPlan } from '../http/contract.ts';
import type { ProjectEvents } from '../http/project-events.ts';
import type { PlannedProject, ProjectPlans } from '../http/project-plans.ts';
import type { CalendarReport } from './calendar-messages.ts';
import { type CalendarQuestion, calendarQuestion } from './calendar-question.ts';
import type { CalendarSettings } from './calendar-settings.ts';
import { calendarThread } from './calendar-thread.ts';
import { calendarView } from './calendar-view.ts';
import { fromStored, type KeptCalendar, toldEvents, toStored } from './stored-answer.ts';
import { clockShiftsOf, dateInZone, minuteAt, momentAt } from './zone-days.ts';

/** So many projects' calendars are kept in memory. */
const PROJECTS_KEPT = 16;
const TOKEN_BYTES = 18;

/** The coat calendars of all projects, worked out in a thread of their own and kept until the question is another. */
export interface Calendars {
  /** As it stands; begins to work it out where it is not up to date. */
  readonly state: (projectId: number) => CalendarAnswer;
  /** Resolves when the calendar is up to date, has failed, or so many milliseconds have passed. */
  readonly settled: (projectId: number, mostMs: number) => Promise<void>;
  /** Plans from now on, not from when the project was last changed. */
  readonly replan: (projectId: number) => void;
  /** What calendar programs are told, and the key they must give. */
  readonly feed: (projectId: number) => CalendarFeed;
  /** Gives the feed a new key, so that the address given out before leads nowhere. */
  readonly newFeedKey: (projectId: number) => void;
  readonly close: () => void;
}

export interface CalendarFeed {
  readonly key: string;
  readonly plan: CalendarPlan | null;
  readonly firstDate: string;
  readonly events: KeptCalendar['events'];
}

interface Given {
  readonly db: Database;
  readonly plans: ProjectPlans;
  readonly events: ProjectEvents;
  readonly settings: CalendarSettings;
  readonly log: Logger;
  readonly now: () => Date;
}

interface Asked {
  readonly projectId: number;
  readonly plannedFrom: Date;
  readonly question: CalendarQuestion;
}

interface Look {
  readonly entry: PlannedProject;
  readonly kept: KeptCalendar;
  readonly plannedFrom: Date;
  readonly question: CalendarQuestion;
  readonly current: boolean;
}

export function calendars({ db, plans, events, settings, log, now }: Given): Calendars {
  const thread = calendarThread((report) => hear(report));
  const known = new Map<number, KeptCalendar>();
  /** Someone has looked at these: they are kept up to date while a window is open. */
  const wanted = new Set<number>();
  const asked = new Map<number, Asked>();
  /** The question that last went wrong, by project; it is not asked again by itself. */
  const failed = new Map<number, Asked>();
  const resting = new Map<number, NodeJS.Timeout>();
  const waiting = new Map<number, Set<() => void>>();
  let running: (Asked & { readonly id: number }) | null = null;
  let lastId = 0;
  let closed = false;

  events.watch((projectId) => {
    if (closed || !wanted.has(projectId)) return;
    clearTimeout(resting.get(projectId));
    const timer = setTimeout(() => {
      resting.delete(projectId);
      refresh(projectId);
    }, settings.restMs);
    timer.unref();
    resting.set(projectId, timer);
  });

  function refresh(projectId: number): void {
    if (closed || !events.openProjects().has(projectId)) return;
    try {
      const before = known.get(projectId)?.question;
      const look = lookAt(projectId);
      if (!look.current || look.kept.question !== before) announce(projectId);
    } catch (error) {
      if (!(error instanceof Refusal)) log.error({ err: error }, 'the calendar could not be looked at');
    }
  }

  function kept(projectId: number): KeptCalendar {
    let found = known.get(projectId);
    if (found === undefined) {
      const row = readCalendarAnswer(db, projectId);
      found = (row && fromStored(row)) ?? {
        plannedFrom: new Date(0),
        feedToken: newToken(),
        question: '',
        answer: null,
        events: {},
      };
      if (row?.feedToken !== found.feedToken) put(projectId, found);
    }
    known.delete(projectId);
    known.set(projectId, found);
    for (const oldest of known.keys()) {
      if (known.size <= PROJECTS_KEPT) break;
      known.delete(oldest);
    }
    return found;
  }

  function put(projectId: number, calendar: KeptCalendar): void {
    putCalendarAnswer(db, projectId, toStored(calendar), now().toISOString());
    known.set(projectId, calendar);
  }

  /** Whether the kept calendar answers the question as it is now; where it does not, it is asked. */
  function lookAt(projectId: number, anew = false): Look {
    const entry = plans.current(projectId);
    wanted.add(projectId);
    const calendar = kept(projectId);
    const { timeZone } = entry.input.settings;
    const today = dateInZone(now(), timeZone);
    const since = asked.get(projectId);
    if (!anew)
      for (const plannedFrom of [
        since?.plannedFrom,
        calendar.plannedFrom,
        failed.get(projectId)?.plannedFrom,
      ]) {
        if (plannedFrom === undefined || dateInZone(plannedFrom, timeZone) !== today) continue;
        const question = calendarQuestion(entry, plannedFrom);
        const look = { entry, kept: calendar, plannedFrom, question };
        // What was asked last comes first: a plan from now is wanted although the one there is still holds.
        if (question.hash === since?.question.hash) return { ...look, current: false };
        if (question.hash === calendar.question) {
          if (since !== undefined) withdraw(projectId);
          return { ...look, current: true };
        }
        if (question.hash === failed.get(projectId)?.question.hash) return { ...look, current: false };
      }
    const plannedFrom = now();
    const question = calendarQuestion(entry, plannedFrom);
    const look = { entry, kept: calendar, plannedFrom, question };
    if (question.input === null) {
      withdraw(projectId);
      const next = { ...calendar, plannedFrom, question: question.hash, answer: null };
      put(projectId, next);
      return { ...look, kept: next, current: true };
    }
    ask({ projectId, plannedFrom, question });
    return { ...look, current: false };
  }

  function isFailed(projectId: number, { hash }: CalendarQuestion): boolean {
    return failed.get(projectId)?.question.hash === hash;
  }

  function ask(one: Asked): void {
    failed.delete(one.projectId);
    asked.set(one.projectId, one);
    if (running?.projectId === one.projectId) thread.giveUp();
    next();
  }

  function withdraw(projectId: number): void {
    asked.delete(projectId);
    if (running?.projectId === projectId) thread.giveUp();
    settle(projectId);
  }

  function next(): void {
    if (running !== null || closed) return;
    const [one] = asked.values();
    if (one === undefined || one.question.input === null) return;
    running = { ...one, id: ++lastId };
    thread.run({ id: running.id, input: one.question.input }, settings.longestMs);
  }

  function hear(report: CalendarReport): void {
    const task = running;
    if (task === null || report.id !== task.id) return;
    running = null;
    const { projectId, question } = task;
    if (asked.get(projectId)?.question.hash === question.hash) {
      asked.delete(projectId);
      if (report.kind === 'planned') guarded(() => store(task, report.plan));
      else {
        failed.set(projectId, task);
        log.error({ reason: report.message }, 'a calendar could not be worked out');
      }
      settle(projectId);
      guarded(() => announce(projectId));
    }
    next();
  }

  function guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      if (!(error instanceof Refusal)) log.error({ err: error }, 'a calendar could not be kept');
    }
  }

  function store({ projectId, plannedFrom, question }: Asked, plan: CalendarPlan): void {
    const { timeZone } = plans.current(projectId).input.settings;
    const before = kept(projectId);
    const { firstDate } = question.days;
    const told = plan.tasks.map(({ id, startMinute, endMinute }) => ({
      id,
      start: momentAt(startMinute, firstDate, timeZone),
      end: momentAt(endMinute, firstDate, timeZone),
    }));
    put(projectId, {
      ...before,
      plannedFrom,
      question: question.hash,
      answer: { firstDate, plan },
      events: toldEvents(before.events, told, now()),
    });
  }

  function settle(projectId: number): void {
    for (const resolve of waiting.get(projectId) ?? []) resolve();
    waiting.delete(projectId);
  }

  function announce(projectId: number): void {
    if (closed || !events.openProjects().has(projectId)) return;
    const { revision, state: how, stale } = state(projectId);
    events.tellCalendar(projectId, { revision, state: how, stale });
  }

  function state(projectId: number): CalendarAnswer {
    const { entry, kept: calendar, question, current } = lookAt(projectId);
    const { timeZone } = entry.input.settings;
    const plan = calendar.answer?.plan ?? null;
    const firstDate = calendar.answer?.firstDate ?? question.days.firstDate;
    const days =
      firstDate === question.days.firstDate
        ? question.days
        : { ...question.days, firstDate, clockShifts: clockShiftsOf(firstDate, timeZone) };
    const from =
      current || plan === null
        ? question.days.fromMinute
        : minuteAt(calendar.plannedFrom, firstDate, timeZone);
    return {
      revision: entry.project.revision,
      state: current ? 'ready' : isFailed(projectId, question) ? 'failed' : 'working',
      stale: !current && plan !== null,
      ...calendarView(entry, plan, { ...days, fromMinute: from }, question.problems),
      nowMinute: Math.floor(minuteAt(now(), firstDate, timeZone)),
      plannedFromMinute: from,
      feedPath: `/api/projects/${projectId}/calendar.ics?key=${calendar.feedToken}`,
    };
  }

  return {
    state,
    async settled(projectId, mostMs) {
      const { current, question } = lookAt(projectId);
      if (current || isFailed(projectId, question)) return;
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, mostMs);
        timer.unref();
        const resolves = waiting.get(projectId) ?? new Set();
        waiting.set(projectId, resolves);
        resolves.add(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    },
    replan(projectId) {
      lookAt(projectId, true);
      announce(projectId);
    },
    feed(projectId) {
      const { kept: calendar, question } = lookAt(projectId);
      return {
        key: calendar.feedToken,
        plan: calendar.answer?.plan ?? null,
        firstDate: calendar.answer?.firstDate ?? question.days.firstDate,
        events: calendar.events,
      };
    },
    newFeedKey(projectId) {
      plans.current(projectId);
      put(projectId, { ...kept(projectId), feedToken: newToken() });
    },
    close() {
      closed = true;
      for (const timer of resting.values()) clearTimeout(timer);
      for (const projectId of waiting.keys()) settle(projectId);
      thread.close();
    },
  };
}

function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url');
}
