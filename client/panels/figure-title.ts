import type { ProjectState } from '../../server/http/contract.ts';
import { airFigureTitle } from './air-figure-title.ts';
import { answerSubject } from './answer-subject.ts';
import { figureWords, quoteFigureWords } from './figure-words.ts';

export interface FigureTitle {
  /** What the figure is: "Cut length". */
  readonly name: string;
  /** Whose it is: "Shelf", "Clear satin, coat 2", "Project". */
  readonly subject: string;
}

const WHOLE_PROJECT = 'Whole project';

/** What a figure's path names, in the words of the screens. Ids that are gone stand as they are. */
export function figureTitle(project: ProjectState, at: string): FigureTitle {
  const steps = at.split('/');
  if (steps[0] === 'buying' || steps[0] === 'ledger')
    return { name: figureWords(steps.at(-1) ?? at), subject: answerSubject(project, steps) };
  if (steps[0] === 'air') return airFigureTitle(steps);
  const field = steps.at(-1) ?? at;
  const name = steps[0] === 'quotes' ? quoteFigureWords(field) : figureWords(field);
  return { name, subject: subject(project, steps) };
}

function subject(project: ProjectState, [list = '', id = '', inner = '', innerId = '']: string[]): string {
  const { plan, rows } = project;
  if (list === 'parts') {
    const part = nameOf(rows.parts, id);
    if (inner === 'edges') return `${part}, ${innerId} edge`;
    return inner === 'strips' ? `${part}, strip ${edgesText(innerId)}` : part;
  }
  if (list === 'recipes') {
    const recipe = nameOf(plan.recipes, id);
    return inner === 'coats' ? `${recipe}, ${coatText(project, id, innerId)}` : recipe;
  }
  if (list === 'buy') {
    if (id === 'lines') return plan.buy.lines.find((line) => line.id === inner)?.name ?? inner;
    return id === 'categories' ? inner : WHOLE_PROJECT;
  }
  if (list === 'groups') return groupName(project, id, inner);
  if (list === 'sizes') return nameOf(plan.sizes, id);
  if (list === 'materials') return nameOf(plan.materials, id);
  if (list === 'banding') return nameOf(plan.banding, id);
  if (list === 'quotes') return quoteName(rows.quotes, id);
  if (list === 'needs') return nameOf(plan.needs, id);
  return WHOLE_PROJECT;
}

function quoteName(quotes: ProjectState['rows']['quotes'], id: string): string {
  const index = quotes.findIndex((quote) => quote.id === id);
  return quotes[index]?.title || `Quote ${index + 1}`;
}

/** A section or a material of the part list; a name may hold a slash, so it is encoded in the path. */
function groupName({ plan }: ProjectState, list: string, encodedId: string): string {
  const id = decodeURIComponent(encodedId);
  if (list === 'sections') return id === '' ? 'Parts without a section' : `Section ${id}`;
  if (id === '') return 'Parts without a material';
  return plan.materials.find((material) => material.id === id)?.name ?? id;
}

/** "left+front+right" as people read it. */
export function edgesText(stripId: string): string {
  return stripId.split('+').join(' + ');
}

function coatText({ plan }: ProjectState, recipeId: string, coatId: string): string {
  const coat = plan.recipes.find(({ id }) => id === recipeId)?.coats.find(({ id }) => id === coatId);
  return coat === undefined ? `coat ${coatId}` : `${coat.name}, ${coat.number}`;
}

function nameOf(rows: readonly { readonly id: string; readonly name: string }[], id: string): string {
  const name = rows.find((row) => row.id === id)?.name ?? '';
  return name === '' ? `no. ${id}` : name;
}
