/**
 * Under which key is a named size kept? Names that differ in capitals only are one name. No units. A rule of ours.
 *
 * Example: "Seat_Depth" and "seat_depth" share a key.
 */
export function nameKey(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
