import type { AirPlan } from '../../../../server/planning/air/project/air-plan.ts';
import { projectAir } from '../../../../server/planning/air/project/project-air.ts';
import type { Solvent } from '../../../../server/planning/air/solvent.ts';
import type { CalendarPlan } from '../../../../server/planning/calendar/calendar-plan.ts';
import { planNearOrFar } from '../../../../server/planning/calendar/plan-near-or-far.ts';
import { projectCalendarInput } from '../../../../server/planning/calendar/project-calendar-input.ts';
import { plan } from '../../../../server/planning/plan.ts';
import type { Product, SolventShare } from '../../../../server/planning/product.ts';
import type { ProjectInput } from '../../../../server/planning/project-input.ts';
import { calendarProject, finish, SATURDAY } from '../../calendar/project/calendar-project.ts';

/** Projects for tests of the air: one panel, one coat of varnish, in a room that is known. */

const said = (value: number) => ({ value, basis: 'label', source: 'made up', readOn: null }) as const;

export function aSolvent(id: string, more: Partial<Solvent> = {}): Solvent {
  return {
    id,
    name: id,
    alsoCalled: [],
    casNumber: null,
    molarMassGPerMol: said(100),
    densityGPerL: said(800),
    lelPercent: said(1),
    uelPercent: null,
    lelElsewhere: [],
    flashPointC: said(21),
    limits: [
      {
        body: 'a body',
        kind: 'time-weighted',
        averagedOverMin: 480,
        ppm: null,
        mgPerM3: 350,
        basis: 'label',
        source: 'made up',
        readOn: null,
      },
    ],
    idlhPpm: null,
    idlhMgPerM3: null,
    note: null,
    ...more,
  };
}

export function aShare(solventId: string, more: Partial<SolventShare> = {}): SolventShare {
  return { solventId, share: 1, molarMassGPerMol: null, lelPercent: null, limitMgPerM3: null, ...more };
}

/** 10 m2/L, 400 g/L, touch dry after 60 min. */
export const VARNISH_FIGURES = {
  touchDry: 60,
  handleDry: 240,
  cure: 14_400,
  coverage: 10,
  voc: 400,
} as const;

export function aVarnish(
  more: Partial<Product> = {},
  figures: Parameters<typeof finish>[1] = VARNISH_FIGURES,
): Product {
  return finish('varnish', figures, {
    name: 'Varnish',
    solvents: [aShare('spirit')],
    choices: { carrier: 'oil', role: 'topcoat' },
    ...more,
  });
}

/** 5 x 4 x 2.5 m with 3 m3/min: a fan rated at 360 m3/h of which half arrives, and air that mixes perfectly. */
export const ROOM = {
  roomLengthM: 5,
  roomWidthM: 4,
  roomHeightM: 2.5,
  airKind: 'fan',
  fanM3PerHour: 360,
  fanDerating: 0.5,
  mixingFactor: 1,
  dayC: 22,
  nightC: 22,
  finishLoss: 0,
} as const;

type Given = Parameters<typeof calendarProject>[0] & {
  readonly varnish?: Product;
  readonly solvents?: readonly Solvent[];
};

/** The project's input, its plan and the calendar of its coats. */
export function airProject({ varnish = aVarnish(), solvents = [aSolvent('spirit')], ...given }: Given = {}) {
  const { input: base } = calendarProject({ ...given, settings: { ...ROOM, ...given.settings } });
  const others = base.catalogue.products.filter(({ id }) => id !== 'varnish');
  const input: ProjectInput = {
    ...base,
    catalogue: { ...base.catalogue, products: [...others, varnish], solvents },
  };
  const planned = plan(input);
  const asked = projectCalendarInput(input, planned, SATURDAY);
  const calendar: CalendarPlan | null =
    asked.calendar === null ? null : planNearOrFar({ ...asked.calendar, iterations: 10 });
  return { input, plan: planned, calendar, calendarProblems: asked.problems };
}

const DAY_MIN = 1440;

/** Its air, over a week from day 0. */
export function airOf(given: Given = {}): AirPlan {
  const { input, plan: planned, calendar } = airProject(given);
  return projectAir(input, planned, calendar, WEEK);
}

export const WEEK = Array.from({ length: 7 }, (_, day) => ({
  date: `2027-03-${13 + day}`,
  fromMinute: day * DAY_MIN,
  toMinute: (day + 1) * DAY_MIN,
}));
