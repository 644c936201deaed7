import type { ProjectInput, ProjectSettings } from '../../../server/planning/project-input.ts';

/** The calendar's and the air check's part of a project for tests of other questions: a shop without hours, pins or facts. */

export const CALENDAR_SETTINGS = {
  startDate: '',
  timeZone: 'UTC',
  hands: 1,
  rackM2: null,
  largestBatchM2: null,
  sandsApart: false,
  woodWarmerC: 0,
  dryingDoublesPerC: 10,
  dryingUsesHumidity: true,
  climateKind: 'day-night',
  dayC: 20,
  nightC: 15,
  dayHumidity: 50,
  nightHumidity: 65,
  keepUnderHealthLimit: false,
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
} as const satisfies Partial<ProjectSettings>;

export const NO_CALENDAR_ROWS = {
  shopHours: [],
  daysOff: [],
  climateRows: [],
  pins: [],
  doneTasks: [],
  arrivals: [],
} as const satisfies Partial<ProjectInput>;
