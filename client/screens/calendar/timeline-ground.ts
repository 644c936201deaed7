import { nothing, type SVGTemplateResult, svg } from 'lit-html';
import type { CalendarDay } from '../../../server/http/contract.ts';
import type { CalendarClock } from '../../format/calendar-clock.ts';
import { dateStep, hourMarks } from './axis-marks.ts';

/** What lies under the lanes: working hours, days off, nights, dates and times. */

export const AXIS = 46;
const DATE_Y = 15;
const NIGHT_Y = 22;
const NIGHT_HEIGHT = 4;
const HOUR_Y = 39;
/** Room a date takes: "Sat 12 Dec", or its number alone. */
const DATE_WIDTH = 70;
const NUMBER_WIDTH = 24;
/** The hours drawn as night. A habit of ours, of no weight for the plan. */
const NIGHT = { toMin: 6 * 60, fromMin: 22 * 60 };

export interface Ground {
  readonly days: readonly CalendarDay[];
  readonly scale: (minute: number) => number;
  readonly clock: CalendarClock;
  readonly height: number;
}

export function drawGround({ days, scale, clock, height }: Ground): SVGTemplateResult {
  const rect = (name: string, from: number, to: number, y: number, tall: number) =>
    svg`<rect class=${name} x=${round(scale(from))} y=${y} width=${round(scale(to) - scale(from))} height=${tall} />`;
  const step = dateStep(days, scale, DATE_WIDTH);
  const brief = step > 1 && dateStep(days, scale, NUMBER_WIDTH) === 1;
  return svg`
    <rect class="closed" x="0" y=${AXIS} width=${round(scale(days.at(-1)?.toMinute ?? 0))} height=${height - AXIS} />
    ${days.map(
      (
        day,
      ) => svg`${day.windows.map(({ fromMinute, toMinute }) => rect('open', fromMinute, toMinute, AXIS, height - AXIS))}
        ${day.off ? rect('day-off', day.fromMinute, day.toMinute, AXIS, height - AXIS) : nothing}
        ${rect('night', day.fromMinute, day.fromMinute + NIGHT.toMin, NIGHT_Y, NIGHT_HEIGHT)}
        ${rect('night', day.fromMinute + NIGHT.fromMin, day.toMinute, NIGHT_Y, NIGHT_HEIGHT)}
        <line class="midnight" x1=${round(scale(day.fromMinute))} x2=${round(scale(day.fromMinute))} y1="0" y2=${height} />`,
    )}
    ${days.map((day, index) => {
      if (!brief && index % step !== 0) return nothing;
      const words = brief ? day.date.slice(8).replace(/^0/, '') : clock.day(day.fromMinute);
      return svg`<text class="date ${day.off ? 'off' : ''}" x=${round(scale(day.fromMinute) + 5)} y=${DATE_Y}>${words}${day.off && !brief && step === 1 ? ' · off' : ''}</text>`;
    })}
    ${hourMarks(days, scale).map(
      ({
        x,
        minute,
      }) => svg`<g class="hour"><line x1=${round(x)} x2=${round(x)} y1=${AXIS - 4} y2=${height} />
        <text x=${round(x)} y=${HOUR_Y}>${clock.time(minute)}</text></g>`,
    )}`;
}

export function round(value: number): number {
  return Math.round(value * 10) / 10;
}
