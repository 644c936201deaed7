import type { NewProject } from '../../db/create-project.ts';

/** The project with products renamed: `ids` leads from the id in the rows to the id they are to have. */
export function withProductIds(project: NewProject, ids: ReadonlyMap<string, string>): NewProject {
  const to = (id: string): string => ids.get(id) ?? id;
  const renamed = <Row extends { readonly productId: string }>(row: Row): Row => ({
    ...row,
    productId: to(row.productId),
  });
  return {
    ...project,
    parts: project.parts.map((part) => ({
      ...part,
      materialId: to(part.materialId),
      edgeFront: to(part.edgeFront),
      edgeBack: to(part.edgeBack),
      edgeLeft: to(part.edgeLeft),
      edgeRight: to(part.edgeRight),
    })),
    recipes: project.recipes.map((recipe) => ({
      ...recipe,
      steps: recipe.steps.map((step) => ({ ...renamed(step), thinnerId: to(step.thinnerId) })),
    })),
    blends: project.blends.map((blend) => ({ ...blend, components: blend.components.map(renamed) })),
    rules: project.rules.map(renamed),
    extras: project.extras.map(renamed),
    onHand: project.onHand.map(renamed),
    measurements: project.measurements.map(renamed),
    arrivals: project.arrivals.map(renamed),
    orderLines: project.orderLines.map(renamed),
    stockUses: project.stockUses.map(renamed),
    substitutes: project.substitutes.map((row) => ({
      ...renamed(row),
      substituteId: ids.get(row.substituteId) ?? row.substituteId,
    })),
  };
}
