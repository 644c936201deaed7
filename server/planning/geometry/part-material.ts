import { type Figure, figure } from '../figure.ts';
import type { Problem } from '../problem.ts';
import type { PartInput } from '../project-input.ts';
import type { PartContext } from './part-context.ts';
import { partProblem } from './part-problem.ts';

/**
 * What is a part made of, and how thick is that?
 *
 * `row`: the part. Result: the thickness in mm, null where the material is missing, unknown, of the wrong kind or of
 * unknown thickness, each with its one problem at the material cell. A retired material is used, with a warning. No
 * source: a definition; the figure shows its own.
 *
 * Example: a part in birch ply of 18 mm measured at 17.6 mm is 17.6 mm thick.
 */
export function partMaterial(
  row: PartInput,
  context: PartContext,
): { readonly thicknessMm: Figure; readonly problems: readonly Problem[] } {
  const unknown = (note: string): Figure =>
    figure(null, 'mm', { rule: 'thickness of the material', inputs: [], notes: [note] });
  const fault = (code: Problem['code'], message: string, wayOut: string) => ({
    thicknessMm: unknown(message),
    problems: [partProblem(row, 'materialId', { code, message, wayOut })],
  });
  if (row.materialId === '')
    return fault(
      'material-missing',
      'No material is chosen.',
      'Choose a sheet or a board from the catalogue.',
    );
  const product = context.products.get(row.materialId);
  if (product === undefined)
    return fault(
      'material-unknown',
      `The material "${row.materialId}" is not in the catalogue.`,
      'Choose a sheet or a board from the catalogue, or add this one to it.',
    );
  if (product.kind !== 'sheet' && product.kind !== 'board')
    return fault(
      'product-wrong-kind',
      `"${product.name}" is of kind ${product.kind}, not a sheet or a board.`,
      'Choose a sheet or a board as the material.',
    );

  const { mm, source } = context.thicknessOf(product);
  const problems: Problem[] = [];
  if (product.retired)
    problems.push(
      partProblem(
        row,
        'materialId',
        {
          code: 'product-retired',
          message: `"${product.name}" has been retired from the catalogue.`,
          wayOut: 'Choose a material that is still offered, or restore this one in the catalogue.',
        },
        'warning',
      ),
    );
  if (mm === null)
    problems.push(
      partProblem(row, 'materialId', {
        code: 'thickness-unknown',
        message: `The thickness of "${product.name}" is not known.`,
        wayOut: 'Measure it and enter it under Settings, or complete the product in the catalogue.',
      }),
    );
  return {
    thicknessMm: figure(mm, 'mm', {
      rule: 'thickness of the material',
      inputs: [{ name: product.name, value: mm, unit: 'mm', source }],
    }),
    problems,
  };
}
