import type { Figure } from '../planning/figure.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { PlanView } from './contract.ts';

/** A figure is told from other objects by its working. */
export function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'working' in value;
}

/** The plan with every figure reduced to its bare number; the problems stay as they are. */
export function stripWorkings({ problems, ...figures }: Plan): PlanView {
  return { ...(strip(figures) as Omit<PlanView, 'problems'>), problems };
}

function strip(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isFigure(value)) return value.value;
  if (Array.isArray(value)) return value.map(strip);
  const stripped: Record<string, unknown> = {};
  for (const key of Object.keys(value)) stripped[key] = strip((value as Record<string, unknown>)[key]);
  return stripped;
}
