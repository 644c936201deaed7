import { type Figure, figure } from '../figure.ts';
import { difference } from './difference.ts';
import type { LedgerPlan } from './ledger-plan.ts';
import { sumMinor } from './sum-minor.ts';

const DEARER = 'Below 0: building it costs more than buying it.';

/**
 * What does building the piece save over buying it ready made, without and with one's own hours?
 *
 * @param readyMadeMinor price with tax, whole minor units; null when it is not entered
 * @param forecast @param labour whole minor units
 * @returns whole minor units; unknown where one of the two sides is
 *
 * Source: definition. Example: ready made 300.00, forecast 200.00, labour 150.00: saved 100.00, with labour -50.00.
 */
export function readyMadeComparison(
  readyMadeMinor: number | null,
  forecast: Figure,
  labour: Figure,
): Pick<LedgerPlan, 'readyMade' | 'forecastWithLabour' | 'saved' | 'savedWithLabour'> {
  const readyMade = figure(readyMadeMinor, 'minor', {
    rule: 'price of the same piece ready made, with tax, as entered',
    inputs: [],
    ...(readyMadeMinor === null ? { notes: ['No ready-made price is entered.'] } : {}),
  });
  const forecastWithLabour = withLabour(forecast, labour);
  return {
    readyMade,
    forecastWithLabour,
    saved: difference(
      'saved = ready-made price - forecast',
      ['ready-made price', readyMade, 'ledger/readyMade'],
      ['forecast', forecast, 'ledger/forecast'],
      DEARER,
    ),
    savedWithLabour: difference(
      'saved = ready-made price - forecast with labour',
      ['ready-made price', readyMade, 'ledger/readyMade'],
      ['forecast with labour', forecastWithLabour, 'ledger/forecastWithLabour'],
      DEARER,
    ),
  };
}

function withLabour(forecast: Figure, labour: Figure): Figure {
  const rule = 'forecast with labour = forecast + labour';
  const missing = labour.value === null ? 'labour' : forecast.value === null ? 'the forecast' : null;
  if (missing !== null)
    return figure(null, 'minor', { rule, inputs: [], notes: [`Not known, since ${missing} is not.`] });
  return sumMinor(rule, 'amounts', [
    { name: 'forecast', value: forecast.value, from: 'ledger/forecast' },
    { name: 'labour', value: labour.value, from: 'ledger/labour' },
  ]);
}
