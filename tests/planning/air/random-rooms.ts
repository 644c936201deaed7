import fc from 'fast-check';
import type { AirRoom, RoomSource } from '../../../server/planning/air/air-room.ts';

/** Rooms and overlapping coats for slow twins and property tests. */

/** A room of 5 to 500 m3 with up to 30 air changes per hour, and one to five coats within ten hours. */
export function randomRoom(random: () => number): { room: AirRoom; sources: RoomSource[] } {
  const pick = (low: number, high: number) => low + random() * (high - low);
  const spread = (low: number, high: number) => Math.exp(pick(Math.log(low), Math.log(high)));
  const volumeM3 = spread(5, 500);
  const mixingFactor = pick(1, 10);
  const exchangePerHour = random() < 0.05 ? 0 : spread(0.05, 30);
  const room = { volumeM3, mixingFactor, airflowM3PerMin: (exchangePerHour / 60) * volumeM3 };
  const exchangePerMin = exchangePerHour / 60 / mixingFactor;
  const decay = () => (random() < 0.2 && exchangePerMin > 0 ? exchangePerMin : spread(0.0005, 0.5));
  const sources = Array.from({ length: 1 + Math.floor(random() * 5) }, () => ({
    startMinute: random() < 0.2 ? 60 : Math.floor(pick(0, 600)),
    phases: Array.from({ length: random() < 0.5 ? 1 : 2 }, () => ({
      amount: spread(100, 500_000),
      decayPerMin: decay(),
    })),
  }));
  return { room, sources };
}

export const anyRoom: fc.Arbitrary<AirRoom> = fc.record({
  volumeM3: fc.double({ min: 5, max: 500, noNaN: true }),
  airflowM3PerMin: fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: 100, noNaN: true })),
  mixingFactor: fc.double({ min: 1, max: 10, noNaN: true }),
});

export const anySources: fc.Arbitrary<RoomSource[]> = fc.array(
  fc.record({
    startMinute: fc.integer({ min: 0, max: 600 }),
    phases: fc.array(
      fc.record({
        amount: fc.double({ min: 1, max: 1e6, noNaN: true }),
        decayPerMin: fc.double({ min: 0.0005, max: 2, noNaN: true }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  }),
  { minLength: 1, maxLength: 5 },
);

/** The same coats, with so many times the amount. */
export function timesAmount(sources: readonly RoomSource[], factor: number): RoomSource[] {
  return sources.map((source) => ({
    ...source,
    phases: source.phases.map((phase) => ({ ...phase, amount: phase.amount * factor })),
  }));
}
