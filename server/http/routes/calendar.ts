import { timingSafeEqual } from 'node:crypto';
import { z } from 'zod';
import { feedEvents, feedOffsets } from '../../calendar-search/feed-events.ts';
import { writeCalendarFile } from '../../exchange/calendar-file/write-calendar-file.ts';
import { exportFileName } from '../../exchange/export/export-file-name.ts';
import { calendarAnswerSchema } from '../calendar-schemas.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** How long a calendar program waits for a calendar that is being worked out, ms. */
const FEED_WAIT_MS = 20_000;
const ICALENDAR = 'text/calendar';

const noBody = z.preprocess((given) => given ?? {}, z.strictObject({}));

/** The coat calendar of a project, and the address at which calendar programs read it. */
export const calendarRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/calendar.ics',
    summary: 'The coat calendar for calendar programs, as a file or to subscribe to.',
    group: 'exchange',
    params: projectParams,
    query: z.strictObject({
      key: z
        .string()
        .max(100)
        .meta({ description: 'The key in the feedPath of the calendar; it stands for the passphrase.' }),
    }),
    answer: z.string(),
    answerType: ICALENDAR,
    refusals: ['not-allowed'],
    async handle({ params, query }, { calendars, plans }, response) {
      const projectId = Number(params.id);
      if (!sameText(query.key, calendars.feed(projectId).key))
        throw new HttpRefusal(
          'not-allowed',
          'The key in this address is not that of the calendar.',
          'Copy the address anew from the calendar of the project.',
          403,
        );
      await calendars.settled(projectId, FEED_WAIT_MS);
      const { plan, ...feed } = calendars.feed(projectId);
      const entry = plans.current(projectId);
      const { name, timeZone } = entry.project.settings;
      const text = writeCalendarFile({
        name: `${name}: coats`,
        timeZone,
        offsets: feedOffsets(feed.firstDate, timeZone),
        events: plan === null ? [] : feedEvents(entry, plan, feed),
      });
      const file = exportFileName(name, 'coats', 'ics');
      response.setHeader('Content-Disposition', `inline; filename*=UTF-8''${encodeURIComponent(file)}`);
      response.type(`${ICALENDAR}; charset=utf-8`).send(text);
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/calendar',
    summary: 'The coat calendar as last worked out; begins to work it out where it is not up to date.',
    group: 'plan',
    params: projectParams,
    answer: calendarAnswerSchema,
    handle: ({ params }, { calendars }) => calendars.state(Number(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/calendar/replan',
    summary: 'Plan the coat calendar anew from now.',
    group: 'plan',
    params: projectParams,
    body: noBody,
    status: 202,
    answer: calendarAnswerSchema,
    handle({ params }, { calendars }) {
      calendars.replan(Number(params.id));
      return calendars.state(Number(params.id));
    },
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/calendar/feed-key',
    summary: 'Give the calendar another address; the one before leads nowhere.',
    group: 'exchange',
    params: projectParams,
    body: noBody,
    answer: calendarAnswerSchema,
    handle({ params }, { calendars }) {
      calendars.newFeedKey(Number(params.id));
      return calendars.state(Number(params.id));
    },
  }),
];

function sameText(one: string, other: string): boolean {
  const [left, right] = [Buffer.from(one), Buffer.from(other)];
  return left.length === right.length && timingSafeEqual(left, right);
}
