import type { Blank } from './blank.ts';
import { BOARD_WIDTH_TOLERANCE_MM } from './constants.ts';

/**
 * Board parts that are as wide as the board within the tolerance take the board's own width, so that they are only
 * cut to length; narrower ones stay as they are and are ripped.
 *
 * `blanks`, `boardWidthMm`: mm. A blank whose grain is free lies along the board when it fits that way.
 * Result: the blanks with the width they are cut at. Rule of ours: nobody rips half a millimetre off a board.
 */
export function fullWidthBlanks(blanks: readonly Blank[], boardWidthMm: number): Blank[] {
  const near = (mm: number): boolean => Math.abs(mm - boardWidthMm) <= BOARD_WIDTH_TOLERANCE_MM;
  return blanks.map((blank) => {
    if (blank.grain !== 'across' && near(blank.widthMm))
      return { ...blank, grain: 'along', widthMm: boardWidthMm };
    if (blank.grain !== 'along' && near(blank.lengthMm))
      return { ...blank, grain: 'across', lengthMm: boardWidthMm };
    return blank;
  });
}
