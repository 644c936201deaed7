import type { PartPlan, RecipePlan } from '../plan-output.ts';
import type { UsageRule } from '../project-input.ts';
import { sumKnown } from './sum-known.ts';

/** What a usage rule multiplies its rate by. */
export interface RuleBase {
  readonly name: string;
  /** m2, m or a count; null when unknown. */
  readonly value: number | null;
  readonly from: string;
  readonly notes: readonly string[];
}

/**
 * How much is there to use something on: square metres finished once, square metres of every coat, metres banded,
 * pieces, one project?
 *
 * @returns a base for each kind of rule: m2, m2, m, pieces, 1. Unknown rows are left out and said so.
 *
 * No source: definitions of ours, following the project document.
 * Example: 5 m2 finished with four coats is 5 m2 of finish area and 20 m2 of coat area.
 */
export function ruleBases({
  parts,
  recipes,
}: {
  readonly parts: readonly PartPlan[];
  readonly recipes: readonly RecipePlan[];
}): Readonly<Record<UsageRule['per'], RuleBase>> {
  const base = (
    name: string,
    from: string,
    figures: readonly { readonly value: number | null }[],
  ): RuleBase => {
    const sum = sumKnown(figures, name);
    return { name, value: sum.value, from, notes: sum.notes };
  };
  const coatAreas = recipes.map(({ areaM2, coats }) => {
    const laid = coats.filter(({ method }) => method !== null).length;
    return { value: laid === 0 ? 0 : areaM2.value === null ? null : areaM2.value * laid };
  });
  return {
    'finish-area': base(
      'square metres finished',
      'totals/finishM2',
      parts.map((part) => part.totalFinishM2),
    ),
    'coat-area': base('square metres of all coats', '', coatAreas),
    'banding-metre': base(
      'metres banded',
      'totals/bandedM',
      parts.map((part) => part.totalBandedM),
    ),
    part: base(
      'pieces',
      'totals/pieces',
      parts.map((part) => part.quantity),
    ),
    project: { name: 'the project', value: 1, from: '', notes: [] },
  };
}
