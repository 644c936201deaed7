/** Are two values made of plain objects, lists, texts, numbers, truth values and null equal throughout? */
export function sameValues(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one))
    return (
      Array.isArray(other) &&
      one.length === other.length &&
      one.every((item, index) => sameValues(item, other[index]))
    );
  const keys = Object.keys(one);
  return (
    !Array.isArray(other) &&
    keys.length === Object.keys(other).length &&
    keys.every(
      (key) =>
        Object.hasOwn(other, key) &&
        sameValues((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key]),
    )
  );
}
