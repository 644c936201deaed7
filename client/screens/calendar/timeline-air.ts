import { scaleLinear } from 'd3-scale';
import { nothing, type SVGTemplateResult, svg } from 'lit-html';
import type { CalendarAir } from '../../../server/http/contract.ts';
import type { AirLimit } from './air-limits.ts';
import { round } from './timeline-ground.ts';

/** Temperature and humidity under the lanes, with the limits of the coats still to be laid. */

export const AIR_PANEL = 58;
const INSET = 7;
const MINUTES_PER_HOUR = 60;
/** Room above and below the values, so that a steady line stands in the middle. */
const ROOM = 2;

export interface AirPanel {
  readonly value: (air: CalendarAir) => number;
  readonly name: 'temperature' | 'humidity';
  readonly limits: readonly AirLimit[];
}

export function drawAir(
  climate: readonly CalendarAir[],
  { value, name, limits }: AirPanel,
  scale: (minute: number) => number,
  top: number,
): SVGTemplateResult | typeof nothing {
  const first = climate[0];
  if (first === undefined) return nothing;
  const all = [...climate.map(value), ...limits.map((limit) => limit.value)];
  const y = scaleLinear(
    [Math.min(...all) - ROOM, Math.max(...all) + ROOM],
    [top + AIR_PANEL - INSET, top + INSET],
  );
  const end = (climate.at(-1)?.minute ?? 0) + MINUTES_PER_HOUR;
  const [from, to] = [round(scale(first.minute)), round(scale(end))];
  return svg`<g class="air ${name}">
    ${limits.map((limit) => {
      const at = round(y(limit.value));
      const least = limit.what === 'least-temperature';
      const [near, far] = least ? [at, top + AIR_PANEL - 1] : [top + 1, at];
      return svg`<rect class="beyond" x=${from} y=${near} width=${to - from} height=${Math.max(0, far - near)} />
        <line class="limit" x1=${from} x2=${to} y1=${at} y2=${at} />`;
    })}
    ${name === 'humidity' ? nearDew(climate).map((stretch) => svg`<rect class="dew" x=${round(scale(stretch.from))} y=${top} width=${round(scale(stretch.to) - scale(stretch.from))} height=${AIR_PANEL} />`) : nothing}
    <path class="line" d=${stepPath(climate, value, scale, y)} />
  </g>`;
}

/** The hours in which the wood is so near the dew point that no coat may be laid, as few stretches. */
function nearDew(climate: readonly CalendarAir[]): readonly { readonly from: number; readonly to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  for (const { minute, nearDew } of climate) {
    if (!nearDew) continue;
    const last = stretches.at(-1);
    if (last?.to === minute) last.to = minute + MINUTES_PER_HOUR;
    else stretches.push({ from: minute, to: minute + MINUTES_PER_HOUR });
  }
  return stretches;
}

/** Each value holds for its whole hour; equal neighbours make one stretch. */
function stepPath(
  climate: readonly CalendarAir[],
  value: (air: CalendarAir) => number,
  scale: (minute: number) => number,
  y: (value: number) => number,
): string {
  let path = '';
  let last: number | null = null;
  for (const air of climate) {
    const here = value(air);
    if (last === null) path = `M${round(scale(air.minute))} ${round(y(here))}`;
    else if (here !== last) path += `H${round(scale(air.minute))}V${round(y(here))}`;
    last = here;
  }
  return `${path}H${round(scale((climate.at(-1)?.minute ?? 0) + MINUTES_PER_HOUR))}`;
}
