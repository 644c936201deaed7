import type { CalendarDays } from '../../../../server/planning/calendar/project/calendar-days.ts';
import { planParts } from '../../../../server/planning/geometry/plan-parts.ts';
import type { PartPlan } from '../../../../server/planning/plan-output.ts';
import type { Product, ProductFigureName } from '../../../../server/planning/product.ts';
import type { ProjectInput, ProjectSettings, RecipeStep } from '../../../../server/planning/project-input.ts';
import { partRow, sheet, smallProject } from '../../geometry/small-project.ts';

/** Projects for tests of what a project asks of its calendar. */

/** Saturday 13 March 2027, 08:00, in a zone that does not change its clocks. */
export const SATURDAY: CalendarDays = { firstDate: '2027-03-13', fromMinute: 480, clockShifts: [] };

/** A finish with label figures in minutes, C and percent. */
export function finish(
  id: string,
  figures: Partial<Record<ProductFigureName, number>>,
  rest: Partial<Product> = {},
): Product {
  const all = Object.entries(figures).map(([name, typical]) => [
    name,
    { low: null, typical, high: null, unit: 'min', basis: 'label', source: 'made up', readOn: null },
  ]);
  return {
    ...sheet(id, null),
    kind: 'finish',
    unit: 'L',
    figures: Object.fromEntries(all),
    recoat: [{ fromMin: 240, toMin: null, scuff: false }],
    ...rest,
  };
}

export const varnish = finish('varnish', { touchDry: 60, handleDry: 240, cure: 2880, workingTime: 10 });

export function stepRow(rest: Partial<RecipeStep>): RecipeStep {
  return {
    id: 'top',
    kind: 'topcoat',
    productId: 'varnish',
    blendId: '',
    coats: 1,
    method: 'brush',
    transferEfficiency: null,
    thinning: 0,
    thinnerId: '',
    sessionLossL: null,
    note: '',
    ...rest,
  };
}

type Given = Partial<Omit<ProjectInput, 'settings' | 'catalogue'>> & {
  readonly settings?: Partial<ProjectSettings>;
  readonly products?: readonly Product[];
};

/** One panel of 600 x 400 mm, varnished on its show face; the shop is open on every day from 9:00 to 17:00. */
export function calendarProject(given: Given = {}): {
  readonly input: ProjectInput;
  readonly plan: { readonly parts: readonly PartPlan[] };
} {
  const { products = [], ...rest } = given;
  const input = smallProject({
    parts: [partRow('1', { showRecipeId: 'r' })],
    recipes: [{ id: 'r', name: 'Clear', faces: 'flip', steps: [stepRow({})] }],
    shopHours: [0, 1, 2, 3, 4, 5, 6].map((weekday) => ({
      id: String(weekday),
      weekday,
      from: '9:00',
      to: '17:00',
    })),
    ...rest,
    products: [sheet('ply', 18), varnish, ...products],
  });
  return { input, plan: { parts: planParts(input, new Map()).parts } };
}
