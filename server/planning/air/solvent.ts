import type { Evidence } from '../product.ts';

/** One figure of a solvent; a null value with a source means that the source itself says "unknown". */
export interface SolventFigure extends Evidence {
  readonly value: number | null;
}

/** An exposure limit, as its body prints it: in ppm, in mg/m3, or in both. */
export interface ExposureLimit extends Evidence {
  /** "NIOSH REL", "OSHA PEL", "ACGIH TLV". */
  readonly body: string;
  readonly kind: 'time-weighted' | 'short-term' | 'ceiling';
  /** Averaging time, minutes: 480 or 600 for a shift, 15 for short term; null for a ceiling never to be exceeded. */
  readonly averagedOverMin: number | null;
  readonly ppm: number | null;
  readonly mgPerM3: number | null;
}

/** One solvent of the catalogue. A figure that is null was not found in any source. */
export interface Solvent {
  /** Lower-case words joined by hyphens: "mineral-spirits". */
  readonly id: string;
  readonly name: string;
  /** Other names on safety data sheets. */
  readonly alsoCalled: readonly string[];
  /** Registry number printed on safety data sheets; null for a family without one. */
  readonly casNumber: string | null;
  readonly molarMassGPerMol: SolventFigure | null;
  readonly densityGPerL: SolventFigure | null;
  /** Percent by volume. */
  readonly lelPercent: SolventFigure | null;
  readonly uelPercent: SolventFigure | null;
  /** Other published or remembered LEL values, which disagree. */
  readonly lelElsewhere: readonly SolventFigure[];
  readonly flashPointC: SolventFigure | null;
  readonly limits: readonly ExposureLimit[];
  readonly idlhPpm: SolventFigure | null;
  readonly idlhMgPerM3: SolventFigure | null;
  readonly note: string | null;
}
