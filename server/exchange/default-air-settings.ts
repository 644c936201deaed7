import type { ProjectSettings } from '../planning/project-input.ts';

type AirSettings = Pick<
  ProjectSettings,
  | 'roomLengthM'
  | 'roomWidthM'
  | 'roomHeightM'
  | 'airKind'
  | 'fanM3PerHour'
  | 'fanDerating'
  | 'airChangesPerHour'
  | 'openingM2'
  | 'windMPerS'
  | 'mixingFactor'
  | 'outdoorC'
  | 'heatPricePerKwhMinor'
  | 'healthBasis'
>;

/**
 * What a new project knows of the room in which coats are laid: nothing, until the user says. The three numbers are
 * assumptions the user sees: half of a fan's rating arrives through duct, grille and screen (common practice, no source);
 * the air is mixed with a factor of 3, between 1 for perfect and 10 for poor (the range: CDC, MMWR 43(RR-13), 1994, Table
 * S3-1; the 3: common practice, no source); a light air of 1 m/s stands at an open window (common practice, no source).
 */
export const DEFAULT_AIR_SETTINGS: AirSettings = {
  roomLengthM: null,
  roomWidthM: null,
  roomHeightM: null,
  airKind: 'fan',
  fanM3PerHour: null,
  fanDerating: 0.5,
  airChangesPerHour: null,
  openingM2: null,
  windMPerS: 1,
  mixingFactor: 3,
  outdoorC: null,
  heatPricePerKwhMinor: null,
  healthBasis: 'peak',
};
