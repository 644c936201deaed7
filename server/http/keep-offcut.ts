import { type AppliedChange, applyChanges } from '../../db/apply-changes.ts';
import { keptFrom } from '../planning/cutting/begun/kept-from.ts';
import type { AppContext } from './app-context.ts';
import { cuttingList } from './cutting-list.ts';
import { HttpRefusal } from './http-refusal.ts';

const MM_PER_M = 1000;

export interface OffcutToKeep {
  readonly revision: number;
  readonly layout: string;
  readonly sheet: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/**
 * Puts the offcuts of one size from one sheet among what is on hand, as an edit that can be undone. Only what has been
 * cut is there: every part of the sheet must be ticked. Once only: the row names its sheet.
 */
export function keepOffcut(context: AppContext, projectId: number, wanted: OffcutToKeep): AppliedChange {
  const { db, plans, readLengthCell, sizeNames, now } = context;
  const { revision, layout: key, sheet, lengthMm, widthMm } = wanted;
  const layout = cuttingList(context, projectId).layouts.find((one) => one.key === key);
  const offcut = layout?.offcuts.find((one) => one.lengthMm === lengthMm && one.widthMm === widthMm);
  if (layout === undefined || offcut === undefined || sheet >= layout.sheets)
    throw new HttpRefusal(
      'not-found',
      'The plan no longer has this offcut: it was changed after the layout was shown.',
      'Look at the cutting plan as it is now, and keep the offcut there.',
    );
  if (layout.done.filter((place) => place.sheet === sheet).length < layout.parts.length)
    throw new HttpRefusal(
      'not-allowed',
      'This offcut is not there yet: its sheet has not been cut to the end.',
      'Tick all parts of the sheet as cut, then keep the offcut.',
      409,
    );
  if (offcut.kept.includes(sheet))
    throw new HttpRefusal(
      'not-allowed',
      'This offcut is among what is on hand already.',
      'The list of what is on hand is under Buy; change its number there.',
      409,
    );
  const { plan } = plans.current(projectId);
  const material = plan.materials.find(({ id }) => id === layout.materialId);
  const values = {
    productId: layout.materialId,
    count: offcut.count,
    keptFrom: keptFrom(key, sheet, lengthMm, widthMm),
    ...(material?.kind === 'board'
      ? { amount: lengthMm / MM_PER_M, lengthMm: null, widthMm: null }
      : { amount: 1, lengthMm, widthMm }),
  };
  const label = `keep offcut of ${material?.name ?? layout.materialId}`;
  return applyChanges(
    db,
    projectId,
    { revision, label, changes: [{ op: 'insert', table: 'onHand', values }] },
    { readLengthCell, sizeNames, now: now() },
  );
}
