const MS_PER_DAY = 86_400_000;
/** More days off than this at once are a slip of the keyboard. */
const MOST_DAYS = 366;

/** All dates from the first to the last, both included; null when they are the wrong way round, or more than a year. */
export function datesBetween(from: string, to: string): readonly string[] | null {
  const [first, last] = [from, to].map((date) => Date.parse(`${date}T00:00:00Z`)) as [number, number];
  const count = (last - first) / MS_PER_DAY + 1;
  if (!(count >= 1 && count <= MOST_DAYS)) return null;
  return Array.from({ length: count }, (_, index) =>
    new Date(first + index * MS_PER_DAY).toISOString().slice(0, 10),
  );
}
