import { figure } from '../../figure.ts';
import type { AirCheckInput } from '../air-check-input.ts';
import { coatSources } from '../coat-sources.ts';
import { roomPeak } from '../room-peak.ts';
import { sharesFit } from '../solvent-shares.ts';
import type { AirCoatOfTask } from './air-coats.ts';
import type { AirCoatPlan } from './air-plan.ts';

/**
 * What does each coat give off?
 *
 * @param input the room: m3, m3/min
 * @param coats liquids of coats: L, g/L
 * @returns litres, grams of vapour and the highest mixture index were the coat alone in the air, with their workings
 *
 * Source: coatSources, roomPeak. Valid range: any. Departures: where any figure of a coat is not known, its index is not.
 * Example: 0.4 L of 450 g/L: 180 g.
 */
export function airLines(input: AirCheckInput, coats: readonly AirCoatOfTask[]): AirCoatPlan[] {
  const { volumeM3, airflowM3PerMin, mixingFactor } = input;
  return coats.map((coat) => {
    const { id, name, startMinute, litres, vocGPerL, vocSource, solvents, task } = coat;
    const grams = litres === null || vocGPerL === null ? null : litres * vocGPerL;
    const limits = solvents.length > 0 && solvents.every(({ substance }) => substance.limitMgPerM3 !== null);
    const known = grams === 0 || (grams !== null && limits && sharesFit(solvents));
    const alone =
      volumeM3 === null || airflowM3PerMin === null || !known
        ? null
        : roomPeak(
            { volumeM3, airflowM3PerMin, mixingFactor },
            coatSources([coat], (substance) => substance.limitMgPerM3),
          ).value;
    return {
      id,
      name,
      startMinute,
      litres: figure(litres, 'L', {
        rule: 'litres of this batch = litres of the coat x area of the batch / area of the recipe',
        inputs: [
          {
            name: 'litres of the coat',
            value: coat.wholeLitres,
            unit: 'L' as const,
            from: `recipes/${task.recipeId}/coats/${task.stepId}-${task.number}/litres`,
          },
          { name: 'area of the batch', value: task.areaM2, unit: 'm2' as const },
          {
            name: 'area of the recipe',
            value: coat.wholeAreaM2,
            unit: 'm2' as const,
            from: `recipes/${task.recipeId}/areaM2`,
          },
        ],
        notes: ['What was measured for a coat that is done stands in place of what was planned.'],
      }),
      vapourG: figure(grams, 'g', {
        rule: 'vapour = litres x actual VOC',
        inputs: [
          { name: 'litres', value: litres, unit: 'L', from: `air/coats/${encodeURIComponent(id)}/litres` },
          { name: 'actual VOC, not "less water"', value: vocGPerL, unit: 'g/L', source: vocSource },
        ],
      }),
      peakIndex: figure(alone, 'ratio', {
        rule: 'highest sum of C/limit were this coat alone in the air',
        inputs: [
          { name: 'vapour', value: grams, unit: 'g', from: `air/coats/${encodeURIComponent(id)}/vapourG` },
          { name: 'volume of the room', value: volumeM3, unit: 'm3', from: 'air/volumeM3' },
          ...solvents.map(({ substance, shareOfVoc }) => ({
            name: `limit of ${substance.name}, mg/m3`,
            value: substance.limitMgPerM3,
            unit: 'ratio' as const,
            source: `${substance.limitSource ?? ''}${shareOfVoc === null ? '; share not known' : ''}`,
          })),
        ],
      }),
    };
  });
}
