import type { Basis, Evidence } from '../../../server/planning/product.ts';

export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  published: 'published',
  label: 'from a label',
  practice: 'common practice, no source',
  memory: 'from memory, not checked',
  user: 'your own',
};

/** How far a figure can be leaned on, as the colour of its tag. */
export const BASIS_TONE: Readonly<Record<Basis, 'good' | 'note' | 'warning' | ''>> = {
  published: 'good',
  label: 'good',
  practice: 'note',
  memory: 'warning',
  user: '',
};

/** Source and date in one line; empty when there is neither. */
export function sourceWords({ source, readOn }: Evidence): string {
  if (readOn === null) return source;
  return source === '' ? `entered ${readOn}` : `${source}, read ${readOn}`;
}

/** What stands behind a value the user types over: their own, entered today. */
export function ownEvidence(today: string): Evidence {
  return { basis: 'user', source: '', readOn: today, note: null };
}

/** Today in the reader's own time zone, as an ISO date. */
export function isoToday(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
