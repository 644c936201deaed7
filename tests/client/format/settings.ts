import type { PrintSettings } from '../../../client/format/figure-text.ts';

export const METRIC: PrintSettings = {
  units: 'metric',
  inchStyle: 'fraction',
  inchDenominator: 32,
  currency: 'EUR',
};
export const US: PrintSettings = { units: 'us', inchStyle: 'fraction', inchDenominator: 32, currency: 'USD' };
