import type { AirCheckInput } from '../air-check-input.ts';
import { type AirRoom, exchangePerMin, type RoomSource } from '../air-room.ts';
import type { AirSubstance } from '../air-substance.ts';
import { coatSources } from '../coat-sources.ts';
import { HEALTH_INDEX_LIMIT, MG_PER_G } from '../constants.ts';
import { emissionPhases } from '../emission-phases.ts';
import { lelMgPerM3 } from '../lel-mg-per-m3.ts';
import { inAirOf, laidPhases } from '../room-kernel.ts';
import { roomPeaks } from '../room-peak.ts';
import { zeroBetween } from '../zero-between.ts';
import type { AirDay } from './air-plan.ts';

/** Between two points of the curve, minutes. Ours. */
const POINT_MIN = 15;
/** Days on which the vapour stays under this share of both limits are not drawn. Ours. */
const WORTH_DRAWING = 0.005;
const PERCENT = 100;

export interface DaySpan {
  readonly date: string;
  readonly fromMinute: number;
  readonly toMinute: number;
}

/**
 * How does the vapour rise and fall over each day?
 *
 * @param input the room and its coats; minutes as in the days
 * @param days the days of the calendar, minutes
 * @param complete whether the health side is complete, and on what the fire side rests
 * @returns per day points every quarter of an hour and at every coat and peak: mg/m3, mixture index, percent of the LEL;
 *   empty where room or airflow are not known
 *
 * Source: the closed solution of roomConcentration. Valid range: its own. Departures: what is not known adds nothing to a curve, and the day says
 * so. Example: a day with one coat at 18:00: flat until then, a steep rise, a slow fall.
 */
export function airDays(
  input: AirCheckInput,
  days: readonly DaySpan[],
  complete: { readonly healthComplete: boolean; readonly fireBasis: AirDay['fireBasis'] },
): AirDay[] {
  const { volumeM3, airflowM3PerMin, mixingFactor, indoorC, coats } = input;
  if (volumeM3 === null || airflowM3PerMin === null || coats.length === 0) return [];
  const room: AirRoom = { volumeM3, airflowM3PerMin, mixingFactor };
  const health = coatSources(coats, (substance) => substance.limitMgPerM3);
  const fire = coatSources(coats, (substance) => lelOf(substance, indoorC));
  const mass = coats.flatMap(({ litres, vocGPerL, startMinute, emission }): RoomSource[] =>
    litres === null || vocGPerL === null
      ? []
      : [{ startMinute, phases: emissionPhases(emission, litres * vocGPerL * MG_PER_G) }],
  );
  const exchange = exchangePerMin(room);
  const curve = (sources: readonly RoomSource[]) => {
    const phases = laidPhases(sources);
    return (minute: number): number => inAirOf(phases, exchange, minute) / volumeM3;
  };
  const [mgPerM3, index, percent] = [curve(mass), curve(health), curve(fire)];
  const turns = [
    ...coats.map(({ startMinute }) => startMinute),
    ...[health, fire, mass].flatMap((sources) =>
      roomPeaks(room, sources).flatMap(({ minute }) => minute ?? []),
    ),
  ];
  return days.flatMap(({ date, fromMinute, toMinute }) => {
    const grid: number[] = [];
    for (let minute = fromMinute; minute < toMinute; minute += POINT_MIN) grid.push(minute);
    const within = turns.filter((minute) => minute > fromMinute && minute < toMinute);
    const minutes = [...new Set([...grid, ...within, toMinute])].sort((one, other) => one - other);
    const points = minutes.map((minute) => ({
      minute,
      mgPerM3: shown(mgPerM3(minute)),
      index: shown(index(minute)),
      percent: shown(percent(minute) * PERCENT),
    }));
    const peakIndex = Math.max(...points.map(({ index }) => index));
    const peakPercent = Math.max(...points.map(({ percent }) => percent));
    const laid = coats.some(({ startMinute }) => startMinute >= fromMinute && startMinute < toMinute);
    if (!laid && peakIndex < WORTH_DRAWING && peakPercent < WORTH_DRAWING * PERCENT) return [];
    const known = (value: number, whole: boolean): number | null => (value === 0 && !whole ? null : value);
    return [
      {
        id: date,
        fromMinute,
        toMinute,
        peakIndex: known(peakIndex, complete.healthComplete),
        peakPercent: known(peakPercent, complete.fireBasis !== 'part'),
        over: stretchesOver(minutes, index),
        points,
        ...complete,
      },
    ];
  });
}

/** From when to when the mixture index is not under its limit; between two points it passes it once at most. */
function stretchesOver(minutes: readonly number[], index: (minute: number) => number): AirDay['over'] {
  const above = (minute: number): number => index(minute) - HEALTH_INDEX_LIMIT;
  const stretches: { fromMinute: number; toMinute: number }[] = [];
  let from: number | null = null;
  for (const [place, minute] of minutes.entries()) {
    const before = minutes[place - 1] ?? minute;
    if (from === null && above(minute) >= 0)
      from = above(before) >= 0 ? before : zeroBetween((at) => -above(at), before, minute);
    if (from !== null && above(minute) < 0) {
      stretches.push({ fromMinute: from, toMinute: zeroBetween(above, before, minute) });
      from = null;
    }
  }
  const last = minutes.at(-1);
  return from === null || last === undefined
    ? stretches
    : [...stretches, { fromMinute: from, toMinute: last }];
}

/** Four digits are more than any curve shows. */
function shown(value: number): number {
  return Number(value.toPrecision(4));
}

function lelOf(substance: AirSubstance, indoorC: number): number | null {
  const percent = substance.lelPercent ?? substance.lelCautious?.percent ?? null;
  if (percent === null || substance.molarMassGPerMol === null) return null;
  return lelMgPerM3(percent, substance.molarMassGPerMol, indoorC);
}
