import { describe, expect, it } from 'vitest';
import { evidenceText } from '../../../server/planning/finish/evidence-text.ts';

describe('evidence', () => {
  const at = { source: 'typical of the family', readOn: null };

  it('is printed by its basis', () => {
    expect(evidenceText({ basis: 'label', ...at })).toBe('label value, typical of the family');
    expect(evidenceText({ basis: 'practice', source: '', readOn: null })).toBe('common practice, no source');
    expect(evidenceText({ basis: 'memory', source: '', readOn: null })).toBe('from memory');
    expect(evidenceText({ basis: 'published', source: 'Wood Handbook, ch. 16', readOn: '2026-01-31' })).toBe(
      'Wood Handbook, ch. 16, read 2026-01-31',
    );
    expect(evidenceText({ basis: 'user', source: '', readOn: '2026-02-01', note: 'my can' })).toBe(
      'your own figure, entered 2026-02-01 (my can)',
    );
  });

  it('admits when a published source has no name, and gives a rule of thumb none', () => {
    expect(evidenceText({ basis: 'published', source: '', readOn: null })).toBe(
      'published, source not named',
    );
    expect(evidenceText({ basis: 'practice', source: 'somewhere', readOn: null })).toBe(
      'common practice, no source',
    );
  });
});
