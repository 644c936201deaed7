import { requireWithin } from '../climate/require-within.ts';
import type { AirCoat } from './air-check-input.ts';
import type { RoomSource } from './air-room.ts';
import type { AirSubstance } from './air-substance.ts';
import { MG_PER_G } from './constants.ts';
import { emissionPhases } from './emission-phases.ts';
import { sharesFit } from './solvent-shares.ts';
import { worstCasePerMg } from './worst-case-per-mg.ts';

/**
 * How much does each coat add to a mixture index, as sources of a room?
 *
 * @param coats litres L, VOC g/L, solvents with shares, emission
 * @param limitMgPerM3 the limit of a substance in question, mg/m3; null when not known
 * @returns one source per coat whose litres and VOC are known; amounts in m3 of air filled to the limit, so that
 *   concentrations in the room come out as mixture indices
 *
 * Source: definition of the mixture index (mixtureIndex); every solvent of a coat is taken to come off in the same
 * proportion all the time, an assumption of ours. Valid range: litres and VOC from 0; else a RangeError. Departures:
 * shares that cannot be right are taken as unknown.
 * Example: 0.5 L of 450 g/L, all mineral spirits at 350 mg/m3: 225 000 mg fill 642.9 m3 to the limit.
 */
export function coatSources(
  coats: readonly AirCoat[],
  limitMgPerM3: (substance: AirSubstance) => number | null,
): RoomSource[] {
  return coats.flatMap((coat) => {
    if (coat.litres === null || coat.vocGPerL === null) return [];
    const litres = requireWithin('litres', coat.litres, 0, Infinity, 'L');
    const vocGPerL = requireWithin('vocGPerL', coat.vocGPerL, 0, Infinity, 'g/L');
    const solvents = sharesFit(coat.solvents)
      ? coat.solvents
      : coat.solvents.map((solvent) => ({ ...solvent, shareOfVoc: null }));
    const filledM3 = litres * vocGPerL * MG_PER_G * worstCasePerMg(solvents, limitMgPerM3);
    return [{ startMinute: coat.startMinute, phases: emissionPhases(coat.emission, filledM3) }];
  });
}
