/** From a moment on, the clock of a zone is so many minutes ahead of UTC. */
export interface ZoneOffset {
  readonly from: Date;
  readonly offsetMin: number;
}

const MS_PER_MIN = 60_000;
const MIN_PER_HOUR = 60;

/**
 * The VTIMEZONE of a zone over the days a calendar covers, as RFC 5545 section 3.6.5 wants it: one observance from the
 * first day on, and one from each change of clocks.
 *
 * `offsets`: in order of time, at least one. A change forward is called DAYLIGHT and one back STANDARD; what was there
 * before the first change is its opposite.
 */
export function timeZoneComponent(timeZone: string, offsets: readonly ZoneOffset[]): string {
  const observances = offsets.map(({ from, offsetMin }, index) => {
    const before = offsets[index - 1]?.offsetMin ?? offsetMin;
    const after = offsets[index + 1]?.offsetMin ?? offsetMin;
    const daylight = index === 0 ? after < offsetMin : offsetMin > before;
    const kind = daylight ? 'DAYLIGHT' : 'STANDARD';
    return [
      `BEGIN:${kind}`,
      `DTSTART:${wall(from, before)}`,
      `TZOFFSETFROM:${offsetText(before)}`,
      `TZOFFSETTO:${offsetText(offsetMin)}`,
      `END:${kind}`,
    ].join('\r\n');
  });
  return ['BEGIN:VTIMEZONE', `TZID:${timeZone}`, ...observances, 'END:VTIMEZONE'].join('\r\n');
}

/** The clock on the wall, as 20270314T020000. */
function wall(moment: Date, offsetMin: number): string {
  const local = new Date(moment.getTime() + offsetMin * MS_PER_MIN).toISOString();
  return local.slice(0, 'YYYY-MM-DDTHH:MM:SS'.length).replace(/[-:]/g, '');
}

function offsetText(offsetMin: number): string {
  const minutes = Math.abs(offsetMin);
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${offsetMin < 0 ? '-' : '+'}${two(minutes / MIN_PER_HOUR)}${two(minutes % MIN_PER_HOUR)}`;
}
