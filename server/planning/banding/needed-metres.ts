import { type Figure, figure } from '../figure.ts';
import type { RollStrip } from '../plan-output.ts';
import { MM_PER_M } from './constants.ts';

/**
 * How many metres of a banding product are needed, strips with overhang and spares?
 *
 * needed = edge + strips x 2 x overhang + spare strips x longest strip
 *
 * `known`: strips of known length, mm. `spareMm`: length of one spare, mm. `path`: `banding/<id>`. Result: m; null
 * where no strip or the number of spares is not known. No source: a definition.
 *
 * Example: 18 strips of 838.2 mm and one spare of the same need 15.9258 m.
 */
export function neededMetres({
  strips,
  edgeM,
  known,
  spare,
  spareMm,
  path,
  overhangMm,
}: {
  readonly strips: Figure;
  readonly edgeM: Figure;
  readonly known: readonly RollStrip[];
  readonly spare: number | null;
  readonly spareMm: number | null;
  readonly path: string;
  readonly overhangMm: number;
}): Figure {
  const stripsMm = known.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
  const neededMm = spare === null ? null : stripsMm + spare * (spareMm ?? 0);
  return figure(neededMm === null || strips.value === null ? null : neededMm / MM_PER_M, 'm', {
    rule: 'needed = edge + strips x 2 x overhang + spare strips x longest strip',
    inputs: [
      { name: 'edge', value: edgeM.value, unit: 'm', from: `${path}/edgeM` },
      { name: 'strips', value: strips.value, unit: 'pcs', from: `${path}/strips` },
      {
        name: 'overhang',
        value: Number.isFinite(overhangMm) ? overhangMm : null,
        unit: 'mm',
        source: 'project setting',
      },
      { name: 'spare strips', value: spare, unit: 'pcs', source: 'project setting' },
      { name: 'longest strip a roll holds', value: spareMm, unit: 'mm' },
    ],
    ...(spare === null ? { notes: ['The number of spare strips in the settings cannot be used.'] } : {}),
  });
}
