import type { CutNode } from '../plan-output.ts';
import { type Blank, type GrainMatch, laidSize } from './blank.ts';
import { LEAST_OFFCUT_MM } from './constants.ts';

/**
 * The cuts that make the parts of a grain match out of their piece.
 *
 * `blank`: with its match, mm. `kerfMm`: lost between neighbours. Result: one split in the order of the match; a part that is
 * narrower than the piece is trimmed. Named, so that the drawing can say so. No source: the match itself.
 */
export function matchNode(blank: Blank, kerfMm: number): CutNode {
  const { name, along, parts } = blank.match as GrainMatch;
  const { lengthMm, widthMm } = blank;
  const inLength = along === 'length';
  const children = parts.map((part): CutNode => {
    const laid = laidSize(part);
    const cut: CutNode = { type: 'part', partId: part.partId, turned: part.grain === 'across', ...laid };
    const whole = inLength ? { ...laid, widthMm } : { ...laid, lengthMm };
    const left = inLength ? widthMm - laid.widthMm : lengthMm - laid.lengthMm;
    if (left <= LEAST_OFFCUT_MM) return { ...cut, ...whole };
    const rest = left - kerfMm;
    const trimmed: CutNode[] = [cut];
    if (rest > LEAST_OFFCUT_MM)
      trimmed.push({
        type: 'offcut',
        ...(inLength ? { ...laid, widthMm: rest } : { ...laid, lengthMm: rest }),
      });
    return { type: 'split', along: inLength ? 'width' : 'length', ...whole, children: trimmed };
  });
  return { type: 'split', along, lengthMm, widthMm, children, match: name };
}
