import type { ProjectSettings, ShopHours, UnitSystem } from '../planning/project-input.ts';
import { DEFAULT_AIR_SETTINGS } from './default-air-settings.ts';

/** 1/8 in: the kerf allowance of published US layouts (survivalblog.com, one-sheet shelving). mm. */
const US_KERF_MM = 3.175;
/** Common practice, no source: a 3 mm table-saw or track-saw blade. mm. */
const METRIC_KERF_MM = 3;
/**
 * Metric sheets are planned with 5 mm off every side: they are cut on panel saws and with track saws, where the
 * factory edge, bruised in transport, is trimmed first. Common practice, no source. mm.
 */
const METRIC_SHEET_TRIM_MM = 5;
/**
 * US layouts are drawn to the full 48 x 96 in: trimming even 1/16 in a side would refuse the two 24 in rips and the
 * 96 in lengths that published plans are built on. Common practice, no source. mm.
 */
const US_SHEET_TRIM_MM = 0;

/** When a new project has hands in the shop: weekday evenings and weekends, 0 being Monday. An assumption the user sees. */
export const DEFAULT_SHOP_HOURS: readonly Omit<ShopHours, 'id'>[] = [0, 1, 2, 3, 4, 5, 6].map((weekday) => ({
  weekday,
  ...(weekday < 5 ? { from: '18:00', to: '21:00' } : { from: '09:00', to: '17:00' }),
}));

/**
 * The settings of a new project, all of them, for its units and currency (ISO 4217).
 *
 * Sources: overhang, 1 to 2 in longer than the edge in all, and trim allowance, 1/16 in each face, after magazine
 * articles on plywood edges; the others are common practice, no source. Coverage is reckoned at the low end, so that
 * the cans last; tax is null because only the user knows it. The shop's air is an assumption the user sees: a heated
 * shop, 20 C and 50 % by day, that cools to 15 C at night, where the same moisture makes about 65 to 70 % (saturation
 * pressures 2339 and 1706 Pa: 50 % x 2339 / 1706 = 69 %). Drying twice as fast per 10 C: common practice, no source.
 */
export function defaultSettings(units: UnitSystem, currency: string, name = 'New project'): ProjectSettings {
  const metric = units === 'metric';
  return {
    name,
    units,
    inchStyle: 'fraction',
    inchDenominator: 32,
    currency,
    taxPercent: null,
    coverageChoice: 'low',
    overhangMm: 25,
    trimAllowanceMm: 1.6,
    spareStrips: 1,
    bandingOrder: ['left', 'right', 'back', 'front'],
    kerfMm: metric ? METRIC_KERF_MM : US_KERF_MM,
    sheetTrimMm: metric ? METRIC_SHEET_TRIM_MM : US_SHEET_TRIM_MM,
    cutStages: null,
    finishLoss: 0.05,
    startDate: '',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
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
    ...DEFAULT_AIR_SETTINGS,
    contingencyPercent: 0,
    rateMinorPerHour: null,
    readyMadeMinor: null,
  };
}
