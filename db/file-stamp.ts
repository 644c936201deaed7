/** A moment as part of a file name, in UTC: 2026-03-07T09:05:01.250Z becomes "20260307T090501250Z". */
export function fileStamp(now: Date): string {
  return now.toISOString().replaceAll(/[-:.]/g, '');
}
