import type { CalendarPlan, Change, ProjectState } from '../../../server/http/contract.ts';

type WayOut = CalendarPlan['blocks'][number]['waysOut'][number];

/** The changes to the project that make a way out real; empty where it is no setting of the project. */
export function wayOutChanges(
  { change }: WayOut,
  { rows, settings }: Pick<ProjectState, 'rows' | 'settings'>,
): readonly Change[] {
  switch (change) {
    case 'more-hands':
      return [{ op: 'settings', values: { hands: settings.hands + 1 } }];
    case 'sand-apart':
      return [{ op: 'settings', values: { sandsApart: true } }];
    case 'open-days-off':
      return rows.daysOff.map(({ id }) => ({ op: 'delete', table: 'daysOff', id }));
    case 'forget-done':
      return rows.doneTasks.map(({ id }) => ({ op: 'delete', table: 'doneTasks', id }));
    case 'warmer-wood':
      return [{ op: 'settings', values: { woodWarmerC: 0 } }];
    default:
      return [];
  }
}
