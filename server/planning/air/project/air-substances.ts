import { figure } from '../../figure.ts';
import { lelDilutionAirM3 } from '../lel-dilution-air-m3.ts';
import type { Solvent } from '../solvent.ts';
import { presentSolvents } from '../solvent-shares.ts';
import { vapourVolumeL } from '../vapour-volume-l.ts';
import type { AirCoatOfTask } from './air-coats.ts';
import type { AirSubstancePlan } from './air-plan.ts';

/**
 * Which vapours are in the air, by which limits, and how much air does a litre of each take?
 *
 * @param coats the coats of the calendar
 * @param solvents the list of solvents, for densities g/L
 * @param indoorC air temperature, C
 * @returns each vapour once: limits mg/m3 and percent with their sources, and m3 of air per litre of liquid
 *
 * Source: lelDilutionAirM3, the formula of 29 CFR 1910.94(c)(6)(ii) from memory. Valid range: any. Departures: where the
 * explosive limit is unknown, the lowest value found elsewhere is used and said. Example: toluene: about 80 m3 per litre.
 */
export function airSubstances(
  coats: readonly AirCoatOfTask[],
  solvents: readonly Solvent[],
  indoorC: number,
): AirSubstancePlan[] {
  const present = coats.flatMap((coat) => presentSolvents(coat.solvents).map(({ substance }) => substance));
  const once = new Map(present.map((substance) => [substance.id, substance]));
  return [...once.values()].map((substance) => {
    const listed = solvents.find(({ id }) => id === substance.id.split('@')[0]);
    const density = listed?.densityGPerL?.value ?? null;
    const lel = substance.lelPercent ?? substance.lelCautious?.percent ?? null;
    const { molarMassGPerMol } = substance;
    const known = density !== null && lel !== null && molarMassGPerMol !== null;
    return {
      id: substance.id,
      name: substance.name,
      limitMgPerM3: substance.limitMgPerM3,
      limitSource: substance.limitSource ?? '',
      lelPercent: substance.lelPercent,
      lelSource: substance.lelSource ?? '',
      cautiousLelPercent: substance.lelCautious?.percent ?? null,
      cautiousSource: substance.lelCautious?.source ?? '',
      flashPointC: listed?.flashPointC?.value ?? null,
      dilutionM3PerL: figure(
        known ? lelDilutionAirM3(vapourVolumeL(1, density, molarMassGPerMol, indoorC), lel) : null,
        'm3',
        {
          rule: 'air per litre of solvent = 4 x (100 - LEL) x litres of vapour / LEL',
          inputs: [
            { name: 'density', value: density, unit: 'g/L', source: listed?.densityGPerL?.source ?? '' },
            { name: 'molar mass, g/mol', value: molarMassGPerMol, unit: 'ratio' },
            {
              name: substance.lelPercent === null ? 'LEL, the lowest found elsewhere' : 'LEL',
              value: lel,
              unit: 'percent',
              source: substance.lelSource ?? substance.lelCautious?.source ?? '',
            },
          ],
          notes: [
            'To a quarter of the lower explosive limit: the formula of 29 CFR 1910.94(c)(6)(ii), from memory. It guards against fire, not against breathing the vapour.',
          ],
        },
      ),
    };
  });
}
