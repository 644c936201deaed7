import type { CalendarPlan } from '../../calendar/calendar-plan.ts';
import { AIR_CAUTIONS } from '../../display/air-cautions.ts';
import { figure } from '../../figure.ts';
import type { Plan } from '../../plan-output.ts';
import type { ProjectInput } from '../../project-input.ts';
import { airCheck } from '../air-check.ts';
import type { AirCheckInput } from '../air-check-input.ts';
import { airNotes } from '../air-notes.ts';
import { MINUTES_PER_HOUR } from '../constants.ts';
import { type AirCoatOfTask, airCoats } from './air-coats.ts';
import { airDays, type DaySpan } from './air-days.ts';
import { fireFigures, healthFigures, perHour } from './air-figures.ts';
import { airHeat } from './air-heat.ts';
import { airLines } from './air-lines.ts';
import type { AirPlan } from './air-plan.ts';
import { airProblems } from './air-problems.ts';
import { airSubstances } from './air-substances.ts';
import { airSuggestions } from './air-suggestions.ts';
import { airWords } from './air-words.ts';
import { calendarGaps } from './calendar-gaps.ts';
import { indoorsDate } from './indoors-date.ts';
import { projectRoom } from './project-room.ts';

/**
 * Is the air of this project fit, how much fresh air does it take, and when may the piece come indoors?
 *
 * @param input the project: room and fan in m and m3/h, products with g/L and shares
 * @param plan its plan, for the litres of each coat
 * @param calendar its coat calendar, minutes; null while there is none
 * @param days the days of that calendar, minutes
 * @returns verdict in words, every figure with its working, curves per day, suggestions that were reckoned anew, and what is
 *   missing with the place to enter it
 *
 * Source: secondary: airCheck and the files beside this one. Valid range: any project. Departures: the air has the day
 * temperature of the shop. Example: no fan entered: verdict `cannot-tell`, with a problem at the setting of the fan.
 */
export function projectAir(
  input: ProjectInput,
  plan: Pick<Plan, 'parts' | 'recipes'>,
  calendar: CalendarPlan | null,
  days: readonly DaySpan[],
): AirPlan {
  const { settings } = input;
  const room = projectRoom(settings);
  const alsoMissing = calendarGaps(input, plan, calendar);
  const coats = airCoats(input, plan, calendar?.tasks ?? []);
  const checked: AirCheckInput = {
    volumeM3: room.volumeM3.value,
    airflowM3PerMin: room.airflowM3PerMin,
    mixingFactor: settings.mixingFactor,
    indoorC: settings.dayC,
    outdoorC: settings.outdoorC,
    coats,
    healthBasis: settings.healthBasis,
    alsoMissing,
  };
  const check = airCheck(checked);
  const fire = fireFigures(checked, check);
  const health = healthFigures(checked, check);
  const fireNeed = check.fire.neededAirflowM3PerMin ?? check.fire.cautious?.neededAirflowM3PerMin ?? null;
  const healthNeed = check.health.neededAirflowM3PerMin;
  const need = fireNeed === null || healthNeed === null ? null : Math.max(fireNeed, healthNeed);
  const nothing = coats.length === 0 && alsoMissing.length === 0;
  const lastStart = Math.max(0, ...coats.map(({ startMinute }) => startMinute));
  const clear = check.health.airOutMin === null ? null : lastStart + check.health.airOutMin;
  const fireBasis = check.fire.complete ? 'complete' : check.fire.cautious === null ? 'part' : 'cautious';
  return {
    verdict: nothing ? 'no-coats' : check.verdict,
    ...(nothing
      ? { headline: 'Nothing is laid, so there is no vapour to reckon with.', sentences: [] }
      : airWords(check, room.airflowM3PerMin, need, settings.units)),
    volumeM3: room.volumeM3,
    airflow: room.airflow,
    airChangesPerHour: figure(check.airChangesPerHour, 'ratio', {
      rule: 'air changes per hour = fresh air / volume of the room',
      inputs: [
        { name: 'fresh air', value: room.airflow.value, unit: 'm3/h', from: 'air/airflow' },
        { name: 'volume of the room', value: room.volumeM3.value, unit: 'm3', from: 'air/volumeM3' },
      ],
    }),
    needed: perHour(need, {
      rule: 'fresh air needed = the larger of what fire and health need',
      inputs: [
        {
          name: 'for health',
          value: healthNeed === null ? null : healthNeed * MINUTES_PER_HOUR,
          unit: 'm3/h',
          from: 'air/health/needed',
        },
        {
          name:
            check.fire.cautious === null
              ? 'against fire'
              : 'against fire, by the lowest limit found elsewhere',
          value: fireNeed === null ? null : fireNeed * MINUTES_PER_HOUR,
          unit: 'm3/h',
          from: check.fire.cautious === null ? 'air/fire/needed' : 'air/fire/cautious/needed',
        },
      ],
      notes: need === null ? check.missing.map(({ message }) => message) : [],
    }),
    fire,
    health,
    ...airHeat(settings, check.makeUpHeatW, room.airflow.value, coats),
    coats: airLines(checked, coats),
    days: airDays(checked, days, { healthComplete: check.health.complete, fireBasis }),
    substances: airSubstances(coats, input.catalogue.solvents ?? [], settings.dayC),
    suggestions: airSuggestions(input, checked, check, coats),
    indoors: indoorsDate(input, calendar, clear),
    notes: nothing ? [] : airNotes({ ...checked, coats: oncePerProduct(coats) }),
    cautions: AIR_CAUTIONS,
    problems: nothing ? [] : airProblems(check.missing, coats, room),
  };
}

/** What is assumed of a product is said once, by the product's own name. */
function oncePerProduct(coats: readonly AirCoatOfTask[]): AirCoatOfTask[] {
  const once = new Map(coats.map((coat) => [coat.product?.id ?? coat.id, coat]));
  return [...once.values()].map((coat) => ({ ...coat, name: coat.product?.name ?? coat.name }));
}
