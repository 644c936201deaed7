import { type ColumnLayout, USUAL_LAYOUT } from './column-layout.ts';

/** Counted up when the stored form changes; another number is not read. */
const VERSION = 1;
/** Widths outside these, px, are not a reader's wish. */
const NARROWEST = 30;
const WIDEST = 1000;

/** A layout as text for the browser's storage. */
export function writeColumnLayout({ order, visible, widths }: ColumnLayout): string {
  return JSON.stringify({ version: VERSION, order, visible, widths });
}

/** Reads what `writeColumnLayout` wrote. Anything else, in whole or in part, is as if it had never been said. */
export function readColumnLayout(text: string | null): ColumnLayout {
  const stored = parsed(text);
  if (!isRecord(stored) || stored.version !== VERSION) return USUAL_LAYOUT;
  const { order, visible, widths } = stored;
  return {
    order: Array.isArray(order) ? order.filter((id): id is string => typeof id === 'string') : [],
    visible: entries(visible, (value) => typeof value === 'boolean'),
    widths: entries(widths, (value) => typeof value === 'number' && value >= NARROWEST && value <= WIDEST),
  };
}

function entries<Value>(from: unknown, fits: (value: unknown) => boolean): Record<string, Value> {
  if (!isRecord(from)) return {};
  return Object.fromEntries(Object.entries(from).filter(([, value]) => fits(value))) as Record<string, Value>;
}

function parsed(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
