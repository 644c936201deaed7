import { getState } from '../state/store.ts';

const NAMES: Readonly<Record<string, string>> = {
  volumeM3: 'Volume of the room',
  airflow: 'Fresh air there is',
  airChangesPerHour: 'Air changes an hour',
  needed: 'Fresh air needed',
  'fire/peakPercent': 'Share of the explosive limit',
  'fire/needed': 'Fresh air against fire',
  'fire/cautious/peakPercent': 'Share of the explosive limit, with a stand-in',
  'fire/cautious/needed': 'Fresh air against fire, with a stand-in',
  'health/peakIndex': 'Times the health limit, at its worst',
  'health/eightHourIndex': 'Times the health limit, worst 8 hours',
  'health/shortTermIndex': 'Times the short-term limit',
  'health/ceilingIndex': 'Times the ceiling limit',
  'health/needed': 'Fresh air for health',
  'health/steadyState': 'Fresh air by the steady-state formula',
  'health/airOut': 'Until the air is clear',
  heatW: 'Heat that goes out',
  heatKwh: 'Heat in all',
  heatCost: 'Cost of that heat',
  'indoors/earliestWait': 'Shortest wait',
  'indoors/latestWait': 'Longest wait',
  litres: 'Liquid',
  vapourG: 'Vapour',
  peakIndex: 'Times the health limit, alone',
  dilutionM3PerL: 'Air per litre, fire formula',
};

/** What a figure of the air check is, and of which coat or vapour. */
export function airFigureTitle([, ...steps]: readonly string[]): {
  readonly name: string;
  readonly subject: string;
} {
  const [list = '', id = ''] = steps;
  const air = getState().air?.air;
  const rows = list === 'coats' ? air?.coats : list === 'substances' ? air?.substances : undefined;
  if (list !== 'coats' && list !== 'substances')
    return { name: NAMES[steps.join('/')] ?? steps.join(' '), subject: 'Air' };
  const row = rows?.find((one) => one.id === decodeURIComponent(id));
  return { name: NAMES[steps.at(-1) ?? ''] ?? '', subject: row?.name ?? 'Air' };
}
