import type { PartRow } from '../../../server/http/contract.ts';
import { edgesText } from '../../panels/figure-title.ts';

/** What a strip on a roll is for: "Shelf, front", or that it is a spare. */
export function stripName(
  parts: readonly PartRow[],
  strip: { readonly partId: string | null; readonly stripId: string | null },
): string {
  if (strip.partId === null) return 'spare';
  const name = parts.find(({ id }) => id === strip.partId)?.name ?? '';
  const part = name === '' ? 'part without a name' : name;
  return strip.stripId === null ? part : `${part}, ${edgesText(strip.stripId)}`;
}
