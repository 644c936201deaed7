import { textWidth } from './text-width.ts';

export interface LabelWords {
  /** The part's number in the legend; empty for an offcut. */
  readonly number: string;
  readonly name: string;
  readonly size: string;
}

export interface LabelLine {
  readonly text: string;
  readonly size: number;
  readonly kind: 'name' | 'size';
}

export interface FittedLabel {
  readonly lines: readonly LabelLine[];
  /** Written upwards, for pieces that are higher than wide. */
  readonly turned: boolean;
  /** Room the text takes, as drawn. */
  readonly width: number;
  readonly height: number;
}

const LINE = 1.25;
const PAD = 3;
const TEXT_SIZES = [12, 10.5] as const;
/** A number standing alone may be smaller. */
const NUMBER_SIZES = [12, 10, 8, 6.5] as const;

/**
 * What can be written on a piece without leaving it: name and size, else number and size, else the number; null when
 * not even that fits. Nothing is cut short: what is not written stands in the legend.
 */
export function fitLabel(
  { number, name, size }: LabelWords,
  width: number,
  height: number,
): FittedLabel | null {
  const full = number === '' ? name : `${number} · ${name}`;
  const wrapped = wrap(full);
  const forms: string[][] = [
    [full],
    ...(wrapped === null ? [] : [wrapped]),
    ...(number === '' ? [] : [[number]]),
  ].map((lines) => lines.filter((line) => line !== ''));
  const ways = height > width ? [true, false] : [false, true];
  for (const lines of forms)
    for (const text of TEXT_SIZES)
      for (const turned of ways) {
        const fitted = written(
          [...named(lines, text), { text: size, size: text - 1, kind: 'size' }],
          turned,
          width,
          height,
        );
        if (fitted !== null) return fitted;
      }
  const alone = number === '' ? size : number;
  for (const text of NUMBER_SIZES)
    for (const turned of number === '' ? ways : [false]) {
      if (number === '' && text < TEXT_SIZES[1]) continue;
      const fitted = written(
        [{ text: alone, size: text, kind: number === '' ? 'size' : 'name' }],
        turned,
        width,
        height,
      );
      if (fitted !== null) return fitted;
    }
  return null;
}

function named(lines: readonly string[], size: number): LabelLine[] {
  return lines.map((text) => ({ text, size, kind: 'name' }));
}

function written(
  lines: readonly LabelLine[],
  turned: boolean,
  width: number,
  height: number,
): FittedLabel | null {
  const long = Math.max(...lines.map((line) => textWidth(line.text, line.size)));
  const high = lines.reduce((sum, line) => sum + line.size * LINE, 0);
  const [takenWidth, takenHeight] = turned ? [high, long] : [long, high];
  const pad = Math.min(PAD, Math.min(width, height) / 6);
  if (takenWidth > width - 2 * pad || takenHeight > height - (high < 16 ? 0 : 2 * pad)) return null;
  return { lines, turned, width: takenWidth, height: takenHeight };
}

/** The text on two lines of about equal length; null for a single word. */
function wrap(text: string): string[] | null {
  const words = text.split(' ');
  let best: string[] | null = null;
  for (let at = 1; at < words.length; at++) {
    const lines = [words.slice(0, at).join(' '), words.slice(at).join(' ')];
    const longest = (those: readonly string[]): number => Math.max(...those.map(({ length }) => length));
    if (best === null || longest(lines) < longest(best)) best = lines;
  }
  return best;
}
