import type { Figure } from '../planning/figure.ts';
import type { Plan } from '../planning/plan-output.ts';
import type { PlanView } from './contract.ts';

/** A figure is told from other objects by its working. */
export function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'working' in value;
}

/** The plan with every figure reduced to its bare number; the problems stay as they are. */
export function stripWorkings({ problems, parts, ...figures }: Plan): PlanView {
  const rest = strip(figures) as Omit<PlanView, 'problems' | 'parts'>;
  return { ...rest, parts: parts.map(strippedPart), problems };
}

const strippedParts = new WeakMap<Plan['parts'][number], PlanView['parts'][number]>();

/** A part's plan that is the object of before gives the view of before: with thousands of rows, all but a few are. */
function strippedPart(part: Plan['parts'][number]): PlanView['parts'][number] {
  let view = strippedParts.get(part);
  if (view === undefined) {
    view = strip(part) as PlanView['parts'][number];
    strippedParts.set(part, view);
  }
  return view;
}

function strip(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isFigure(value)) return value.value;
  if (Array.isArray(value)) return value.map(strip);
  const stripped: Record<string, unknown> = {};
  for (const key of Object.keys(value)) stripped[key] = strip((value as Record<string, unknown>)[key]);
  return stripped;
}
