import { describe, expect, it } from 'vitest';
import { isoToday } from '../../../client/fields/iso-today.ts';
import { ownEvidence, sourceWords } from '../../../client/screens/catalogue/evidence-words.ts';
import { packId, withPack } from '../../../client/screens/catalogue/pack-list.ts';
import type { Pack } from '../../../server/planning/product.ts';

const pack = (id: string): Pack => ({
  id,
  label: '1 L',
  amount: 1,
  lengthMm: null,
  widthMm: null,
  priceMinor: 100,
  currency: 'EUR',
  supplierId: null,
  basis: 'memory',
  source: '',
  readOn: null,
});

describe('packs', () => {
  it('get a key of small letters, digits and hyphens from label and currency', () => {
    expect(packId([], '0.75 L', 'EUR')).toBe('0-75-l-eur');
    expect(packId([], 'Größe 2"', 'USD')).toBe('gro-e-2-usd');
  });

  it('never get a key that is taken', () => {
    expect(packId([pack('new-pack-eur'), pack('new-pack-eur-2')], 'new pack', 'EUR')).toBe('new-pack-eur-3');
  });

  it('stand on the user once the user has typed, and leave the others alone', () => {
    const [first, second] = withPack(
      [pack('a'), pack('b')],
      'a',
      { priceMinor: 250 },
      ownEvidence('2026-11-25'),
    );
    expect(first).toMatchObject({ id: 'a', priceMinor: 250, basis: 'user', readOn: '2026-11-25' });
    expect(second).toEqual(pack('b'));
  });
});

describe('evidence', () => {
  it('names source and date, or the date alone', () => {
    expect(sourceWords({ basis: 'label', source: 'can', readOn: '2026-11-25' })).toBe('can, read 2026-11-25');
    expect(sourceWords({ basis: 'user', source: '', readOn: '2026-11-25' })).toBe('entered 2026-11-25');
    expect(sourceWords({ basis: 'practice', source: '', readOn: null })).toBe('');
  });

  it('is dated in the reader’s own time zone', () => {
    expect(isoToday(new Date(2026, 0, 5, 23, 59))).toBe('2026-01-05');
  });
});
