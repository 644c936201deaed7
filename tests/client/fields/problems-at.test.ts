import { describe, expect, it } from 'vitest';
import { placeElementId, placeKey } from '../../../client/fields/place.ts';
import { problemsAt } from '../../../client/fields/problems-at.ts';
import type { Problem } from '../../../server/planning/problem.ts';

const problem = (severity: Problem['severity'], field: string | null, message: string): Problem => ({
  code: 'price-missing',
  severity,
  at: { table: 'extras', id: '3', field },
  message,
  wayOut: '',
});

describe('problems at a field', () => {
  const problems = [
    problem('note', 'unitPriceMinor', 'minor matter'),
    problem('error', 'unitPriceMinor', 'grave matter'),
    problem('warning', 'quantity', 'elsewhere'),
    problem('warning', null, 'whole row'),
  ];

  it('are those of that field, worst first', () => {
    const found = problemsAt(problems, { table: 'extras', id: '3', field: 'unitPriceMinor' });
    expect(found.map(({ message }) => message)).toEqual(['grave matter', 'minor matter']);
  });

  it('are none for another row', () => {
    expect(problemsAt(problems, { table: 'extras', id: '4', field: 'unitPriceMinor' })).toEqual([]);
  });

  it('of the row as a whole are found under no field', () => {
    expect(
      problemsAt(problems, { table: 'extras', id: '3', field: '' }).map(({ message }) => message),
    ).toEqual(['whole row']);
  });
});

describe('a place', () => {
  it('has one key, the same for fields and problems', () => {
    expect(placeKey({ table: 'settings', id: null, field: 'kerfMm' })).toBe('settings//kerfMm');
  });

  it('has an element id of its own', () => {
    const field = { table: 'steps', id: '7', field: 'coats' } as const;
    expect(placeElementId(field)).not.toBe(placeElementId({ ...field, id: '8' }));
    expect(placeElementId(field)).not.toBe(placeElementId(field, 'said'));
  });
});
