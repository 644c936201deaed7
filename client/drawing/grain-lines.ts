/** One broken line of the grain, in drawing units. */
export interface GrainLine {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  /** Long and short dashes, of varied length so that the face reads as wood and not as hatching. */
  readonly dashes: string;
  readonly start: number;
}

const SPACING = 9;
const FEWEST = 2;

/** Grain over a face: along the length (left to right), across it, or none for a part that may be turned. */
export function grainLines(
  grain: 'along' | 'across' | 'free',
  width: number,
  height: number,
): readonly GrainLine[] {
  if (grain === 'free') return [];
  const [run, spread] = grain === 'along' ? [width, height] : [height, width];
  const count = Math.max(FEWEST, Math.floor(spread / SPACING));
  return Array.from({ length: count }, (_, index) => {
    const at = ((index + 0.5) * spread) / count;
    const [from, to]: [GrainLine['from'], GrainLine['to']] =
      grain === 'along'
        ? [
            [0, at],
            [run, at],
          ]
        : [
            [at, 0],
            [at, run],
          ];
    const long = 18 + ((index * 23) % 29);
    const gap = 7 + ((index * 11) % 9);
    return {
      from,
      to,
      dashes: `${long} ${gap} ${5 + ((index * 7) % 11)} ${gap + 6}`,
      start: (index * 31) % 53,
    };
  });
}
