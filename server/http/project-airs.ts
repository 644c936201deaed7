import type { Calendars } from '../calendar-search/calendars.ts';
import type { AirPlan } from '../planning/air/project/air-plan.ts';
import { projectAir } from '../planning/air/project/project-air.ts';
import type { CalendarPlan } from '../planning/calendar/calendar-plan.ts';
import type { AirAnswer } from './contract.ts';
import type { PlannedProject, ProjectPlans } from './project-plans.ts';
import { isFigure } from './strip-workings.ts';

/** The air checks of all projects, each made once per plan of the project and of its calendar. */
export interface ProjectAirs {
  readonly answer: (projectId: number) => AirAnswer;
  /** With all workings. */
  readonly plan: (projectId: number) => AirPlan;
}

interface Known {
  readonly calendar: CalendarPlan | null;
  readonly firstDate: string;
  readonly days: number;
  readonly air: AirPlan;
  readonly view: AirAnswer['air'];
}

export function projectAirs(plans: ProjectPlans, calendars: Calendars): ProjectAirs {
  const known = new WeakMap<PlannedProject, Known>();

  function current(projectId: number): { readonly known: Known; readonly answer: AirAnswer } {
    const { revision, state, stale, plan, firstDate, timeZone, clockShifts, days } =
      calendars.state(projectId);
    const entry = plans.current(projectId);
    let found = known.get(entry);
    const stands = found?.calendar === plan && found.firstDate === firstDate && found.days === days.length;
    if (found === undefined || !stands) {
      const spans = days.map(({ date, fromMinute, toMinute }) => ({ date, fromMinute, toMinute }));
      const air = projectAir(entry.input, entry.plan, plan, spans);
      found = { calendar: plan, firstDate, days: days.length, air, view: bare(air) };
      known.set(entry, found);
    }
    const answer = { revision, state, stale, firstDate, timeZone, clockShifts, air: found.view };
    return { known: found, answer };
  }

  return {
    answer: (projectId) => current(projectId).answer,
    plan: (projectId) => current(projectId).known.air,
  };
}

/** Every figure reduced to its number. */
function bare(air: AirPlan): AirAnswer['air'] {
  const text = JSON.stringify(air, (_key, value: unknown) => (isFigure(value) ? value.value : value));
  return JSON.parse(text) as AirAnswer['air'];
}
