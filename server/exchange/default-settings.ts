import type { ProjectSettings, UnitSystem } from '../planning/project-input.ts';

/**
 * Settings of a new project. Every value is common practice, no source, and is the user's to change: 25 mm overhang
 * at each end and 1/16 in (1.6 mm) trim allowance at each face are usual for hand-trimmed banding; 3 mm is the kerf
 * of a metric saw blade and 1/8 in (3.175 mm) that of an inch one. Nothing is trimmed off factory edges unless the
 * user says so, because many cut straight from them.
 */
export function defaultSettings(units: UnitSystem, currency: string, name = 'New project'): ProjectSettings {
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
    kerfMm: units === 'us' ? 3.175 : 3,
    sheetTrimMm: 0,
    finishLoss: 0.05,
  };
}
