import type { planMaterial } from './cutting/plan-material.ts';
import type { planPart } from './geometry/plan-part.ts';
import { type RoundMemory, roundMemory } from './round-memory.ts';

/** What a planning remembers of the one before it. One per project; it never changes what a plan comes to. */
export interface PlanMemory {
  readonly parts: RoundMemory<ReturnType<typeof planPart>>;
  readonly materials: RoundMemory<ReturnType<typeof planMaterial>>;
}

/** An empty one, for the first planning of a project. */
export function planMemory(): PlanMemory {
  return { parts: roundMemory(), materials: roundMemory() };
}
