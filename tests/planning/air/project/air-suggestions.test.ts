import { describe, expect, it } from 'vitest';
import { stepRow } from '../../calendar/project/calendar-project.ts';
import { partRow } from '../../geometry/small-project.ts';
import { airOf, aShare, aSolvent, aVarnish, VARNISH_FIGURES } from './air-project.ts';

/** 2.4 m2: index 1.99 with 180 m3/h. */
const TEN = [partRow('1', { quantity: '10', showRecipeId: 'r' })];
const waterVarnish = {
  ...aVarnish({ choices: { carrier: 'water', role: 'topcoat' } }, { ...VARNISH_FIGURES, voc: 100 }),
  id: 'water-varnish',
  name: 'Water varnish',
};
const ids = (air: ReturnType<typeof airOf>) => air.suggestions.map(({ id }) => id);

describe('suggestions of the air check', () => {
  it('each hold when reckoned anew', () => {
    const air = airOf({ parts: TEN, products: [waterVarnish], settings: { windMPerS: 2 } });
    expect(ids(air)).toEqual(['open-door', 'more-air', 'water-based', 'smaller-batches']);
    for (const { peakIndex, peakPercent } of air.suggestions) {
      expect(peakIndex).toBeLessThan(1);
      expect(peakPercent).toBeLessThan(10);
    }
  });

  it('name the fan with the figure that is needed', () => {
    const air = airOf({ parts: TEN });
    const need = air.needed.value ?? 0;
    const text = air.suggestions.find(({ id }) => id === 'more-air')?.text ?? '';
    const [brought, rated] = [...text.matchAll(/(\d+) m³\/h/g)].map(([, digits]) => Number(digits));
    expect(brought).toBeGreaterThanOrEqual(Math.ceil(need));
    expect(brought).toBeLessThan(need * 1.01 + 1);
    // Half of the rating arrives.
    expect(rated).toBeCloseTo((brought ?? 0) * 2, -1);
    // And it does: a room with such a fan holds.
    expect(airOf({ parts: TEN, settings: { fanM3PerHour: rated ?? null } }).verdict).toBe(
      'within-limits-entered',
    );
  });

  it('drop what does not hold', () => {
    // No wind: a door brings nothing.
    expect(ids(airOf({ parts: TEN, settings: { windMPerS: 0 } }))).not.toContain('open-door');
    // Water-based, but no better.
    const strong = { ...waterVarnish, figures: aVarnish().figures };
    expect(ids(airOf({ parts: TEN, products: [strong] }))).not.toContain('water-based');
    // What evaporates from it is not known.
    const { voc: _, ...figures } = waterVarnish.figures;
    expect(ids(airOf({ parts: TEN, products: [{ ...waterVarnish, figures }] }))).not.toContain('water-based');
    // Of another role.
    const stain = { ...waterVarnish, choices: { carrier: 'water', role: 'sealer' } as const };
    expect(ids(airOf({ parts: TEN, products: [stain] }))).not.toContain('water-based');
  });

  it('offer more time where coats only add up, and smaller batches where one is too much', () => {
    const two = {
      parts: [partRow('1', { quantity: '4', showRecipeId: 'r' })],
      recipes: [{ id: 'r', name: 'Clear', faces: 'flip' as const, steps: [stepRow({ coats: 6 })] }],
      varnish: aVarnish({ recoat: [{ fromMin: 30, toMin: null, scuff: false }] }),
    };
    // 0.116 L x 400 g/L alone: index 0.887; the next coat follows within the hour.
    const air = airOf(two);
    expect(air.coats[0]?.peakIndex.value).toBeLessThan(1);
    expect(air.health.peakIndex.value).toBeGreaterThan(1);
    expect(ids(air)).toContain('more-time');
    expect(ids(airOf({ parts: TEN }))).not.toContain('more-time');
    expect(ids(airOf({ parts: TEN }))).toContain('smaller-batches');
  });

  it('are none where the air cannot be told at all', () => {
    expect(ids(airOf({ parts: TEN, settings: { roomLengthM: null } }))).toEqual([]);
    expect(ids(airOf({ parts: TEN, solvents: [aSolvent('spirit', { limits: [] })] }))).toEqual([]);
    expect(ids(airOf({ parts: TEN, varnish: aVarnish({ solvents: [aShare('nobody')] }) }))).toEqual([]);
  });

  it('still name the air that is needed where the fan alone is not known', () => {
    expect(ids(airOf({ parts: TEN, settings: { fanM3PerHour: null } }))).toEqual(['more-air']);
  });

  it('say where the fire side rests on a stand-in', () => {
    const lelElsewhere = [{ value: 0.7, basis: 'label', source: 'a forum', readOn: null }] as const;
    const air = airOf({ parts: TEN, solvents: [aSolvent('spirit', { lelPercent: null, lelElsewhere })] });
    expect(ids(air)).toContain('more-air');
    expect(air.suggestions.every(({ cautiousFire }) => cautiousFire)).toBe(true);
  });
});
