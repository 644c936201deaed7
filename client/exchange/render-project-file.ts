import { html, nothing, type TemplateResult } from 'lit-html';

/** A project file before it is added: what it says of itself. The server judges whether it is sound. */
export function renderProjectFile(document: object): TemplateResult {
  const { settings, parts, recipes, products } = document as {
    readonly settings?: { readonly name?: unknown; readonly units?: unknown; readonly currency?: unknown };
    readonly parts?: unknown;
    readonly recipes?: unknown;
    readonly products?: unknown;
  };
  const facts: readonly (readonly [name: string, value: string | null])[] = [
    ['Parts', countOf(parts)],
    ['Finishes', countOf(recipes)],
    ['Units', settings?.units === 'us' ? 'inches' : settings?.units === 'metric' ? 'millimetres' : null],
    ['Currency', typeof settings?.currency === 'string' ? settings.currency : null],
    ['Products it brings along', countOf(products)],
  ];
  const name =
    typeof settings?.name === 'string' && settings.name !== '' ? settings.name : 'A project without a name';
  return html`<div class="import-project">
    <p class="import-project-name">${name}</p>
    <dl class="import-facts">
      ${facts.map(([fact, value]) => (value === null ? nothing : html`<div><dt>${fact}</dt><dd>${value}</dd></div>`))}
    </dl>
    <p>It is added as a new project; the ones you have stay as they are.</p>
  </div>`;
}

function countOf(list: unknown): string | null {
  return Array.isArray(list) ? String(list.length) : null;
}
