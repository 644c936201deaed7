/** Longest id made from a name, characters. */
const LONGEST_SLUG = 80;

/**
 * An id made from a name: lower-case words and digits joined by hyphens, with a number after it when it is taken.
 * "Birch ply, 18 mm" becomes "birch-ply-18-mm"; a name without such letters becomes "own".
 */
export function slugOf(name: string, taken: ReadonlySet<string>): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .match(/[a-z0-9]+/g);
  const slug = (words ?? ['own']).join('-').slice(0, LONGEST_SLUG).replace(/-$/, '');
  if (!taken.has(slug)) return slug;
  let number = 2;
  while (taken.has(`${slug}-${number}`)) number++;
  return `${slug}-${number}`;
}
