import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airOutMinute } from '../../../server/planning/air/air-out-minute.ts';
import { type AirRoom, exchangePerMin, type RoomSource } from '../../../server/planning/air/air-room.ts';
import { highestAverage } from '../../../server/planning/air/highest-average.ts';
import { highestEmissionPerMin } from '../../../server/planning/air/highest-emission-per-min.ts';
import { leastAirflow } from '../../../server/planning/air/least-airflow.ts';
import { neededAirflowM3PerMin } from '../../../server/planning/air/needed-airflow-m3-per-min.ts';
import { roomAverage } from '../../../server/planning/air/room-average.ts';
import { roomConcentration } from '../../../server/planning/air/room-concentration.ts';
import { roomDose } from '../../../server/planning/air/room-dose.ts';
import { roomPeak, roomPeaks } from '../../../server/planning/air/room-peak.ts';
import { steadyStateAirflowM3PerMin } from '../../../server/planning/air/steady-state-airflow-m3-per-min.ts';
import { anyRoom, anySources, timesAmount } from './random-rooms.ts';

// The self-check of the closed form: A = 2 m2 at E0 = 1000 mg/m2 h, V = 30 m3, k = 0.4 per hour, N = 0.5 per hour.
// Everything emitted: A E0 / k = 5000 mg.
const room: AirRoom = { volumeM3: 30, airflowM3PerMin: 0.25, mixingFactor: 1 };
const coat: RoomSource = { startMinute: 0, phases: [{ amount: 5000, decayPerMin: 0.4 / 60 }] };
const closed: AirRoom = { volumeM3: 10, airflowM3PerMin: 0, mixingFactor: 1 };
const simple: RoomSource = { startMinute: 0, phases: [{ amount: 100, decayPerMin: 0.01 }] };

describe('exchangePerMin', () => {
  it('gives its worked example', () => {
    expect(exchangePerMin({ volumeM3: 50, airflowM3PerMin: 5, mixingFactor: 2 })).toBe(0.05);
  });

  it.each([
    { volumeM3: 0 },
    { volumeM3: Number.NaN },
    { airflowM3PerMin: -1 },
    { airflowM3PerMin: Number.NaN },
    { mixingFactor: 0.5 },
    { mixingFactor: 11 },
  ])('refuses %o', (wrong) => {
    expect(() => exchangePerMin({ ...room, ...wrong })).toThrow(RangeError);
  });
});

describe('roomConcentration', () => {
  it('gives the self-check of its closed form', () => {
    // C = 2000 / (30 x 0.1) (e^(-0.4 t) - e^(-0.5 t)): 42.53 at 1 h, 54.61 at 2.2314 h, 14.96 at 8 h, by hand.
    expect(roomConcentration(room, [coat], 60)).toBeCloseTo(42.53, 2);
    expect(roomConcentration(room, [coat], 2.2314 * 60)).toBeCloseTo(54.61, 2);
    expect(roomConcentration(room, [coat], 480)).toBeCloseTo(14.96, 2);
  });

  it('is nothing before the first coat and at its start', () => {
    expect(roomConcentration(room, [coat], -5)).toBe(0);
    expect(roomConcentration(room, [coat], 0)).toBe(0);
  });

  it('goes over smoothly into its limit where decay and exchange are equal', () => {
    // N = k: C = (M k / V) t e^(-kt); 5000 x 0.01 / 30 x 100 x e^-1 = 61.313 at 100 min.
    const same = { ...room, airflowM3PerMin: 0.3 };
    const source = (decayPerMin: number) => [{ startMinute: 0, phases: [{ amount: 5000, decayPerMin }] }];
    expect(roomConcentration(same, source(0.01), 100)).toBeCloseTo(61.313, 3);
    for (const nudge of [1e-4, 1e-8, 1e-12, -1e-12])
      expect(roomConcentration(same, source(0.01 * (1 + nudge)), 100) / 61.31324).toBeCloseTo(1, 4);
    // No digits lost: a nudge of 1e-9 moves the result by under 1e-9.
    const nudged = roomConcentration(same, source(0.01 * (1 + 1e-9)), 100);
    expect(Math.abs(nudged / roomConcentration(same, source(0.01), 100) - 1)).toBeLessThan(1e-9);
  });

  it('adds up coats and phases', () => {
    const later = { ...coat, startMinute: 90 };
    const both = roomConcentration(room, [coat, later], 200);
    expect(both).toBeCloseTo(roomConcentration(room, [coat], 200) + roomConcentration(room, [coat], 110), 12);
    const split = { startMinute: 0, phases: [...coat.phases, ...coat.phases] };
    expect(roomConcentration(room, [split], 200)).toBeCloseTo(2 * roomConcentration(room, [coat], 200), 12);
  });

  it('counts poor mixing as so much less air', () => {
    const poor = { ...room, airflowM3PerMin: 1, mixingFactor: 4 };
    expect(roomConcentration(poor, [coat], 100)).toBe(roomConcentration(room, [coat], 100));
  });

  it.each([
    { startMinute: Number.NaN, phases: [] },
    { startMinute: -1, phases: [] },
    { startMinute: 0, phases: [{ amount: -1, decayPerMin: 1 }] },
    { startMinute: 0, phases: [{ amount: Number.NaN, decayPerMin: 1 }] },
    { startMinute: 0, phases: [{ amount: 1, decayPerMin: 0 }] },
    { startMinute: 0, phases: [{ amount: 1, decayPerMin: Number.NaN }] },
  ])('refuses %o', (source) => {
    expect(() => roomConcentration(room, [source], 1)).toThrow(RangeError);
  });
});

