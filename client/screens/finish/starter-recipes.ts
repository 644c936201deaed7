import { html, type TemplateResult } from 'lit-html';
import type { Change, StarterRecipe } from '../../../server/http/contract.ts';
import type { Product } from '../../../server/planning/product.ts';
import { focusRow } from '../../fields/focus-row.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { ApiError, request } from '../../state/api.ts';
import { actions } from '../../state/store.ts';
import { STEP_WORDS } from './words.ts';

/** Lets the user begin with a usual recipe; it becomes a recipe of the project like any other. */
export async function offerStarterRecipes(products: ReadonlyMap<string, Product>): Promise<void> {
  const recipes = await readStarters();
  openDialog(
    'Usual recipes',
    (close) => html`<form method="dialog" class="starter-recipes">
      <h2>Usual recipes</h2>
      ${
        recipes instanceof ApiError
          ? html`<p role="alert">${recipes.message} ${recipes.wayOut}</p>`
          : html`<p>To begin with; every step can be changed afterwards. Common practice, no source: the label of each product comes first.</p>
            <ul>
              ${recipes.map((recipe) => renderStarter(recipe, products, close))}
            </ul>`
      }
      <div class="dialog-actions"><button type="button" class="button" @click=${close}>Cancel</button></div>
    </form>`,
  );
}

function renderStarter(
  recipe: StarterRecipe,
  products: ReadonlyMap<string, Product>,
  close: () => void,
): TemplateResult {
  return html`<li>
    <button
      type="button"
      class="starter-recipe"
      @click=${() => {
        close();
        void addStarter(recipe, products);
      }}
    >
      <strong>${recipe.name}</strong><span class="starter-summary">${recipe.summary}</span
      ><span class="starter-steps">${stepsInWords(recipe, products)}</span>
    </button>
  </li>`;
}

/** "Sand 150 · Sand 180 · Dust off · conditioner oil · stain walnut · Scuff-sand 320 · water poly satin ×3 · Cure" */
export function stepsInWords(recipe: StarterRecipe, products: ReadonlyMap<string, Product>): string {
  return recipe.steps
    .map(({ kind, productId, coats }) => {
      const product = productId === undefined ? undefined : products.get(productId);
      const times = coats === undefined || coats === 1 ? '' : ` ×${coats}`;
      const grit = product?.choices.grit;
      if (grit !== undefined) return `${STEP_WORDS[kind]} ${grit}${times}`;
      return `${product?.shortName ?? STEP_WORDS[kind]}${times}`;
    })
    .join(' · ');
}

/** The recipe and its steps as one change; products the catalogue no longer offers are left open. */
export function starterChanges(
  recipe: StarterRecipe,
  products: ReadonlyMap<string, Product>,
): readonly Change[] {
  const offered = (id: string): boolean => products.get(id)?.retired === false;
  return [
    {
      op: 'insert',
      table: 'recipes',
      tempId: 'recipe',
      values: { name: recipe.name, faces: recipe.faces },
    },
    ...recipe.steps.map(
      ({ productId, ...step }): Change => ({
        op: 'insert',
        table: 'steps',
        values: {
          recipeId: 'recipe',
          ...step,
          ...(productId !== undefined && offered(productId) ? { productId } : {}),
        },
      }),
    ),
  ];
}

async function addStarter(recipe: StarterRecipe, products: ReadonlyMap<string, Product>): Promise<void> {
  const answer = await actions.change(starterChanges(recipe, products), `add the recipe “${recipe.name}”`);
  focusRow('recipes', answer?.inserted.recipe ?? null);
}

async function readStarters(): Promise<readonly StarterRecipe[] | ApiError> {
  try {
    const { recipes } = await request<{ recipes: readonly StarterRecipe[] }>('GET', '/api/starter-recipes');
    return recipes;
  } catch (error) {
    if (error instanceof ApiError) return error;
    throw error;
  }
}
