import { type Figure, figure } from '../../figure.ts';
import type { ProjectSettings } from '../../project-input.ts';
import { MINUTES_PER_HOUR } from '../constants.ts';
import type { AirCoatOfTask } from './air-coats.ts';

const W_PER_KW = 1000;

/**
 * What heat goes out with the air?
 *
 * @param settings shop and outdoor temperature C, price of heat in minor units per kWh
 * @param watts heat that the fresh air takes, W; null when not known
 * @param airflowM3PerH that fresh air, m3/h
 * @param coats coats with their tasks; minutes
 * @returns W, kWh while coats are wet, and what that costs, each with its working; null where something is not known
 *
 * Source: makeUpAirHeatW; hours by a rule of ours: from the first stroke of a coat until it is touch dry in the shop's air.
 * Valid range: any. Departures: a shop warmer outside than in needs no heat. Example: 4000 W for 3 hours: 12 kWh.
 */
export function airHeat(
  settings: ProjectSettings,
  watts: number | null,
  airflowM3PerH: number | null,
  coats: readonly AirCoatOfTask[],
): { readonly heatW: Figure; readonly heatKwh: Figure; readonly heatCost: Figure } {
  const { dayC, outdoorC, heatPricePerKwhMinor } = settings;
  const heating = watts === null ? null : Math.max(0, watts);
  const hours = wetMinutes(coats) / MINUTES_PER_HOUR;
  const kwh = heating === null ? null : (heating / W_PER_KW) * hours;
  return {
    heatW: figure(heating, 'W', {
      rule: 'heat = density x specific heat of air x fresh air x (inside - outside)',
      inputs: [
        { name: 'fresh air', value: airflowM3PerH, unit: 'm3/h', from: 'air/airflow' },
        { name: 'inside', value: dayC, unit: 'C', source: 'the day temperature of the shop' },
        { name: 'outside', value: outdoorC, unit: 'C' },
      ],
      notes: [
        'Dry air at 101 325 Pa; ASHRAE Handbook of Fundamentals 2017, chapter 1. Moisture is left out, 1 to 2 %.',
      ],
    }),
    heatKwh: figure(kwh, 'kWh', {
      rule: 'heat in all = heat x hours in which some coat is not yet touch dry',
      inputs: [
        { name: 'heat', value: heating, unit: 'W', from: 'air/heatW' },
        { name: 'hours', value: hours, unit: 'ratio' },
      ],
      notes: ['Air changed at other hours comes on top.'],
    }),
    heatCost: figure(
      kwh === null || heatPricePerKwhMinor === null ? null : kwh * heatPricePerKwhMinor,
      'minor',
      {
        rule: 'cost = heat in all x price of a kilowatt-hour',
        inputs: [
          { name: 'heat in all', value: kwh, unit: 'kWh', from: 'air/heatKwh' },
          { name: 'price', value: heatPricePerKwhMinor, unit: 'minor' },
        ],
      },
    ),
  };
}

/** Minutes in which at least one coat is not touch dry yet. */
function wetMinutes(coats: readonly AirCoatOfTask[]): number {
  const spans = coats
    .flatMap(({ task: { layFromMinute, touchDryMinute } }) =>
      layFromMinute === null || touchDryMinute === null ? [] : [[layFromMinute, touchDryMinute] as const],
    )
    .toSorted(([left], [right]) => left - right);
  let wet = 0;
  let until = Number.NEGATIVE_INFINITY;
  for (const [from, to] of spans) {
    wet += Math.max(0, to - Math.max(from, until));
    until = Math.max(until, to);
  }
  return wet;
}
