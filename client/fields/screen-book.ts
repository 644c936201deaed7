import type { ProjectState } from '../../server/http/contract.ts';
import type { Problem } from '../../server/planning/problem.ts';
import type { Catalogue, Product, Supplier } from '../../server/planning/product.ts';
import type { ProjectSettings } from '../../server/planning/project-input.ts';
import { type Formats, formatsFor } from '../format/formats.ts';
import type { AppState } from '../state/store.ts';

/** What every screen looks things up in; made anew only when the project or the catalogue has changed. */
export interface ScreenBook {
  readonly project: ProjectState;
  readonly catalogue: Catalogue;
  readonly settings: ProjectSettings;
  readonly formats: Formats;
  readonly problems: readonly Problem[];
  readonly products: ReadonlyMap<string, Product>;
  readonly suppliers: ReadonlyMap<string, Supplier>;
}

let last: ScreenBook | null = null;

/** Null while the project or the catalogue is not there yet. */
export function screenBook({ project, catalogue }: AppState): ScreenBook | null {
  if (project === null || catalogue === null) return null;
  if (last !== null && last.project === project && last.catalogue === catalogue) return last;
  const sameCatalogue = last !== null && last.catalogue === catalogue;
  last = {
    project,
    catalogue,
    settings: project.settings,
    formats: formatsFor(project.settings),
    problems: project.plan.problems,
    products: sameCatalogue && last !== null ? last.products : byId(catalogue.products),
    suppliers: sameCatalogue && last !== null ? last.suppliers : byId(catalogue.suppliers),
  };
  return last;
}

function byId<Row extends { readonly id: string }>(rows: readonly Row[]): ReadonlyMap<string, Row> {
  return new Map(rows.map((row) => [row.id, row]));
}
