import { describe, expect, it } from 'vitest';
import { readAirflow } from '../../../client/format/read-airflow.ts';
import { readInUnit } from '../../../client/format/read-in-unit.ts';

const METRES = { m: 1, cm: 0.01, ft: 0.3048 } as const;

describe('a room size as it is typed', () => {
  it.each([
    ['5', 5],
    ['5 m', 5],
    ['5,5m', 5.5],
    ['450 cm', 4.5],
    // Exact: 0.3048 m to the foot.
    ['12 ft', 3.6576],
    ['', null],
  ])('%j is %d m', (typed, metres) => {
    expect(readInUnit(typed, METRES, 'm', { least: 0.1, most: 1000 })).toEqual({ ok: true, value: metres });
  });

  it('is in feet where the project is', () => {
    expect(readInUnit('10', METRES, 'ft', {})).toEqual({ ok: true, value: 3.048 });
  });

  it.each(['0', '2000', 'wide', '1,220'])('%j is refused', (typed) => {
    expect(readInUnit(typed, METRES, 'm', { least: 0.1, most: 1000 }).ok).toBe(false);
  });
});

describe('an airflow as it is typed', () => {
  it.each([
    ['540', 'metric', 540],
    ['540 m3/h', 'us', 540],
    // 60 x 0.3048 cubed = 1.69901079552 m3/h in one cubic foot per minute.
    ['100', 'us', 169.901079552],
    ['100 cfm', 'metric', 169.901079552],
    ['0', 'metric', 0],
    ['', 'us', null],
  ] as const)('%j in a %s project is %d m3/h', (typed, units, m3PerHour) => {
    expect(readAirflow(typed, units)).toEqual({ ok: true, value: m3PerHour });
  });

  it('refuses what is not one', () => {
    expect(readAirflow('-5', 'metric').ok).toBe(false);
    expect(readAirflow('strong', 'us').ok).toBe(false);
  });
});
