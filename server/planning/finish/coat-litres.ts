import { requireNumber } from './require-number.ts';

/**
 * How many litres does one coat take?
 *
 * litres = area / (coverage x transfer efficiency) x first-coat factor x (1 + loss) + session loss
 *
 * @param areaM2 area to coat, m2, 0 or more
 * @param coverageM2PerL area one litre covers per coat, m2/L, above 0
 * @param transferEfficiency share of the liquid that ends on the work, above 0 to 1
 * @param firstCoatFactor times the litres that coverage says, on bare wood; 1 otherwise
 * @param lossShare share lost to spills, filters and wet edges, 0 or more
 * @param sessionLossL litres that stay in brush, tray or gun, 0 or more
 * @returns mixed liquid without thinner, litres
 *
 * Source: published spreading-rate notes for area x factor / rate; division by transfer efficiency follows its
 * definition (solids deposited / solids used, metal-finishing library, "transfer efficiency"). The loss and session
 * terms are common practice, no source.
 * Valid for any area. Departure: an area of 0 takes 0 L, for then no session is held.
 *
 * Example: 6 m2 at 12 m2/L sprayed at 0.5, nothing else lost: 6 / (12 x 0.5) = 1 L.
 */
export function coatLitres({
  areaM2,
  coverageM2PerL,
  transferEfficiency,
  firstCoatFactor,
  lossShare,
  sessionLossL,
}: {
  readonly areaM2: number;
  readonly coverageM2PerL: number;
  readonly transferEfficiency: number;
  readonly firstCoatFactor: number;
  readonly lossShare: number;
  readonly sessionLossL: number;
}): number {
  requireNumber('coatLitres: areaM2', areaM2, { atLeast: 0 }, 'm2');
  requireNumber('coatLitres: coverageM2PerL', coverageM2PerL, { above: 0 }, 'm2/L');
  requireNumber('coatLitres: transferEfficiency', transferEfficiency, { above: 0, atMost: 1 }, '(share)');
  requireNumber('coatLitres: firstCoatFactor', firstCoatFactor, { above: 0 }, '(ratio)');
  requireNumber('coatLitres: lossShare', lossShare, { atLeast: 0 }, '(share)');
  requireNumber('coatLitres: sessionLossL', sessionLossL, { atLeast: 0 }, 'L');
  if (areaM2 === 0) return 0;
  return (areaM2 / (coverageM2PerL * transferEfficiency)) * firstCoatFactor * (1 + lossShare) + sessionLossL;
}
