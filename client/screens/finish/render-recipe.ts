import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { RecipeRow, StepRow } from '../../../server/http/contract.ts';
import type { StepKind } from '../../../server/planning/project-input.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { labelled } from '../../fields/labelled.ts';
import { problemsAt } from '../../fields/problems-at.ts';
import { removeAct } from '../../fields/row-acts.ts';
import { addRow, saveField } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { stat } from '../../fields/stat.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { icon } from '../../shell/icons.ts';
import { renderStep } from './render-step.ts';
import { choicesFrom, FACES_WORDS, LIQUID_STEPS, STEP_WORDS } from './words.ts';

/** One recipe: its faces and areas, and its steps in order with what each coat takes. */
export function renderRecipe(book: ScreenBook, recipe: RecipeRow): TemplateResult {
  const { project, problems, formats } = book;
  const steps = project.rows.steps.filter((step) => step.recipeId === recipe.id);
  const plan = project.plan.recipes.find(({ id }) => id === recipe.id);
  const place = { table: 'recipes', id: recipe.id, field: 'name' } as const;
  const faces = { table: 'recipes', id: recipe.id, field: 'faces' } as const;
  const at = `recipes/${recipe.id}`;
  // The bars of one recipe share a scale, so that coats can be compared by eye.
  const most = Math.max(
    0,
    ...(plan?.coats ?? []).flatMap((coat) => [
      coat.litresAtLowCoverage ?? 0,
      coat.litresAtHighCoverage ?? 0,
      coat.litres ?? 0,
    ]),
  );
  return html`<article class="panel recipe" data-row="recipes/${recipe.id}" aria-label="Recipe ${recipe.name}">
    <header>
      <div class="recipe-name">
        ${textInput({ place, label: 'Recipe name', text: recipe.name, read: asTyped, save: saveField('recipes', recipe.id, 'name'), problems })}
      </div>
      <div class="toolbar">${removeAct('recipes', recipe.id, `recipe ${recipe.name}`)}</div>
    </header>
    <div class="body">
      <div class="recipe-top">
        ${labelled(
          faces,
          'Faces',
          choiceInput({
            place: faces,
            label: 'How the two faces are coated',
            value: recipe.faces,
            choices: choicesFrom(FACES_WORDS),
            save: saveField('recipes', recipe.id, 'faces'),
            problems,
          }),
        )}
        ${
          plan === undefined
            ? nothing
            : html`<dl class="stats">
              ${stat('Show faces', `${at}/showM2`, formats.area(plan.showM2))}
              ${stat('Back faces', `${at}/backM2`, formats.area(plan.backM2))}
              ${stat('Edges', `${at}/edgeM2`, formats.area(plan.edgeM2))}
              ${stat('One coat', `${at}/areaM2`, formats.area(plan.areaM2), { lead: true })}
            </dl>`
        }
      </div>
      ${recipeProblems(book, recipe.id)}
      <ol class="steps" data-list="steps" aria-label="Steps of ${recipe.name}">
        ${repeat(
          steps,
          ({ id }) => id,
          (step, index) =>
            renderStep(book, {
              step,
              steps,
              index,
              most,
              coats: plan?.coats.filter(({ stepId }) => stepId === step.id) ?? [],
            }),
        )}
      </ol>
      ${addSteps(recipe, steps)}
    </div>
  </article>`;
}

/** What is said of the recipe as a whole: no steps, used by no part. */
function recipeProblems({ problems }: ScreenBook, id: string): TemplateResult | typeof nothing {
  const whole = [
    ...problemsAt(problems, { table: 'recipes', id, field: 'steps' }),
    ...problemsAt(problems, { table: 'recipes', id, field: '' }),
  ];
  if (whole.length === 0) return nothing;
  return html`<div>
    ${whole.map(({ severity, message, wayOut }) => html`<p class="said ${severity}">${message} ${wayOut}</p>`)}
  </div>`;
}

function addSteps(recipe: RecipeRow, steps: readonly StepRow[]): TemplateResult {
  return html`<div class="add-steps" role="group" aria-label="Add a step to ${recipe.name}">
    <span>Add</span>
    ${(Object.keys(STEP_WORDS) as StepKind[]).map(
      (kind) =>
        html`<button type="button" class="chip" data-add=${steps.length === 0 ? 'steps' : nothing} @click=${() => void addStep(recipe.id, kind)}>
          ${icon('plus')} ${STEP_WORDS[kind].toLowerCase()}
        </button>`,
    )}
  </div>`;
}

async function addStep(recipeId: string, kind: StepKind): Promise<void> {
  const values = LIQUID_STEPS.includes(kind)
    ? { recipeId, kind, method: kind === 'topcoat' || kind === 'seal' ? 'brush' : 'wipe' }
    : { recipeId, kind };
  focusRow('steps', await addRow('steps', values, `add ${STEP_WORDS[kind].toLowerCase()}`));
}
