import { type Figure, figure } from '../../figure.ts';
import type { ProjectSettings } from '../../project-input.ts';
import { MINUTES_PER_HOUR } from '../constants.ts';
import { openingAirflowM3PerH } from './opening-airflow-m3-per-h.ts';

export interface ProjectRoom {
  readonly volumeM3: Figure;
  /** Fresh air that arrives, m3/h. */
  readonly airflow: Figure;
  readonly airflowM3PerMin: number | null;
  /** Settings that are still to be filled in. */
  readonly missing: readonly (keyof ProjectSettings)[];
}

/**
 * How large is the room, and how much fresh air does it get?
 *
 * @param settings room in m, fan in m3/h with the share that arrives, air changes per hour, or opening m2 and wind m/s
 * @returns volume m3 and airflow, each with its working; null where a setting is empty
 *
 * Source: definitions; openingAirflowM3PerH. Valid range: settings as they may be stored. Departures: none.
 * Example: a fan rated 600 m3/h of which half arrives: 300 m3/h.
 */
export function projectRoom(settings: ProjectSettings): ProjectRoom {
  const { roomLengthM, roomWidthM, roomHeightM } = settings;
  const sides = [roomLengthM, roomWidthM, roomHeightM];
  const volume = sides.includes(null) ? null : (sides as number[]).reduce((all, side) => all * side, 1);
  const volumeM3 = figure(volume, 'm3', {
    rule: 'volume = length x width x height of the room',
    inputs: [
      { name: 'length', value: roomLengthM, unit: 'm' },
      { name: 'width', value: roomWidthM, unit: 'm' },
      { name: 'height', value: roomHeightM, unit: 'm' },
    ],
    notes: ['Furniture and stored goods are not taken off.'],
  });
  const airflow = airflowFigure(settings, volume);
  const dimensions = (['roomLengthM', 'roomWidthM', 'roomHeightM'] as const).filter(
    (name) => settings[name] === null,
  );
  const source = { fan: 'fanM3PerHour', 'air-changes': 'airChangesPerHour', opening: 'openingM2' } as const;
  const asked = source[settings.airKind];
  return {
    volumeM3,
    airflow,
    airflowM3PerMin: airflow.value === null ? null : airflow.value / MINUTES_PER_HOUR,
    missing: [...dimensions, ...(settings[asked] === null ? [asked] : [])],
  };
}

function airflowFigure(settings: ProjectSettings, volumeM3: number | null): Figure {
  const { airKind, fanM3PerHour, fanDerating, airChangesPerHour, openingM2, windMPerS } = settings;
  if (airKind === 'fan')
    return figure(fanM3PerHour === null ? null : fanM3PerHour * fanDerating, 'm3/h', {
      rule: 'fresh air = rated flow of the fan x share that arrives',
      inputs: [
        { name: 'rated flow, blowing freely', value: fanM3PerHour, unit: 'm3/h' },
        {
          name: 'share that arrives through duct, grille and screen',
          value: fanDerating,
          unit: 'ratio',
          source: 'a setting of yours; the half it begins with is common practice, no source',
        },
      ],
      notes: ['A fan moves only as much air as can come in elsewhere: leave an opening across the room.'],
    });
  if (airKind === 'air-changes')
    return figure(
      airChangesPerHour === null || volumeM3 === null ? null : airChangesPerHour * volumeM3,
      'm3/h',
      {
        rule: 'fresh air = air changes per hour x volume of the room',
        inputs: [
          { name: 'air changes per hour', value: airChangesPerHour, unit: 'ratio' },
          { name: 'volume of the room', value: volumeM3, unit: 'm3', from: 'air/volumeM3' },
        ],
      },
    );
  return figure(openingM2 === null ? null : openingAirflowM3PerH(openingM2, windMPerS), 'm3/h', {
    rule: 'fresh air = 0.025 x open area x wind x 3600 s',
    inputs: [
      { name: 'open area', value: openingM2, unit: 'm2' },
      { name: 'wind, m/s', value: windMPerS, unit: 'ratio', source: 'a setting of yours' },
    ],
    notes: [
      'Single-sided ventilation by wind, BS 5925:1991, from memory. Rough: the true flow may be several times more or less.',
    ],
  });
}
