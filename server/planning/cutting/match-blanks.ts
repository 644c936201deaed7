import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { ProjectInput, ProjectSettings } from '../project-input.ts';
import { type Blank, laidSize } from './blank.ts';
import { fitsOffer, usableSize } from './fit-problem.ts';
import { sizeText } from './size-text.ts';
import type { StockOffer } from './stock-offer.ts';

/**
 * Parts whose grain is to match as one piece each: end to end along the grain where some stock is long enough, else side by
 * side across it.
 *
 * `blanks`: of one material, each fitting an offer, mm. `input`: for the names of the matches, the kerf and the stages.
 * `offers`: stock to buy. Result: the blanks, those of a match joined to one with a kerf between neighbours, in the
 * order of the part list; and the problems of matches that no stock holds or that one piece alone is in, whose
 * parts stay single. Parts of a match do not turn, whatever their grain. Method: common practice, no source.
 * Example: two doors of 400 x 700 along the grain of a kerf of 3 come to one piece of 803 x 700.
 */
export function matchBlanks(
  blanks: readonly Blank[],
  { parts, settings }: ProjectInput,
  product: Product,
  offers: readonly StockOffer[],
): { blanks: Blank[]; problems: Problem[] } {
  const matchOf = new Map<string, string>();
  for (const { id, grainMatch } of parts) if (grainMatch !== '') matchOf.set(id, grainMatch.trim());
  const names = new Set(blanks.map(({ partId }) => matchOf.get(partId) ?? ''));
  names.delete('');
  if (names.size === 0) return { blanks: [...blanks], problems: [] };
  const joined = new Map<string, Blank>();
  const problems: Problem[] = [];
  for (const name of names) {
    const members = blanks.filter(({ partId }) => matchOf.get(partId) === name);
    const pieces = members.flatMap((blank) => Array<Blank>(blank.count).fill(laidSingly(blank)));
    const [first] = pieces;
    if (first === undefined) continue;
    if (pieces.length === 1) {
      problems.push(alone(name, first, product));
      continue;
    }
    const both = (['length', 'width'] as const).map((along) =>
      sideBySide(name, pieces, along, settings.kerfMm),
    );
    const fitting = both.find((blank) => offers.some((offer) => fitsOffer(blank, offer)));
    if (fitting === undefined) problems.push(tooLarge(name, both[0] as Blank, offers, product, settings));
    else joined.set(name, fitting);
  }
  const placed = new Set<string>();
  const result = blanks.flatMap((blank) => {
    const name = matchOf.get(blank.partId) ?? '';
    const match = joined.get(name);
    if (match === undefined) return [blank];
    if (placed.has(name)) return [];
    placed.add(name);
    return [match];
  });
  return { blanks: result, problems };
}

/** One of them, in the direction it is laid; free grain lies along. */
function laidSingly(blank: Blank): Blank {
  return { ...blank, count: 1, grain: blank.grain === 'across' ? 'across' : 'along' };
}

function sideBySide(name: string, parts: readonly Blank[], along: 'length' | 'width', kerfMm: number): Blank {
  const sizes = parts.map(laidSize);
  const lengths = sizes.map(({ lengthMm }) => lengthMm);
  const widths = sizes.map(({ widthMm }) => widthMm);
  const inLine = (sides: readonly number[]): number =>
    sides.reduce((sum, side) => sum + side, 0) + kerfMm * (sides.length - 1);
  return {
    partId: matchId(name),
    name: `match “${name}”`,
    lengthMm: along === 'length' ? inLine(lengths) : Math.max(...lengths),
    widthMm: along === 'width' ? inLine(widths) : Math.max(...widths),
    count: 1,
    grain: 'along',
    match: { name, along, parts },
  };
}

/** Stands for the parts of a match where one part is asked for; never a part's own id, which has no space. */
export function matchId(name: string): string {
  return `match ${name}`;
}

function alone(name: string, { partId, name: part }: Blank, product: Product): Problem {
  return {
    code: 'grain-match-alone',
    severity: 'warning',
    at: { table: 'parts', id: partId, field: 'grainMatch' },
    message: `${part} is the only piece of ${product.name} in the grain match “${name}”, so there is nothing to match.`,
    wayOut: 'Give the parts that belong together the same name and material, or clear the cell.',
  };
}

function tooLarge(
  name: string,
  whole: Blank,
  offers: readonly StockOffer[],
  product: Product,
  settings: ProjectSettings,
): Problem {
  const [first] = whole.match?.parts ?? [];
  const largest = offers
    .map(usableSize)
    .reduce((best, size) => (size.lengthMm * size.widthMm > best.lengthMm * best.widthMm ? size : best));
  return {
    code: 'grain-match-too-large',
    severity: 'warning',
    at: { table: 'parts', id: first?.partId ?? null, field: 'grainMatch' },
    message:
      `The parts of the grain match “${name}” take ${sizeText([whole.lengthMm, whole.widthMm], settings)} of ${product.name} ` +
      `end to end, and no sheet holds them that way or side by side: the largest usable size is ` +
      `${sizeText([largest.lengthMm, largest.widthMm], settings)}. They are cut singly, without a match.`,
    wayOut: 'Split them into two matches under different names, or add a larger size.',
  };
}
