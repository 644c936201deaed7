import { scaleLinear } from 'd3-scale';
import { nothing, type SVGTemplateResult, svg } from 'lit-html';
import { narrow } from '../cutting/narrow.ts';
import type { AirBook, AirDayView } from './air-book.ts';

/** Drawing units; on a phone the drawing is narrower, so that its words stay readable. */
const WIDE = { width: 940, hours: 2 };
const SLIM = { width: 400, hours: 6 };
const LEFT = 44;
const RIGHT = 12;
const TOP = 24;
const HEALTH_HEIGHT = 190;
const GAP = 46;
const FIRE_HEIGHT = 120;
const AXIS = 34;
/** The name of a panel stands so high above it, clear of the words on a limit near its top. */
const NAME_ABOVE = 11;
const MINUTES_PER_HOUR = 60;
/** Room above the highest value, as a share of it. */
const HEADROOM = 1.08;
const HEALTH_LIMIT = 1;
const FIRE_TARGET = 10;
const FIRE_CEILING = 25;

type Point = AirDayView['points'][number];

/** Two panels over one day: times the health limit above, percent of the explosive limit below, each with its limits. */
export function drawCurves({ plan, clock }: AirBook, day: AirDayView, looked: Point): SVGTemplateResult {
  const { width, hours } = narrow() ? SLIM : WIDE;
  const x = scaleLinear([day.fromMinute, day.toMinute], [LEFT, width - RIGHT]);
  const fireTop = TOP + HEALTH_HEIGHT + GAP;
  const bottom = fireTop + FIRE_HEIGHT;
  const health = panel(
    day.points.map(({ index }) => index),
    HEALTH_LIMIT,
    TOP,
    HEALTH_HEIGHT,
  );
  const fire = panel(
    day.points.map(({ percent }) => percent),
    FIRE_CEILING,
    fireTop,
    FIRE_HEIGHT,
  );
  const coats = plan.coats.filter(
    ({ startMinute }) => startMinute >= day.fromMinute && startMinute < day.toMinute,
  );
  const marks = [...new Map(coats.map((coat) => [coat.startMinute, coat])).values()];
  return svg`<svg class="air-drawing" viewBox="0 0 ${width} ${bottom + AXIS}" aria-hidden="true">
    ${ground(x, day, hours, clock, bottom)}
    <text class="panel-name" x=${LEFT} y=${TOP - NAME_ABOVE}>times the health limit</text>
    ${ticks(health, width)}
    <path class="health-area" d="${path(day.points, x, health.y, ({ index }) => index)} V ${health.y(0)} H ${x(day.fromMinute)} Z" />
    ${day.over.map(
      ({ fromMinute, toMinute }) =>
        svg`<rect class="over-time" x=${at(x(fromMinute))} y=${TOP} width=${at(x(toMinute) - x(fromMinute))} height=${HEALTH_HEIGHT} />`,
    )}
    ${limit('health-limit', health, HEALTH_LIMIT, width, '1: the limit')}
    <path class="health-line" d=${path(day.points, x, health.y, ({ index }) => index)} />
    <text class="panel-name" x=${LEFT} y=${fireTop - NAME_ABOVE}>% of the lower explosive limit</text>
    ${ticks(fire, width)}
    ${limit('fire-target', fire, FIRE_TARGET, width, '10 %')} ${limit('fire-ceiling', fire, FIRE_CEILING, width, '25 %')}
    <path class="fire-line" d=${path(day.points, x, fire.y, ({ percent }) => percent)} />
    ${marks.map(
      ({ startMinute, name }) =>
        svg`<path class="coat-mark" d="M${at(x(startMinute))} ${TOP + HEALTH_HEIGHT + 2} l4.5 9 h-9 z"><title>${clock.time(startMinute)}: ${name}</title></path>`,
    )}
    <line class="looked-at" x1=${at(x(looked.minute))} x2=${at(x(looked.minute))} y1=${TOP} y2=${bottom} />
    <circle class="health-dot" cx=${at(x(looked.minute))} cy=${at(health.y(looked.index))} r="4" />
    <circle class="fire-dot" cx=${at(x(looked.minute))} cy=${at(fire.y(looked.percent))} r="4" />
  </svg>`;
}

interface Panel {
  readonly y: (value: number) => number;
  readonly most: number;
  readonly values: readonly number[];
}

/** The limit is always in sight, and so is the highest value. */
function panel(values: readonly number[], least: number, top: number, height: number): Panel {
  const most = Math.max(...values, least) * HEADROOM;
  const scale = scaleLinear([0, most], [top + height, top]);
  return { y: (value) => scale(value), most, values: scale.ticks(height / 40) };
}

function ticks({ y, values }: Panel, width: number): SVGTemplateResult[] {
  return values.map(
    (value) => svg`<line class="rule" x1=${LEFT} x2=${width - RIGHT} y1=${at(y(value))} y2=${at(y(value))} />
      <text class="tick" x=${LEFT - 6} y=${at(y(value) + 4)}>${value}</text>`,
  );
}

function limit(
  name: string,
  { y, most }: Panel,
  value: number,
  width: number,
  words: string,
): SVGTemplateResult | typeof nothing {
  if (value > most) return nothing;
  return svg`<line class=${name} x1=${LEFT} x2=${width - RIGHT} y1=${at(y(value))} y2=${at(y(value))} />
    <text class="limit-name" x=${LEFT + 4} y=${at(y(value) - 4)}>${words}</text>`;
}

function ground(
  x: (minute: number) => number,
  day: AirDayView,
  hours: number,
  clock: AirBook['clock'],
  bottom: number,
): SVGTemplateResult[] {
  const step = hours * MINUTES_PER_HOUR;
  const count = Math.ceil((day.toMinute - day.fromMinute) / step);
  return Array.from({ length: count + 1 }, (_, index) => {
    const minute = Math.min(day.fromMinute + index * step, day.toMinute);
    const anchor = index === 0 ? 'start' : index === count ? 'end' : 'middle';
    return svg`<line class="rule" x1=${at(x(minute))} x2=${at(x(minute))} y1=${TOP} y2=${bottom} />
      <text class="hour" text-anchor=${anchor} x=${at(x(minute))} y=${bottom + 18}>${index === count ? '24:00' : clock.time(minute)}</text>`;
  });
}

function path(
  points: readonly Point[],
  x: (minute: number) => number,
  y: (value: number) => number,
  value: (point: Point) => number,
): string {
  return points
    .map((point, index) => `${index === 0 ? 'M' : 'L'} ${at(x(point.minute))} ${at(y(value(point)))}`)
    .join(' ');
}

function at(value: number): number {
  return Math.round(value * 10) / 10;
}
