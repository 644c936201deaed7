import type { CellReading } from '../dimensions/read-cell.ts';
import type { Product } from '../product.ts';
import type { EdgeName, ProjectSettings } from '../project-input.ts';
import type { BandFacts } from './band-facts.ts';
import type { Thickness } from './product-thickness.ts';

/** What all rows of the part list share. Readings and facts are kept, since rows repeat them. */
export interface PartContext {
  readonly settings: ProjectSettings;
  readonly products: ReadonlyMap<string, Product>;
  /** Null where the setting cannot be used. */
  readonly overhangMm: number | null;
  readonly trimAllowanceMm: number | null;
  readonly bandingOrder: readonly EdgeName[] | null;
  /** Film-building coats per recipe id. */
  readonly filmCoats: ReadonlyMap<string, number>;
  readonly readSize: (text: string) => CellReading;
  readonly readRadius: (text: string) => CellReading;
  readonly readPieces: (text: string) => CellReading;
  readonly thicknessOf: (product: Product) => Thickness;
  readonly bandOf: (product: Product) => BandFacts;
}
