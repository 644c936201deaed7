import { describe, expect, it } from 'vitest';
import { projectAir } from '../../../../server/planning/air/project/project-air.ts';
import { stepRow } from '../../calendar/project/calendar-project.ts';
import { partRow } from '../../geometry/small-project.ts';
import { airOf, airProject, aShare, aSolvent, aVarnish, ROOM, VARNISH_FIGURES, WEEK } from './air-project.ts';
import { MISSING_FIELDS } from './missing-fields.ts';

/** Ten panels of 600 x 400 mm: 2.4 m2. */
const TEN = [partRow('1', { quantity: '10', showRecipeId: 'r' })];

describe('the air of a project', () => {
  it('reckons each coat of the calendar in its room', () => {
    const air = airOf();
    // 0.24 m2 / 10 m2/L + 0.02 L left in the brush = 0.044 L; x 400 g/L = 17.6 g.
    expect(air.coats[0]?.litres.value).toBeCloseTo(0.044, 9);
    expect(air.coats[0]?.vapourG.value).toBeCloseTo(17.6, 9);
    // M = 17 600 mg / 350 = 50.286 m3; k = ln 20 / 60 = 0.0499289; N = 3 / 50 = 0.06 per minute. The top is at
    // ln(N/k) / (N-k) = 18.245 min after 09:05, and there M k e^(-kt) / (N V) = 50.286 x 0.0499289 x 0.402155 / 3.
    expect(air.health.peakIndex.value).toBeCloseTo(0.33656, 4);
    expect(air.health.peakMinute).toBeCloseTo(545 + 18.245, 2);
    expect(air.coats[0]?.peakIndex.value).toBeCloseTo(0.33656, 4);
    // 1 % of 100 g/mol at 22 C: 0.01 x 1000 / 24.2195 x 100 000 = 41 289 mg/m3; 0.33656 x 350 / 41 289 = 0.2853 %.
    expect(air.fire.peakPercent.value).toBeCloseTo(0.2853, 3);
    expect(air.verdict).toBe('within-limits-entered');
    expect(air.airflow.value).toBe(180);
    expect(air.volumeM3.value).toBe(50);
    // 180 m3/h through 50 m3.
    expect(air.airChangesPerHour.value).toBeCloseTo(3.6, 9);
    expect(air.problems).toEqual([]);
    expect(air.suggestions).toEqual([]);
  });

  it('draws the days on which there is vapour, with a point at every coat and peak', () => {
    const { days } = airOf({ parts: TEN });
    expect(days.map(({ id }) => id)).toEqual(['2027-03-13']);
    const [day] = days;
    const highest = day?.points.reduce((most, point) => (point.index > most.index ? point : most));
    expect(highest?.index).toBeCloseTo(day?.peakIndex ?? 0, 6);
    expect(day?.points[0]).toMatchObject({ minute: 0, index: 0, percent: 0 });
    // Ten times the area takes 0.26 L, and 0.26 / 0.044 times the vapour: 0.33656 x 5.909 = 1.9888.
    expect(day?.peakIndex).toBeCloseTo(1.989, 2);
    const [over] = day?.over ?? [];
    expect(over?.fromMinute).toBeGreaterThan(545);
    expect(over?.fromMinute).toBeLessThan(highest?.minute ?? 0);
    expect(over?.toMinute).toBeGreaterThan(highest?.minute ?? 0);
    expect(day?.over).toHaveLength(1);
  });

  it('says in words what is needed and what there is', () => {
    const air = airOf({ parts: TEN });
    expect(air.verdict).toBe('over-health');
    expect(air.headline).toMatch(
      /^The vapour comes over the health limit: the room needs \d+ m³\/h of fresh air and gets 180 m³\/h\.$/,
    );
    const us = airOf({ parts: TEN, settings: { units: 'us' } });
    // 180 m3/h / 1.699 = 105.9 cfm, rounded up.
    expect(us.headline).toMatch(/needs \d+ cfm of fresh air and gets 106 cfm\.$/);
    expect(air.needed.value).toBeGreaterThan(180);
  });

  it('says where only the stricter way of judging puts it over', () => {
    // 1.99 at its worst, but 0.26 L x 400 g/L / 350 = 297 m3 in 180 m3/h: (297 / 3 m3/min) / 480 min = 0.2063 on average.
    const { sentences } = airOf({ parts: TEN });
    expect(sentences.join(' ')).toContain(
      'Averaged over 8 hours, as the limits are defined, it comes to 21 %',
    );
    const averages = airOf({ parts: TEN, settings: { healthBasis: 'averages' } });
    expect(averages.verdict).toBe('within-limits-entered');
  });

  it('uses the high end of a VOC range, and what was measured of a coat that is done', () => {
    const { voc: _, ...figures } = VARNISH_FIGURES;
    const range = aVarnish({}, figures);
    const voc = {
      low: 350,
      typical: 400,
      high: 450,
      unit: 'g/L',
      basis: 'label',
      source: 'made up',
    } as const;
    const varnish = { ...range, figures: { ...range.figures, voc: { ...voc, readOn: null } } };
    expect(airOf({ varnish }).coats[0]?.vapourG.value).toBeCloseTo(0.044 * 450, 9);
    const doneTasks = [
      {
        id: '1',
        taskId: 'r+-#1:show:top-1',
        start: '2027-03-13T07:00',
        end: '2027-03-13T07:10',
        litres: 0.1,
      },
    ];
    const air = airOf({ doneTasks });
    expect(air.coats[0]).toMatchObject({ startMinute: 420 });
    expect(air.coats[0]?.litres.value).toBeCloseTo(0.1, 9);
  });

  it('counts thinner and every component of what is laid', () => {
    const steps = [stepRow({ thinning: 0.25, thinnerId: 'thinner' })];
    const { input } = airProject();
    const varnish = input.catalogue.products.find(({ id }) => id === 'varnish');
    const thinner = {
      ...(varnish ?? aVarnish()),
      id: 'thinner',
      kind: 'thinner' as const,
      name: 'Thinner',
      figures: { voc: { ...aVarnish().figures.voc, typical: 780 } as never },
    };
    const air = airOf({ recipes: [{ id: 'r', name: 'Clear', faces: 'flip', steps }], products: [thinner] });
    expect(air.coats.map(({ name }) => name)).toEqual(['Varnish, coat 1', 'Thinner, coat 1']);
    expect(air.coats[1]?.vapourG.value).toBeCloseTo((air.coats[1]?.litres.value ?? 0) * 780, 6);
  });

  it('has nothing to say where nothing is laid', () => {
    const air = airOf({ parts: [] });
    expect(air).toMatchObject({ verdict: 'no-coats', problems: [], suggestions: [], days: [] });
    expect(air.cautions.length).toBeGreaterThan(5);
  });

  it('takes unknown shares for the worst, and says so', () => {
    const varnish = aVarnish({
      solvents: [aShare('spirit', { share: null }), aShare('harsh', { share: null })],
    });
    const harsh = aSolvent('harsh', {
      limits: aSolvent('harsh').limits.map((limit) => ({ ...limit, mgPerM3: 35 })),
    });
    const air = airOf({ varnish, solvents: [aSolvent('spirit'), harsh] });
    // All of it held to 35 instead of 350 mg/m3.
    expect(air.health.peakIndex.value).toBeCloseTo(3.3656, 3);
    expect(air.notes.join(' ')).toContain('The solvent shares of "Varnish" are not known');
  });

  it('takes the figures of a product sheet in place of those of the list', () => {
    const varnish = aVarnish({ solvents: [aShare('spirit', { limitMgPerM3: 35, lelPercent: 0.5 })] });
    const air = airOf({ varnish });
    expect(air.health.peakIndex.value).toBeCloseTo(3.3656, 3);
    expect(air.substances[0]).toMatchObject({ lelPercent: 0.5, limitMgPerM3: 35 });
    expect(air.substances[0]?.limitSource).toContain('safety data sheet of the product');
  });

  it('shows the air a litre takes by the fire formula beside the rest', () => {
    // 800 g / 100 g/mol x 24.2195 L at 22 C = 193.756 L of vapour; 4 x 99 x 193.756 / 1 = 76 727 L.
    expect(airOf().substances[0]?.dilutionM3PerL.value).toBeCloseTo(76.727, 2);
  });

  it('reckons the heat that goes out, and its price', () => {
    const air = airOf({ settings: { outdoorC: 2, heatPricePerKwhMinor: 30 } });
    // 101 325 / (287.042 x 295.15) = 1.19600 kg/m3 x 1006 x 3 / 60 x 20 = 1203.2 W, for the 62 min from 09:05 to touch dry.
    expect(air.heatW.value).toBeCloseTo(1203.2, 0);
    expect(air.heatKwh.value).toBeCloseTo((1.2032 * 62) / 60, 2);
    expect(air.heatCost.value).toBeCloseTo(((1.2032 * 62) / 60) * 30, 1);
    expect(airOf().heatW.value).toBe(null);
  });
});

