import type { Problem } from '../problem.ts';
import { EDGE_NAMES, type EdgeName, type ProjectSettings } from '../project-input.ts';

export interface PartSettings {
  readonly overhangMm: number | null;
  readonly trimAllowanceMm: number | null;
  readonly bandingOrder: readonly EdgeName[] | null;
  readonly problems: readonly Problem[];
}

/**
 * Can the settings that parts and bands hang on be used?
 *
 * Result: overhang and trim allowance in mm, 0 or more, and the banding order, each edge once; null with a problem
 * where a setting is nothing of the kind. No source: a definition.
 *
 * Example: an order that names the front edge twice is null.
 */
export function partSettings(settings: ProjectSettings): PartSettings {
  const problems: Problem[] = [];
  const fault = (field: keyof ProjectSettings, message: string, wayOut: string) => {
    problems.push({
      code: 'setting-invalid',
      severity: 'error',
      at: { table: 'settings', id: null, field },
      message,
      wayOut,
    });
    return null;
  };
  const sizeMm = (field: 'overhangMm' | 'trimAllowanceMm', name: string): number | null => {
    const value = settings[field];
    return value >= 0 && Number.isFinite(value)
      ? value
      : fault(
          field,
          `The ${name} is ${value} mm; it must be 0 or more.`,
          `Enter the ${name} in the settings.`,
        );
  };
  const order = settings.bandingOrder;
  const eachOnce = order.length === EDGE_NAMES.length && EDGE_NAMES.every((name) => order.includes(name));
  return {
    overhangMm: sizeMm('overhangMm', 'banding overhang'),
    trimAllowanceMm: sizeMm('trimAllowanceMm', 'trim allowance'),
    bandingOrder: eachOnce
      ? order
      : fault(
          'bandingOrder',
          `The banding order "${order.join(', ')}" does not name each edge once.`,
          'List front, back, left and right, each once, in the order they are banded.',
        ),
    problems,
  };
}
