import type { SawCut } from '../../../server/http/contract.ts';
import type { Formats } from '../../format/formats.ts';

/** One line of the list of cuts: a cut, or equal cuts in a row. */
export interface CutLine {
  /** "3" or "3–6". */
  readonly numbers: string;
  /** "Crosscut strip A at 24 in, 4 times" */
  readonly words: string;
  /** "4 × Shelf; leaves 12 × 48 in"; empty for trim. */
  readonly frees: string;
}

/** Two settings are one within this, mm: no fence is finer. Ours. */
const SAME_MM = 0.01;
/** An offcut with a side shorter than this is named waste, mm. Ours, no source. */
const LEAST_OFFCUT_MM = 20;
const LETTERS = 26;

/** The cuts of a layout as they are read out at the saw; equal ones in a row are one line. */
export function cutLines(
  cuts: readonly SawCut[],
  formats: Pick<Formats, 'length'>,
  nameOf: (partId: string) => string,
): readonly CutLine[] {
  const runs: SawCut[][] = [];
  for (const cut of cuts) {
    const run = runs.at(-1);
    if (run?.[0] !== undefined && goesOn(run[0], cut)) run.push(cut);
    else runs.push([cut]);
  }
  return runs.map((run) => lineOf(run, formats, nameOf));
}

/** A strip's letter: A to Z, then AA. */
export function stripLetter(strip: number): string {
  const letter = String.fromCharCode(65 + ((strip - 1) % LETTERS));
  return strip > LETTERS ? stripLetter(Math.floor((strip - 1) / LETTERS)) + letter : letter;
}

function goesOn(first: SawCut, cut: SawCut): boolean {
  if (first.kind === 'trim' || cut.kind === 'trim')
    return first.kind === cut.kind && Math.abs(first.settingMm - cut.settingMm) < SAME_MM;
  return (
    first.kind === cut.kind &&
    first.strip === cut.strip &&
    Math.abs(first.settingMm - cut.settingMm) < SAME_MM &&
    Math.abs(first.fromMm - cut.fromMm) < SAME_MM
  );
}

function lineOf(
  run: readonly SawCut[],
  formats: Pick<Formats, 'length'>,
  nameOf: (id: string) => string,
): CutLine {
  const [first] = run;
  const last = run.at(-1);
  if (first === undefined || last === undefined) return { numbers: '', words: '', frees: '' };
  const numbers = run.length === 1 ? String(first.number) : `${first.number}–${last.number}`;
  const at = formats.length(first.settingMm);
  if (first.kind === 'trim') {
    const edges =
      run.length === 4 ? 'all four edges' : first.runs === 'length' ? 'the long edges' : 'the ends';
    return { numbers, words: `Trim ${at} off ${edges}`, frees: '' };
  }
  const verb = first.kind === 'rip' ? 'Rip' : 'Crosscut';
  const what = first.strip === null ? '' : ` strip ${stripLetter(first.strip)}`;
  const run0 = first.toMm - first.fromMm;
  const far = first.full
    ? first.runs === 'length'
      ? ', full length'
      : ', full width'
    : first.kind === 'rip'
      ? `, over ${formats.length(run0)}`
      : '';
  const times = run.length > 1 ? `, ${run.length} times` : '';
  return { numbers, words: `${verb}${what} at ${at}${far}${times}`, frees: freed(run, formats, nameOf) };
}

function freed(
  run: readonly SawCut[],
  formats: Pick<Formats, 'length'>,
  nameOf: (id: string) => string,
): string {
  const off = run.flatMap(({ frees }) => frees.slice(0, 1));
  const left = run.flatMap(({ frees }) => frees.slice(1));
  const words = (pieces: SawCut['frees']): string => {
    const parts = new Map<string, number>();
    const strips: string[] = [];
    const offcuts: string[] = [];
    let waste = false;
    for (const piece of pieces) {
      if (piece.type === 'part') parts.set(piece.partId, (parts.get(piece.partId) ?? 0) + 1);
      else if (piece.type === 'strip') strips.push(stripLetter(piece.strip));
      else if (Math.min(piece.lengthMm, piece.widthMm) < LEAST_OFFCUT_MM) waste = true;
      else offcuts.push(`offcut ${formats.length(piece.lengthMm)} × ${formats.length(piece.widthMm)}`);
    }
    return [
      ...[...parts].map(([id, count]) => (count === 1 ? nameOf(id) : `${count} × ${nameOf(id)}`)),
      ...(strips.length === 0 ? [] : [`${strips.length === 1 ? 'strip' : 'strips'} ${strips.join(', ')}`]),
      ...offcuts,
      ...(waste ? ['waste'] : []),
    ].join(', ');
  };
  return left.length === 0 ? words(off) : `${words(off)}; leaves ${words(left)}`;
}