describe('what the air check does not know', () => {
  it.each(MISSING_FIELDS)('without $what it cannot tell, and says where to enter it', (missing) => {
    const { settings = {}, varnish, solvents } = missing;
    const air = airOf({
      settings,
      ...(varnish === undefined ? {} : { varnish }),
      ...(solvents === undefined ? {} : { solvents }),
    });
    expect(air.verdict).toBe('cannot-tell');
    expect(air.headline).toMatch(/^Cannot tell: (one thing is|\d+ things are) not known\.$/);
    const places = air.problems.map(({ at }) => `${at.table}/${at.id}/${at.field}`);
    expect(places).toContain(missing.at);
    expect(air.problems.map(({ message }) => message).join(' ')).toMatch(missing.says);
    for (const { code, severity, wayOut } of air.problems) {
      expect([code, severity]).toEqual(['air-cannot-tell', 'warning']);
      expect(wayOut).not.toBe('');
    }
  });

  it('without a calendar it cannot tell, and points to the calendar', () => {
    const { input, plan } = airProject();
    const air = projectAir(input, plan, null, WEEK);
    expect(air.verdict).toBe('cannot-tell');
    expect(air.needed.value).toBe(null);
    expect(air.problems.map(({ at }) => at)).toEqual([{ table: 'settings', id: null, field: 'calendar' }]);
  });

  it('without the drying time that a calendar needs, the coat is unknown and not nothing', () => {
    const { handleDry: _, touchDry: __, ...figures } = VARNISH_FIGURES;
    const air = airOf({ varnish: aVarnish({ recoat: [] }, figures) });
    expect(air.verdict).toBe('cannot-tell');
    expect(air.problems.map(({ at }) => at.field)).toContain('calendar');
  });

  it('without the area of a part it cannot tell', () => {
    const air = airOf({
      parts: [partRow('1', { showRecipeId: 'r' }), partRow('2', { showRecipeId: 'r', length: '' })],
    });
    expect(air.verdict).toBe('cannot-tell');
    expect(air.problems.map(({ at }) => at)).toEqual([{ table: 'parts', id: '2', field: null }]);
  });

  it('without the product of a coat it cannot tell', () => {
    const steps = [stepRow({}), stepRow({ id: 'more', productId: '' })];
    const air = airOf({ recipes: [{ id: 'r', name: 'Clear', faces: 'flip', steps }] });
    expect(air.verdict).toBe('cannot-tell');
    expect(air.problems.map(({ at }) => at)).toContainEqual({
      table: 'steps',
      id: 'more',
      field: 'productId',
    });
  });

  it('still says what the known part breaks', () => {
    const air = airOf({ parts: TEN, solvents: [aSolvent('spirit', { lelPercent: null })] });
    expect(air.verdict).toBe('over-health');
    expect(air.sentences.join(' ')).toContain('one thing is not known, and the whole can only be worse');
  });

  it('shows the lowest explosive limit found elsewhere as a stand-in, never as the answer', () => {
    const lelElsewhere = [
      { value: 0.7, basis: 'label', source: 'a forum', readOn: null },
      { value: 1.1, basis: 'memory', source: '', readOn: null },
    ] as const;
    const air = airOf({ solvents: [aSolvent('spirit', { lelPercent: null, lelElsewhere })] });
    expect(air.fire).toMatchObject({ verdict: 'cannot-tell', peakPercent: { value: null } });
    expect(air.fire.cautious?.assumed).toEqual(['spirit: 0.7 % (a forum)']);
    expect(air.fire.cautious?.peakPercent.value).toBeCloseTo(0.2853 / 0.7, 3);
    expect(air.verdict).toBe('cannot-tell');
  });

  it('takes everything at once where the label has no touch-dry time', () => {
    const { touchDry: _, ...figures } = VARNISH_FIGURES;
    const air = airOf({ varnish: aVarnish({}, figures) });
    // 50.286 m3 in 50 m3 were it all there at once; half a minute of airing takes little off.
    expect(air.health.peakIndex.value).toBeGreaterThan(0.95);
    expect(air.notes.join(' ')).toContain('How fast "Varnish" dries is not known');
  });
});

describe('words of the air check', () => {
  it('never call the air safe', () => {
    for (const air of [airOf(), airOf({ parts: TEN }), airOf({ settings: { fanM3PerHour: null } })])
      expect(JSON.stringify([air.headline, air.sentences, air.suggestions, air.notes])).not.toMatch(
        /\bsafe\b/i,
      );
  });

  it('carry a working for every figure', () => {
    const text = JSON.stringify(airOf({ settings: { ...ROOM, outdoorC: 0 } }));
    expect(text).not.toContain('"rule":""');
  });
});
