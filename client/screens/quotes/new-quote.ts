import { placeKey } from '../../fields/place.ts';
import { addRow } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';

/** How long a new quote stands, days. Common practice, no source. */
const DAYS_VALID = 30;
const MS_PER_DAY = 86_400_000;
/** Whom quotes are from is the same for every project of a shop. */
const SENDER_KEY = 'plywright.quote-sender';

/** Adds a quote dated today, from the same sender as the last one. */
export async function addQuote({ project, settings }: ScreenBook): Promise<void> {
  const date = dayIn(settings.timeZone, Date.now());
  const validUntil = dayIn('UTC', Date.parse(`${date}T00:00:00Z`) + DAYS_VALID * MS_PER_DAY);
  const sender = project.rows.quotes.at(-1)?.sender || (localStorage.getItem(SENDER_KEY) ?? '');
  const id = await addRow('quotes', { date, validUntil, sender }, 'add a quote');
  if (id === null) return;
  requestAnimationFrame(() =>
    document
      .querySelector<HTMLElement>(`[data-at="${placeKey({ table: 'quotes', id, field: 'title' })}"]`)
      ?.focus(),
  );
}

export function rememberSender(sender: string): void {
  localStorage.setItem(SENDER_KEY, sender);
}

/** YYYY-MM-DD of a moment where the clock shows the time of a zone. */
function dayIn(timeZone: string, ms: number): string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(ms);
  const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}`;
}
