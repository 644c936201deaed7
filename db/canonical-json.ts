/**
 * JSON in which two values that mean the same are the same text: keys of objects in order, and what is null left out, as
 * "not known" and "not said" are one thing in a catalogue.
 */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(
          Object.entries(inner)
            .filter(([, held]) => held !== null)
            .toSorted(([left], [right]) => (left < right ? -1 : 1)),
        )
      : inner,
  );
}
