import { judge } from '@hubwright/rules/limits';
import { describe, expect, test } from '@jest/globals';

// ASTM E29, "Using Significant Digits in Test Data to Determine Conformance with Specifications": examples of the rounding and the
// absolute method. The table is from memory of the practice; every line was recomputed with exact decimals.
describe('ASTM E29 examples', () => {
  test.each([
    // observed, limit, decimals, rounded, conforms by rounding, conforms by the absolute method
    [56.4, { low: 57 }, 0, 56, false, false],
    [56.5, { low: 57 }, 0, 56, false, false],
    [56.6, { low: 57 }, 0, 57, true, false],
    [40.4, { high: 40 }, 0, 40, true, false],
    [40.5, { high: 40 }, 0, 40, true, false],
    [40.6, { high: 40 }, 0, 41, false, false],
    [0.54, { high: 0.5 }, 1, 0.5, true, false],
    [0.55, { high: 0.5 }, 1, 0.6, false, false],
    [0.56, { high: 0.5 }, 1, 0.6, false, false],
    [35940, { low: 36000 }, -2, 35900, false, false],
    [35950, { low: 36000 }, -2, 36000, true, false],
    [35960, { low: 36000 }, -2, 36000, true, false],
    [59940, { low: 60000 }, -2, 59900, false, false],
    [59950, { low: 60000 }, -2, 60000, true, false],
    [59960, { low: 60000 }, -2, 60000, true, false],
  ])('%p against %j at %i decimals', (observed, limit, decimals, rounded, byRounding, byAbsolute) => {
    expect(judge(observed, { ...limit, decimals, method: 'rounding' })).toMatchObject({
      pass: byRounding,
      compared: rounded,
    });
    expect(judge(observed, { ...limit, decimals, method: 'absolute' })).toMatchObject({
      pass: byAbsolute,
      compared: observed,
    });
  });
});
