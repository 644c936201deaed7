import { TZDate } from '@date-fns/tz';
import ical, { ICalAlarmType, ICalEventStatus } from 'ical-generator';
import { timeZoneComponent, type ZoneOffset } from './time-zone-component.ts';

/** One visit to the shop as a calendar program is told of it. */
export interface FileEvent {
  /** Kept over re-plans: the same task is the same event. */
  readonly uid: string;
  readonly start: Date;
  readonly end: Date;
  readonly title: string;
  readonly description: string;
  /** Rises whenever the task is moved. */
  readonly sequence: number;
  /** When it was last moved. */
  readonly changedAt: Date;
  /** A reminder before the time for this coat runs out; null where it never does, or the task is done. */
  readonly alarm: { readonly at: Date; readonly text: string } | null;
}

/** How often calendar programs are asked to look again, seconds: every hour. Ours. */
const LOOK_AGAIN_S = 3600;

/**
 * A calendar as an iCalendar file (RFC 5545): events with local times and their time zone, which is described in the file
 * by `offsets`. Texts are escaped and lines folded by the library.
 */
export function writeCalendarFile({
  name,
  timeZone,
  offsets,
  events,
}: {
  readonly name: string;
  readonly timeZone: string;
  readonly offsets: readonly ZoneOffset[];
  readonly events: readonly FileEvent[];
}): string {
  const calendar = ical({
    name,
    prodId: '//plywright//coat calendar//EN',
    timezone: { name: timeZone, generator: () => timeZoneComponent(timeZone, offsets) },
    ttl: LOOK_AGAIN_S,
  });
  for (const { uid, start, end, title, description, sequence, changedAt, alarm } of events)
    calendar.createEvent({
      id: uid,
      start: inZone(start, timeZone),
      end: inZone(end, timeZone),
      timezone: timeZone,
      summary: oneLine(title),
      description: withoutControls(description),
      sequence,
      stamp: changedAt,
      lastModified: changedAt,
      status: ICalEventStatus.CONFIRMED,
      alarms:
        alarm === null
          ? []
          : [{ type: ICalAlarmType.display, trigger: alarm.at, description: oneLine(alarm.text) }],
    });
  return calendar.toString();
}

function inZone(moment: Date, timeZone: string): TZDate {
  return new TZDate(moment.getTime(), timeZone);
}

function oneLine(text: string): string {
  return withoutControls(text).replace(/\s+/g, ' ').trim();
}

/** RFC 5545 allows no control characters in a text but the tab; line ends are escaped by the library. */
function withoutControls(text: string): string {
  return text.replace(/\r\n?/g, '\n').replace(/[^\P{Cc}\n\t]/gu, '');
}
