import { nothing, type SVGTemplateResult, svg } from 'lit-html';
import { textWidth } from '../../drawing/text-width.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import type { CalendarBook, TaskEntry } from './calendar-book.ts';
import { calendarView } from './calendar-view.ts';
import { taskShapes } from './lane-shapes.ts';
import { FACE_WORDS, isOpen, STATE_WORDS } from './task-words.ts';
import { round } from './timeline-ground.ts';

/** The marks of one task on its lane: window, bar, drying. */

export const LANE = 62;
const BAR = { y: 12, height: 26 };
const TAIL = { touch: 16, handle: 8 };
const RAIL_Y = 48;
const LABEL_SIZE = 12;
/** A place to hit, however thin the bar is. */
const HIT = 14;
const MARK = 5;

export interface LaneWays {
  readonly scale: (minute: number) => number;
  readonly handlers: {
    readonly focus: (event: Event) => void;
    readonly blur: () => void;
    readonly enter: (event: Event) => void;
    readonly leave: () => void;
    readonly key: (event: KeyboardEvent) => void;
    readonly down: (event: PointerEvent) => void;
  };
}

export function drawTask(
  book: ScreenBook,
  calendar: CalendarBook,
  entry: TaskEntry,
  { scale, handlers }: LaneWays,
  currentId: string,
): SVGTemplateResult {
  const { task } = entry;
  const { bar, touchTail, handleTail, window } = taskShapes(task, scale);
  const middle = BAR.y + BAR.height / 2;
  const hitWidth = Math.max(bar.width, HIT);
  const coat = task.layFromMinute !== null;
  const moving = calendarView().moving;
  return svg`<g
    class="task ${task.state} ${coat ? 'coat' : 'dry'} ${moving?.taskId === task.id ? 'moved' : ''}"
    role="button"
    aria-haspopup="dialog"
    tabindex=${task.id === currentId ? 0 : -1}
    data-task=${task.id}
    aria-label=${barWords(book, calendar, entry)}
    @focus=${handlers.focus}
    @blur=${handlers.blur}
    @pointerenter=${handlers.enter}
    @pointerleave=${handlers.leave}
    @keydown=${handlers.key}
    @pointerdown=${handlers.down}
  >
    <path class="window ${window.open ? 'endless' : ''}" d=${windowPath(window)} />
    ${touchTail === null ? nothing : svg`<rect class="touch-tail" x=${round(touchTail.x)} y=${middle - TAIL.touch / 2} width=${round(touchTail.width)} height=${TAIL.touch} />`}
    ${handleTail === null ? nothing : svg`<rect class="handle-tail" x=${round(handleTail.x)} y=${middle - TAIL.handle / 2} width=${round(handleTail.width)} height=${TAIL.handle} />`}
    <rect class="hit" x=${round(bar.x + bar.width / 2 - hitWidth / 2)} y=${BAR.y - 6} width=${round(hitWidth)} height=${BAR.height + 12} />
    <rect class="bar" x=${round(bar.x)} y=${BAR.y} width=${round(bar.width)} height=${BAR.height} rx="3" />
    ${label(entry.title, bar.x, bar.width, middle)} ${stateMark(task.state, bar.x + bar.width / 2)}
  </g>`;
}

/** Where a bar being dragged would start. */
export function drawGhost(
  { task }: TaskEntry,
  minute: number,
  scale: (minute: number) => number,
  words: string,
): SVGTemplateResult {
  const x = scale(minute);
  const width = Math.max(6, scale(minute + task.handsOnMin) - x);
  return svg`<g class="ghost" aria-hidden="true">
    <rect x=${round(x)} y=${BAR.y} width=${round(width)} height=${BAR.height} rx="3" />
    <text x=${round(x)} y=${BAR.y - 2}>${words}</text>
  </g>`;
}

function label(words: string, x: number, width: number, middle: number): SVGTemplateResult | typeof nothing {
  if (textWidth(words, LABEL_SIZE) + 8 > width) return nothing;
  return svg`<text class="bar-label" x=${round(x + 5)} y=${middle}>${words}</text>`;
}

/** Above the bar: a pin's head, a tick, or a question mark, so that states differ by shape as well. */
function stateMark(state: TaskEntry['task']['state'], x: number): SVGTemplateResult | typeof nothing {
  const at = `translate(${round(x)} ${BAR.y - MARK - 1})`;
  switch (state) {
    case 'planned':
      return nothing;
    case 'pinned':
      return svg`<path class="state-mark" transform=${at} d="M0 5V0M-3.5-5h7l-1.5 2.5V0h-4v-2.5z" />`;
    case 'done':
      return svg`<path class="state-mark line" transform=${at} d="m-4-1 3 3 5-6" />`;
    case 'assumed':
      return svg`<path class="state-mark line" transform=${at} d="M-2-3a2.2 2.2 0 1 1 3 2c-.8.5-1 .8-1 1.5M0 3v.3" />`;
  }
}

/** A rail from when the task may start to when it may no longer; an end that never comes is left open. */
function windowPath({
  x,
  width,
  open,
}: {
  readonly x: number;
  readonly width: number;
  readonly open: boolean;
}): string {
  const end = x + width;
  const tip = open ? `m-4-3 4 3-4 3` : `m0-4v8`;
  return `M${round(x)} ${RAIL_Y - 4}v8m0-4H${round(end)}${tip}`;
}

function barWords(book: ScreenBook, { clock }: CalendarBook, entry: TaskEntry): string {
  const { task, title, batch, litres } = entry;
  return [
    `${title}, ${FACE_WORDS[task.face]}, ${batch.title}`,
    `${clock.day(task.startMinute)} ${clock.span(task.startMinute, task.endMinute)}`,
    litres === null ? '' : book.formats.volume(litres),
    STATE_WORDS[task.state],
    isOpen(task) && task.allowedToMinute !== null ? `closes ${clock.moment(task.allowedToMinute)}` : '',
  ]
    .filter((words) => words !== '')
    .join('; ');
}
