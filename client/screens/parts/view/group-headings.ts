import type { ProjectState } from '../../../../server/http/contract.ts';
import type { PartBook } from '../part-book.ts';
import { headingLine, type PartSheetRow } from '../part-sheet-row.ts';
import type { LineGroup } from './arrange-lines.ts';
import type { GroupField } from './list-view.ts';

const LIST_OF_FIELD = { section: 'sections', materialId: 'materials' } as const;

/** Key of a group's heading; never that of a row. */
export function headingKey(groupBy: GroupField, value: string): string {
  return `${groupBy}:${value}`;
}

/** The groups one after the other, each under its heading; a closed group is its heading alone. */
export function groupedLines(
  groups: readonly LineGroup[],
  groupBy: GroupField,
  project: ProjectState,
  book: PartBook,
  before: ReadonlyMap<string, PartSheetRow>,
): PartSheetRow[] {
  const list = LIST_OF_FIELD[groupBy];
  const sums = new Map(project.plan.groups[list].map((group) => [group.id, group]));
  return groups.flatMap(({ value, name, size, lines, open }) => {
    const partly = lines.length < size;
    const heading = headingLine(
      headingKey(groupBy, value),
      {
        name: value === '' ? capital(name) : name,
        rows: partly ? `${lines.length} of ${size}` : String(size),
        open,
        at: `groups/${list}/${encodeURIComponent(value)}`,
        // The server's sums are of the whole group.
        sums: partly ? null : (sums.get(value) ?? null),
      },
      book,
    );
    const old = before.get(heading.key);
    const shown = old !== undefined && sameHeading(old, heading) ? old : heading;
    return open ? [shown, ...lines] : [shown];
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function sameHeading(a: PartSheetRow, b: PartSheetRow): boolean {
  const [one, other] = [a.heading, b.heading];
  return (
    a.book === b.book &&
    one?.name === other?.name &&
    one?.rows === other?.rows &&
    one?.open === other?.open &&
    one?.sums?.pieces === other?.sums?.pieces &&
    one?.sums?.bandedM === other?.sums?.bandedM &&
    one?.sums?.finishM2 === other?.sums?.finishM2
  );
}
