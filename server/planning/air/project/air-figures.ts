import { type Figure, figure, type WorkingInput } from '../../figure.ts';
import type { AirCheckInput } from '../air-check-input.ts';
import type { AirCheckResult } from '../air-check-result.ts';
import { LEL_TARGET_SHARE, MINUTES_PER_HOUR } from '../constants.ts';
import type { AirFirePlan, AirHealthPlan } from './air-plan.ts';

const PERCENT = 100;
const ROOM_RULE =
  'V dC/dt = E(t) - (Q/K) C, solved in closed form; each coat fades by itself and all coats add up';
const LIMITS_SOURCE =
  'additive mixture rule: University of Toledo industrial ventilation notes; 29 CFR 1910.1000(d), from memory';
const LEL_SOURCE =
  'below 25 %: WAC 296-835-11010(3) and mechanical code 502.7.3.3; 10 %: the tenth at which NIOSH sets its IDLH, our target';

/**
 * Which figures does the fire side show?
 *
 * @param input the room and its coats: m3, m3/min, litres, g/L
 * @param check the outcome of airCheck for it
 * @returns percent of the lower explosive limit and m3/h, each with its working
 *
 * Source: fireCheck. Valid range: any. Departures: none. Example: a peak of 0.08 of the limit: 8 percent.
 */
export function fireFigures(input: AirCheckInput, { fire, missing }: AirCheckResult): AirFirePlan {
  const inputs = roomInputs(input);
  const notes = [
    ...unknowns(
      missing.map(({ message }) => message),
      fire.complete,
    ),
  ];
  const percent = (fraction: number | null, extra: readonly string[]): Figure =>
    figure(fraction === null ? null : fraction * PERCENT, 'percent', {
      rule: `highest of C/LEL over all coats = where C follows ${ROOM_RULE}`,
      inputs: [...inputs, { name: 'limits', value: LEL_SOURCE, unit: '' }],
      notes: [...extra, ...notes],
    });
  const need = (m3PerMin: number | null, extra: readonly string[]): Figure =>
    perHour(m3PerMin, {
      rule: `fresh air = least that keeps the peak under ${LEL_TARGET_SHARE * PERCENT} % of the lower explosive limit, found by halving on the exact solution`,
      inputs,
      notes: [...extra, ...notes],
    });
  const { cautious } = fire;
  const assumed =
    cautious?.assumed.map(({ name, lelPercent, source }) => `${name}: ${lelPercent} % (${source})`) ?? [];
  const standIn = assumed.map((words) => `Not known; the lowest value found elsewhere stands in. ${words}`);
  return {
    verdict: fire.verdict,
    peakPercent: percent(fire.peakFraction, []),
    peakMinute: fire.peakMinute,
    needed: need(fire.neededAirflowM3PerMin, []),
    cautious:
      cautious === null
        ? null
        : {
            peakPercent: percent(cautious.peakFraction, standIn),
            needed: need(cautious.neededAirflowM3PerMin, standIn),
            assumed,
          },
  };
}

/**
 * Which figures does the health side show?
 *
 * @param input the room and its coats: m3, m3/min, litres, g/L
 * @param check the outcome of airCheck for it
 * @returns mixture indices (1 is the limit), m3/h and minutes, each with its working
 *
 * Source: healthCheck. Valid range: any. Departures: none. Example: 700 mg/m3 of a vapour limited to 350: index 2.
 */
export function healthFigures(input: AirCheckInput, { health, missing }: AirCheckResult): AirHealthPlan {
  const inputs = roomInputs(input);
  const notes = [
    ...unknowns(
      missing.map(({ message }) => message),
      health.complete,
    ),
  ];
  const index = (value: number | null, what: string): Figure =>
    figure(value, 'ratio', {
      rule: `${what} = C1/limit1 + C2/limit2 + ..., where C follows ${ROOM_RULE}`,
      inputs: [...inputs, { name: 'that the sum must stay under 1', value: LIMITS_SOURCE, unit: '' }],
      notes: ['A limit is of one of the bodies that set them; of several, the strictest counts.', ...notes],
    });
  return {
    verdict: health.verdict,
    peakIndex: index(health.peakIndex, 'highest sum at any moment'),
    peakMinute: health.peakMinute,
    eightHourIndex: index(health.eightHourIndex, 'highest 8-hour average of the sum'),
    shortTermIndex: index(health.shortTermIndex, 'highest 15-minute average against short-term limits'),
    ceilingIndex: index(health.ceilingIndex, 'highest sum against ceiling limits'),
    needed: perHour(health.neededAirflowM3PerMin, {
      rule: 'fresh air = least that keeps every sum that counts under 1, found by halving on the exact solution',
      inputs,
      notes,
    }),
    steadyState: perHour(health.steadyStateAirflowM3PerMin, {
      rule: 'fresh air = K x highest emission / limit, as if the emission went on for ever',
      inputs: [
        ...inputs,
        {
          name: 'formula',
          value: 'steady-state dilution, University of Toledo industrial ventilation notes',
          unit: '',
        },
      ],
      notes: ['For comparison only: it asks for more than a coat that fades needs.', ...notes],
    }),
    airOut: figure(health.airOutMin, 'min', {
      rule: 'time from the start of the last coat until the sum stays under 1',
      inputs,
      notes: health.neverAirsOut ? ['A closed room never airs out.', ...notes] : notes,
    }),
    neverAirsOut: health.neverAirsOut,
  };
}

/**
 * How large is an airflow per hour?
 *
 * @param m3PerMin airflow, m3/min; null when not known
 * @param working its working
 * @returns m3/h with that working
 *
 * Source: definition. Valid range: from 0. Departures: none. Example: 9 m3/min: 540 m3/h.
 */
export function perHour(m3PerMin: number | null, working: Figure['working']): Figure {
  return figure(m3PerMin === null ? null : m3PerMin * MINUTES_PER_HOUR, 'm3/h', working);
}

function roomInputs({ volumeM3, airflowM3PerMin, mixingFactor, coats }: AirCheckInput): WorkingInput[] {
  const grams = coats.map(({ litres, vocGPerL }) =>
    litres === null || vocGPerL === null ? null : litres * vocGPerL,
  );
  return [
    { name: 'V, volume of the room', value: volumeM3, unit: 'm3', from: 'air/volumeM3' },
    {
      name: 'Q, fresh air',
      value: airflowM3PerMin === null ? null : airflowM3PerMin * MINUTES_PER_HOUR,
      unit: 'm3/h',
      from: 'air/airflow',
    },
    {
      name: 'K, how badly the air mixes',
      value: mixingFactor,
      unit: 'ratio',
      source:
        'a setting of yours, from 1 for perfectly to 10 for poorly: CDC, MMWR 43(RR-13), 1994, Table S3-1',
    },
    { name: 'coats and liquids', value: coats.length, unit: '' },
    {
      name: 'what evaporates from all of them',
      value: grams.includes(null) ? null : (grams as number[]).reduce((sum, one) => sum + one, 0),
      unit: 'g',
    },
  ];
}

function unknowns(messages: readonly string[], complete: boolean): string[] {
  return complete || messages.length === 0 ? [] : ['Not everything is known:', ...messages];
}
