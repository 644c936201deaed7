import { UNKNOWN_TEXT } from '../../server/planning/display/constants.ts';
import { trimmedText } from '../../server/planning/display/fixed-text.ts';
import type { FigureUnit } from '../../server/planning/figure.ts';
import type { ProductUnit } from '../../server/planning/product.ts';
import type { ProjectSettings } from '../../server/planning/project-input.ts';
import { figureText } from './figure-text.ts';

/** The project's way of printing each quantity; null prints as "unknown" everywhere. */
export interface Formats {
  readonly length: (mm: number | null) => string;
  /** Thickness of a material or a band: measured with a caliper, so inches are decimals even where lengths are fractions. */
  readonly thickness: (mm: number | null) => string;
  readonly run: (metres: number | null) => string;
  readonly area: (m2: number | null) => string;
  readonly volume: (litres: number | null) => string;
  readonly money: (minor: number | null) => string;
  readonly count: (pieces: number | null) => string;
  /** A share of 1 as percent: 0.05 is "5 %". */
  readonly share: (share: number | null) => string;
  /** An amount in a product's own unit; pieces carry no unit. */
  readonly amount: (amount: number | null, unit: ProductUnit) => string;
  readonly figure: (value: number | null, unit: FigureUnit) => string;
}

const made = new WeakMap<ProjectSettings, Formats>();

export function formatsFor(settings: ProjectSettings): Formats {
  const known = made.get(settings);
  if (known !== undefined) return known;
  const as =
    (unit: FigureUnit) =>
    (value: number | null): string =>
      figureText(value, unit, settings);
  const formats: Formats = {
    length: as('mm'),
    thickness: (mm) => figureText(mm, 'mm', { ...settings, inchStyle: 'decimal' }),
    run: as('m'),
    area: as('m2'),
    volume: as('L'),
    money: as('minor'),
    count: as('pcs'),
    share: (share) => (share === null ? UNKNOWN_TEXT : `${trimmedText(share * 100, 1)} %`),
    amount: (amount, unit) => figureText(amount, unit, settings),
    figure: (value, unit) => figureText(value, unit, settings),
  };
  made.set(settings, formats);
  return formats;
}
