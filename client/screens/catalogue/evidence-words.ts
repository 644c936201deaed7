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
