import { describe, expect, it } from 'vitest';
import { formatDegrees } from '../../../server/planning/display/format-degrees.ts';

describe('formatDegrees', () => {
  // 20 x 1.8 + 32 = 68; 18.3 x 1.8 + 32 = 64.94; -40 is the same on both scales; 5 x 1.8 = 9.
  it.each([
    [20, 'us', 'temperature', '68 °F'],
    [18.3, 'us', 'temperature', '64.9 °F'],
    [-40, 'us', 'temperature', '-40 °F'],
    [5, 'us', 'difference', '9 °F'],
    [18.34, 'metric', 'temperature', '18.3 °C'],
    [5, 'metric', 'difference', '5 °C'],
  ] as const)('prints %d C in %s as a %s', (valueC, units, kind, text) => {
    expect(formatDegrees(valueC, units, kind)).toBe(text);
  });
});
