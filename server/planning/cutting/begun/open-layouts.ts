import type { StockLayout } from '../../plan-output.ts';

/**
 * The layouts of a plan without the sheets of it that are being cut.
 *
 * `layouts`: of the plan. `begun`: sheets that stay, `count` of each. Result: the others. Equal sheets are told by what
 * they are cut from and how. Exact.
 */
export function openLayouts(
  layouts: readonly StockLayout[],
  begun: readonly StockLayout[],
): readonly StockLayout[] {
  const nameOf = ({ packId, onHandId, cut }: StockLayout): string => JSON.stringify([packId, onHandId, cut]);
  const taken = new Map<string, number>();
  for (const layout of begun) taken.set(nameOf(layout), (taken.get(nameOf(layout)) ?? 0) + layout.count);
  return layouts.flatMap((layout) => {
    const count = layout.count - (taken.get(nameOf(layout)) ?? 0);
    return count > 0 ? [{ ...layout, count }] : [];
  });
}
