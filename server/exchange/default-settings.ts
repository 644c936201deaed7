import type { ProjectSettings, UnitSystem } from '../planning/project-input.ts';

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

/**
 * The settings of a new project, all of them, for its units and currency (ISO 4217).
 *
 * Sources: overhang, 1 to 2 in longer than the edge in all, and trim allowance, 1/16 in each face, after magazine
 * articles on plywood edges; the others are common practice, no source. Coverage is reckoned at the low end, so that
 * the cans last; tax is null because only the user knows it.
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
    finishLoss: 0.05,
  };
}