describe('roomDose and roomAverage', () => {
  it('give their worked examples', () => {
    // Closed room: C = 10 (1 - e^(-0.01 t)), its integral to 100 min 10 (100 - 100 (1 - 1/e)) = 367.88.
    expect(roomDose(closed, [simple], 100)).toBeCloseTo(367.88, 2);
    expect(roomAverage(closed, [simple], 0, 100)).toBeCloseTo(3.6788, 4);
  });

  it('carry off in the end all that was emitted', () => {
    // Mass balance: V N x the whole dose = 5000 mg.
    expect(room.volumeM3 * exchangePerMin(room) * roomDose(room, [coat], 1e6)).toBeCloseTo(5000, 8);
  });

  it('balance what was emitted, carried off and is still in the air, in any room at any minute', () => {
    fc.assert(
      fc.property(
        anyRoom,
        anySources,
        fc.double({ min: 0, max: 5000, noNaN: true }),
        (any, sources, minute) => {
          let emitted = 0;
          for (const source of sources)
            for (const { amount, decayPerMin } of source.phases)
              emitted += amount * -Math.expm1(-decayPerMin * Math.max(0, minute - source.startMinute));
          const inAir = any.volumeM3 * roomConcentration(any, sources, minute);
          const carried = any.volumeM3 * exchangePerMin(any) * roomDose(any, sources, minute);
          // The smallest term keeps numbers below what a double can hold apart from real disagreement.
          expect(Math.abs(emitted - inAir - carried)).toBeLessThanOrEqual(1e-9 * emitted + 1e-300);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('keep their digits in a room that is hardly aired', () => {
    // With one air change in 20 years the dose of the closed room comes out, to the size of that change.
    const hardly = { ...closed, airflowM3PerMin: 1e-6 };
    expect(roomDose(hardly, [simple], 100) / roomDose(closed, [simple], 100)).toBeCloseTo(1, 5);
    expect(roomDose(hardly, [simple], 1e-3) / (10 * 0.01 * 1e-6 * 0.5)).toBeCloseTo(1, 4);
  });

  it('refuses a stretch of no length', () => {
    expect(() => roomAverage(room, [coat], 10, 10)).toThrow(/toMinute - fromMinute/);
  });
});

describe('roomPeak', () => {
  it('gives the self-check of its closed form', () => {
    // ln(0.5 / 0.4) / 0.1 = 2.2314 h.
    const peak = roomPeak(room, [coat]);
    expect(peak.value).toBeCloseTo(54.61, 2);
    expect((peak.minute ?? 0) / 60).toBeCloseTo(2.2314, 4);
  });

  it('is approached for ever in a closed room', () => {
    expect(roomPeak(closed, [simple])).toEqual({ value: 10, minute: null });
  });

  it('is nothing without coats or with coats of nothing', () => {
    expect(roomPeak(room, [])).toEqual({ value: 0, minute: 0 });
    expect(roomPeak(room, [{ startMinute: 7, phases: [{ amount: 0, decayPerMin: 1 }] }]).value).toBe(0);
  });

  it('finds one top per stretch between coats', () => {
    const tops = roomPeaks(room, [coat, { ...coat, startMinute: 1000 }, { ...coat, startMinute: 1000 }]);
    expect(tops).toHaveLength(2);
    expect(tops[0]?.minute).toBeCloseTo(133.886, 2);
    expect(tops[1]?.value).toBeGreaterThan(tops[0]?.value ?? Infinity);
  });

  it('is nowhere exceeded', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        anyRoom,
        anySources,
        fc.array(share, { minLength: 20, maxLength: 20 }),
        (any, sources, shares) => {
          const peak = roomPeak(any, sources);
          for (const part of shares)
            expect(roomConcentration(any, sources, part * 3000)).toBeLessThanOrEqual(
              peak.value * (1 + 1e-12),
            );
          if (peak.minute !== null)
            expect(roomConcentration(any, sources, peak.minute)).toBeCloseTo(peak.value, 9);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('never rises with more air, and never falls with more litres', () => {
    fc.assert(
      fc.property(anyRoom, anySources, fc.double({ min: 1, max: 5, noNaN: true }), (any, sources, factor) => {
        const peak = roomPeak(any, sources).value;
        const aired = { ...any, airflowM3PerMin: any.airflowM3PerMin * factor + (factor - 1) };
        expect(roomPeak(aired, sources).value).toBeLessThanOrEqual(peak * (1 + 1e-12));
        expect(roomPeak(any, timesAmount(sources, factor)).value).toBeGreaterThanOrEqual(peak * (1 - 1e-12));
      }),
      { numRuns: 300 },
    );
  });
});

describe('highestAverage', () => {
  it('is the whole dose over the window when the vapour is gone by then', () => {
    // 5000 mg at 0.5 per minute through 30 m3 with 10 m3/min: dose 5000 / 10 = 500 mg min/m3, over 480 min 1.04167.
    const quick = [{ startMinute: 30, phases: [{ amount: 5000, decayPerMin: 0.5 }] }];
    const aired = { ...room, airflowM3PerMin: 10 };
    expect(highestAverage(aired, quick, 480).value).toBeCloseTo(1.04167, 4);
  });

  it('is close under the peak for a short window, and under it for a longer one', () => {
    const peak = roomPeak(room, [coat]).value;
    const short = highestAverage(room, [coat], 1).value;
    const quarter = highestAverage(room, [coat], 15).value;
    const shift = highestAverage(room, [coat], 480).value;
    expect(short).toBeLessThanOrEqual(peak);
    expect(short).toBeGreaterThan(0.9999 * peak);
    expect(quarter).toBeLessThan(short);
    expect(shift).toBeLessThan(quarter);
  });

  it('is approached for ever in a closed room', () => {
    expect(highestAverage(closed, [simple], 480)).toEqual({ value: 10, endMinute: null });
  });

  it('is nothing without coats', () => {
    expect(highestAverage(room, [], 15)).toEqual({ value: 0, endMinute: 0 });
  });

  it('is nowhere exceeded by more than its tolerance, and is reached by the window it names', () => {
    const windows = fc.constantFrom(1, 15, 480);
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const shares = fc.array(share, { minLength: 40, maxLength: 40 });
    fc.assert(
      fc.property(anyRoom, anySources, windows, shares, (any, sources, window, parts) => {
        const found = highestAverage(any, sources, window);
        for (const part of parts) {
          const end = part * 3000;
          const average = roomAverage(any, sources, end - window, end);
          expect(average).toBeLessThanOrEqual(found.value * (1 + 1.1e-5) + 1e-12);
        }
        const { endMinute } = found;
        if (endMinute !== null && endMinute > 0)
          expect(roomAverage(any, sources, endMinute - window, endMinute) / found.value).toBeCloseTo(1, 9);
      }),
      { numRuns: 300 },
    );
  });

  it('refuses a window of no length', () => {
    expect(() => highestAverage(room, [coat], 0)).toThrow(/windowMin/);
    expect(() => highestAverage(room, [coat], Number.NaN)).toThrow(/windowMin/);
  });
});

describe('highestEmissionPerMin', () => {
  it('gives its worked example, and adds what still comes off earlier coats', () => {
    const one = { startMinute: 0, phases: [{ amount: 5000, decayPerMin: 0.01 }] };
    expect(highestEmissionPerMin([one])).toBe(50);
    // 50 + 50 e^-1 = 68.394 at the second coat.
    expect(highestEmissionPerMin([one, { ...one, startMinute: 100 }])).toBeCloseTo(68.394, 3);
    expect(highestEmissionPerMin([])).toBe(0);
  });
});

describe('leastAirflow', () => {
  it('gives its worked example from above, never from below', () => {
    const found = leastAirflow((flow) => 10 / flow, 2, 100);
    expect(found).toBeGreaterThan(5);
    expect(found).toBeLessThanOrEqual(5 * (1 + 1e-4));
  });

  it('is nothing when a closed room is under the limit already', () => {
    expect(leastAirflow(() => 1, 2, 100)).toBe(0);
  });

  it('refuses a starting airflow that is not enough', () => {
    expect(() => leastAirflow((flow) => 10 / flow, 2, 4)).toThrow(/must be enough/);
  });
});

describe('neededAirflowM3PerMin', () => {
  it('gives its worked example', () => {
    // The room of the self-check peaks at 54.61 with 15 m3/h = 0.25 m3/min.
    const limit = roomPeak(room, [coat]).value;
    expect(neededAirflowM3PerMin(room, [coat], limit, 'peak')).toBeCloseTo(0.25, 4);
  });

  it('keeps peak and averages under the limit, with no more air than it takes', () => {
    const windows = fc.constantFrom<'peak' | number>('peak', 15, 480);
    fc.assert(
      fc.property(
        anyRoom,
        anySources,
        windows,
        fc.double({ min: 1, max: 500, noNaN: true }),
        (any, sources, window, limit) => {
          const needed = neededAirflowM3PerMin(any, sources, limit, window);
          const measure = (airflowM3PerMin: number) => {
            const aired = { ...any, airflowM3PerMin };
            return window === 'peak'
              ? roomPeak(aired, sources).value
              : highestAverage(aired, sources, window).value;
          };
          expect(measure(needed)).toBeLessThan(limit);
          if (needed > 0) expect(measure(needed * (1 - 2e-4))).toBeGreaterThanOrEqual(limit * (1 - 1e-5));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never asks for more than the steady-state formula at the highest emission', () => {
    fc.assert(
      fc.property(
        anyRoom,
        anySources,
        fc.double({ min: 1, max: 500, noNaN: true }),
        (any, sources, limit) => {
          const steady = steadyStateAirflowM3PerMin(highestEmissionPerMin(sources), limit, any.mixingFactor);
          expect(neededAirflowM3PerMin(any, sources, limit, 'peak')).toBeLessThanOrEqual(steady * (1 + 2e-4));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('asks for no air for coats of nothing, and refuses a limit of nothing', () => {
    expect(neededAirflowM3PerMin(room, [], 1, 'peak')).toBe(0);
    expect(() => neededAirflowM3PerMin(room, [coat], 0, 'peak')).toThrow(/limitPerM3/);
  });
});

describe('airOutMinute', () => {
  it('gives its worked example', () => {
    // All at once (1e6 per minute): C = 10 e^(-t/60) from 10 mg/m3 down to 1: 60 ln 10 = 138.155 min.
    const burst = [{ startMinute: 0, phases: [{ amount: 100, decayPerMin: 1e6 }] }];
    expect(airOutMinute({ ...closed, airflowM3PerMin: 10 / 60 }, burst, 1)).toBeCloseTo(138.155, 2);
  });

  it('is at once where the level is not passed after the last coat', () => {
    expect(airOutMinute(room, [coat, { ...coat, startMinute: 50 }], 1e6)).toBe(50);
  });

  it('is never in a closed room that stays above the level', () => {
    expect(airOutMinute(closed, [simple], 9.9)).toBe(null);
    expect(airOutMinute(closed, [simple], 10)).toBe(0);
  });

  it('is the last minute above the level, for good', () => {
    fc.assert(
      fc.property(
        anyRoom,
        anySources,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (any, sources, share) => {
          const level = roomPeak(any, sources).value * share;
          const clear = airOutMinute(any, sources, level);
          const last = Math.max(...sources.map((source) => source.startMinute));
          if (clear === null) return;
          // Where decay and air change are nearly equal, their difference leaves about 1e-8 of rounding in the
          // closed form; seen up to 5e-9.
          const noise = 1e-7;
          expect(clear).toBeGreaterThanOrEqual(last);
          for (const later of [0, 1, 10, 100, 1000])
            expect(roomConcentration(any, sources, clear + later)).toBeLessThanOrEqual(level * (1 + noise));
          if (clear > last + 1e-3)
            expect(roomConcentration(any, sources, clear - 1e-4 - 1e-8 * clear)).toBeGreaterThan(
              level * (1 - noise),
            );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('refuses a level of nothing and a room without coats', () => {
    expect(() => airOutMinute(room, [coat], 0)).toThrow(/level/);
    expect(() => airOutMinute(room, [], 1)).toThrow(/at least one coat/);
  });
});
