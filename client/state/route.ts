/** The address of a screen: `#/p/<projectId>/<screen>`. */

export type ScreenName =
  | 'parts'
  | 'cutting'
  | 'banding'
  | 'finish'
  | 'calendar'
  | 'air'
  | 'buy'
  | 'ledger'
  | 'quotes'
  | 'catalogue'
  | 'settings';
export const SCREEN_NAMES = [
  'parts',
  'cutting',
  'banding',
  'finish',
  'calendar',
  'air',
  'buy',
  'ledger',
  'quotes',
  'catalogue',
  'settings',
] as const satisfies readonly ScreenName[];

export interface Route {
  readonly projectId: string | null;
  readonly screen: ScreenName;
}

export function readRoute(hash: string): Route {
  const [, marker, projectId, screen] = hash.split('/');
  if (marker !== 'p' || projectId === undefined || projectId === '')
    return { projectId: null, screen: 'parts' };
  const known = SCREEN_NAMES.find((name) => name === screen);
  return { projectId: decodeURIComponent(projectId), screen: known ?? 'parts' };
}

export function writeRoute(route: { readonly projectId: string; readonly screen: ScreenName }): string {
  return `#/p/${encodeURIComponent(route.projectId)}/${route.screen}`;
}
