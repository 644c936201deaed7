import './timeline.css';
import { html, nothing, svg, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { repeat } from 'lit-html/directives/repeat.js';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { airLimits } from './air-limits.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { calendarView, setCalendarView } from './calendar-view.ts';
import { dragTask } from './drag-task.ts';
import { type BarKey, nextBar } from './next-bar.ts';
import { nowMinute } from './now-minute.ts';
import { renderFacts } from './render-facts.ts';
import { renderTimelineHead } from './render-timeline-head.ts';
import { scrollToMinute, watchWidth } from './scroll-timeline.ts';
import { hideTaskCard, leaveTaskCard, showTaskCard } from './task-card.ts';
import { openTask } from './task-dialog.ts';
import { isOpen } from './task-words.ts';
import { timeScale } from './time-scale.ts';
import { AIR_PANEL, drawAir } from './timeline-air.ts';
import { drawGhost, drawTask, LANE } from './timeline-bars.ts';
import { AXIS, drawGround, round } from './timeline-ground.ts';

const GAP = 10;

/** One lane per batch with its work, drying and windows, over the shop's hours and its air. */
export function renderTimeline(book: ScreenBook, calendar: CalendarBook): TemplateResult {
  const { answer, plan, clock, entries } = calendar;
  const view = calendarView();
  const { days, climate } = answer;
  const scale = timeScale(days, view);
  const now = nowMinute(answer);
  const width = Math.ceil(scale(days.at(-1)?.toMinute ?? 0));
  const lanes = plan.batches;
  const lanesEnd = AXIS + lanes.length * LANE;
  const [temperatureTop, humidityTop] = [lanesEnd + GAP, lanesEnd + GAP + AIR_PANEL + GAP];
  const height = humidityTop + AIR_PANEL;
  const limits = airLimits(book, entries);
  const shown = entries.find(({ task }) => task.id === view.currentId) ?? firstOpen(entries);
  const tasks = entries.map(({ task }) => task);
  const ways = (entry: TaskEntry) => ({
    scale,
    handlers: handlersOf(
      book,
      calendar,
      entry,
      (event) => {
        const next = nextBar(
          tasks,
          lanes.map(({ id }) => id),
          entry.task.id,
          event,
        );
        if (next !== null) focusBar(next);
      },
      scale,
    ),
  });
  return html`<section class="panel timeline" aria-labelledby="timeline-title">
    ${renderTimelineHead(calendar, () => scrollToMinute(scale(now)))}
    <div class="timeline-body">
      <div class="timeline-names" style="padding-top: ${AXIS}px" aria-hidden="true">
        ${lanes.map(({ id }) => {
          const names = calendar.batches.get(id);
          return html`<p style="height: ${LANE}px" title=${names?.parts ?? ''}><b>${names?.title}</b><small>${names?.parts}</small></p>`;
        })}
        <p class="air-name" style="height: ${GAP + AIR_PANEL}px"><b>Temperature</b>${limitWords(book, limits, ['least-temperature', 'most-temperature'])}</p>
        <p class="air-name" style="height: ${GAP + AIR_PANEL}px"><b>Humidity</b>${limitWords(book, limits, ['most-humidity'])}</p>
      </div>
      <div class="timeline-scroll" ${ref(watchWidth)}>
        <svg
          class="timeline-drawing"
          width=${width}
          height=${height}
          viewBox="0 0 ${width} ${height}"
          role="group"
          aria-label="Timeline. Arrow keys go from task to task, Enter opens one."
        >
          <defs>
            <pattern id="day-off-lines" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0 0v7" /></pattern>
            <pattern id="assumed-lines" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0 0v5" /></pattern>
            <pattern id="dew-lines" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="dew-line" d="M0 0v6" /></pattern>
            <pattern id="wet-lines" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="wet" d="M0 0v5" /></pattern>
          </defs>
          ${drawGround({ days, scale, clock, height })}
          ${repeat(
            lanes,
            ({ id }) => id,
            ({ id }, index) => {
              const own = entries.filter(({ task }) => task.batchId === id);
              const moved = own.find(({ task }) => task.id === view.moving?.taskId);
              return svg`<g class="lane" transform="translate(0 ${AXIS + index * LANE})">
                <line class="lane-line" x1="0" x2=${width} y1="0" y2="0" />
                ${repeat(
                  own,
                  ({ task }) => task.id,
                  (entry) => drawTask(book, calendar, entry, ways(entry), shown?.task.id ?? ''),
                )}
                ${moved === undefined || view.moving === null ? nothing : drawGhost(moved, view.moving.minute, scale, clock.moment(view.moving.minute))}
              </g>`;
            },
          )}
          <line class="lane-line" x1="0" x2=${width} y1=${lanesEnd} y2=${lanesEnd} />
          ${drawAir(climate, { name: 'temperature', value: ({ temperatureC }) => temperatureC, limits: limits.filter(({ what }) => what !== 'most-humidity') }, scale, temperatureTop)}
          ${drawAir(climate, { name: 'humidity', value: ({ humidityPercent }) => humidityPercent, limits: limits.filter(({ what }) => what === 'most-humidity') }, scale, humidityTop)}
          <g class="now" transform="translate(${round(scale(now))} 0)" aria-hidden="true"><path d="M0 ${AXIS - 18}V${height}" /><text x="4" y=${AXIS - 8}>now</text></g>
        </svg>
      </div>
    </div>
  </section>`;
}

function limitWords(
  { formats }: ScreenBook,
  limits: ReturnType<typeof airLimits>,
  kinds: readonly (typeof limits)[number]['what'][],
): TemplateResult[] {
  return limits
    .filter(({ what }) => kinds.includes(what))
    .map(({ what, value, products }) => {
      const figure = what === 'most-humidity' ? `${value} %` : formats.figure(value, 'C');
      return html`<small title=${products.join(', ')}>${what === 'least-temperature' ? 'from' : 'up to'} ${figure}: ${products.join(', ')}</small>`;
    });
}

function firstOpen(entries: readonly TaskEntry[]): TaskEntry | undefined {
  return entries.find(({ task }) => isOpen(task)) ?? entries[0];
}

function handlersOf(
  book: ScreenBook,
  calendar: CalendarBook,
  entry: TaskEntry,
  go: (key: BarKey) => void,
  scale: ReturnType<typeof timeScale>,
) {
  const open = (): void => openTask(book, calendar, entry);
  const show = (event: Event): void => {
    if (calendarView().moving?.held !== true)
      showTaskCard(event.currentTarget as Element, entry.title, card(book, calendar, entry));
  };
  return {
    focus: (event: Event): void => {
      const { id } = entry.task;
      if (calendarView().currentId !== id) setCalendarView({ currentId: id });
      const bar = event.currentTarget as Element;
      if (!bar.matches(':focus-visible')) return;
      bar.querySelector('.bar')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      requestAnimationFrame(() => showTaskCard(bar, entry.title, card(book, calendar, entry)));
    },
    blur: hideTaskCard,
    enter: show,
    leave: leaveTaskCard,
    key: (event: KeyboardEvent): void => {
      if (event.key === 'Enter' || event.key === ' ') {
        event.preventDefault();
        open();
      } else if (BAR_KEYS.has(event.key) && !event.altKey && !event.ctrlKey && !event.metaKey) {
        event.preventDefault();
        go(event.key as BarKey);
      }
    },
    down: (event: PointerEvent): void => dragTask(event, entry, scale, calendar.clock, open),
  };
}

const BAR_KEYS: ReadonlySet<string> = new Set<BarKey>([
  'ArrowLeft',
  'ArrowRight',
  'ArrowUp',
  'ArrowDown',
  'Home',
  'End',
]);

function card(book: ScreenBook, calendar: CalendarBook, entry: TaskEntry): TemplateResult {
  return html`<h3>${entry.title}</h3>${renderFacts(book, calendar, entry)}`;
}

/** The keyboard goes to a bar of the timeline. */
export function focusBar(taskId: string): void {
  document.querySelector<SVGElement>(`.timeline [data-task="${CSS.escape(taskId)}"]`)?.focus();
}
