import { figure } from '../../figure.ts';
import { coverageEnds } from '../../finish/coverage-ends.ts';
import { stepValues } from '../../finish/step-values.ts';
import type { RecipePlan } from '../../plan-output.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { GotCoverage } from '../buying-plan.ts';
import type { CoatUse } from './coat-uses.ts';

/**
 * What coverage did the user get of each finish, in coats that are done and measured?
 *
 * got = coverage reckoned with x (reckoned litres - session loss) / (measured litres - session loss), over all coats
 *
 * so that transfer efficiency, first coat and losses are allowed for and the figure stands beside the catalogue's.
 *
 * @param uses of finished tasks; only measured ones of a step that lays one product count
 * @param recipes for the area of each, m2
 * @returns m2/L per product, in order of first use; none for a product without a known coverage, or where no more was used than
 *   stays in the brush
 *
 * Source: `coatLitres` solved for its coverage. Valid range: any. Departures: the session loss is shared by area.
 * Example: 0.5 L reckoned at 10 m2/L, 0.4 L measured, nothing else lost: 12.5 m2/L.
 */
export function gotCoverages(
  input: ProjectInput,
  recipes: readonly RecipePlan[],
  uses: readonly CoatUse[],
): readonly GotCoverage[] {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const steps = new Map(
    input.recipes.flatMap((recipe) => recipe.steps.map((step) => [step.id, step] as const)),
  );
  const sums = new Map<string, Sum>();
  for (const { measured, productId, stepId, planned, areaM2, taskId } of uses) {
    const step = steps.get(stepId);
    const product = products.get(productId);
    const reckonedWith = product && coverageEnds(product)[input.settings.coverageChoice].value;
    if (!measured || step === undefined || step.productId !== productId) continue;
    if (reckonedWith == null || planned === null || areaM2 === null) continue;
    const ofTask = uses.filter((use) => use.taskId === taskId && !isThinner(use.productId, step.thinnerId));
    const litres = ofTask.reduce((sum, { used }) => sum + used, 0);
    const reckoned = ofTask.reduce((sum, use) => sum + (use.planned ?? 0), 0);
    const total = recipes.find(({ coats }) => coats.some((coat) => coat.stepId === stepId))?.areaM2.value;
    const loss = (stepValues(step, '').sessionLossL.value ?? 0) * (total ? areaM2 / total : 0);
    const before = sums.get(productId) ?? { areaM2: 0, litres: 0, coats: 0, net: 0, equivalent: 0 };
    sums.set(productId, {
      areaM2: before.areaM2 + areaM2,
      litres: before.litres + litres,
      coats: before.coats + 1,
      net: before.net + litres - loss,
      equivalent: before.equivalent + reckonedWith * (reckoned - loss),
    });
  }
  return [...sums].flatMap(([id, { areaM2, litres, coats, net, equivalent }]) => {
    const product = products.get(id);
    if (product === undefined || !(net >= LEAST_MEASURED_L) || !(equivalent > 0)) return [];
    const { low = null, typical = null, high = null } = product.figures.coverage ?? {};
    return [
      {
        id,
        name: product.name,
        got: figure(equivalent / net, 'm2/L', {
          rule: 'got = coverage reckoned with x (reckoned litres - session loss) / (measured litres - session loss)',
          inputs: [
            { name: 'area of the measured coats', value: areaM2, unit: 'm2' },
            { name: 'litres measured', value: litres, unit: 'L' },
            { name: 'litres measured less what stayed in brush or gun', value: net, unit: 'L' },
            {
              name: 'area they stand for at full transfer, loss and first coat allowed for',
              value: equivalent,
              unit: 'm2',
            },
          ],
          notes: [
            'Offered beside the figure of the catalogue; nothing reckons with it unless you take it over.',
          ],
        }),
        areaM2,
        litres,
        coats,
        catalogueLow: low,
        catalogueTypical: typical,
        catalogueHigh: high,
      },
    ];
  });
}

/** Less than a millilitre was not measured. Rule of ours, L. */
const LEAST_MEASURED_L = 0.001;

interface Sum {
  readonly areaM2: number;
  readonly litres: number;
  readonly coats: number;
  readonly net: number;
  readonly equivalent: number;
}

function isThinner(productId: string, thinnerId: string): boolean {
  return thinnerId !== '' && productId === thinnerId;
}
