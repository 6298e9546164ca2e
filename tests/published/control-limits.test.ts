import { describe, expect, it } from '@jest/globals';
import { controlLimits } from '../../packages/rules/src/flow/index.ts';

describe('individuals and moving range', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rate of ten batches; limits as published there.
  it('has the limits of the handbook’s flow rate', () => {
    const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const limits = controlLimits(flow);
    expect(limits.mean).toBeCloseTo(50.81, 10);
    expect(limits.movingRangeMean).toBeCloseTo(1.8778, 4);
    expect(limits.upper).toBeCloseTo(55.8041, 4);
    expect(limits.lower).toBeCloseTo(45.8159, 4);
    expect(limits.rangeUpper).toBeCloseTo(6.1347, 6);
    expect(limits.signals).toEqual([]);
  });

  // A quality handbook's table of 25 values (data as published there; limits recomputed from 3/1.128 and 3.267).
  it('has the limits of a handbook’s 25 values', () => {
    const values = [
      110, 103, 97, 96, 105, 110, 100, 93, 90, 103, 97, 103, 90, 97, 99, 106, 90, 96, 109, 90, 91, 108, 96, 101, 96,
    ];
    const limits = controlLimits(values);
    expect(limits.mean).toBeCloseTo(99.04, 10);
    expect(limits.movingRangeMean).toBeCloseTo(196 / 24, 10);
    expect([limits.lower, limits.upper]).toEqual([expect.closeTo(77.3201, 4), expect.closeTo(120.7599, 4)]);
    expect(limits.rangeUpper).toBeCloseTo(26.6805, 4);
  });

  // d2 and D4 of two values: printed tables, and the exact 2/√π, 1 + 3·d3/d2 with d3 = √(2 − 4/π).
  it('uses the constants of two values as tables print them', () => {
    const d2 = 2 / Math.sqrt(Math.PI);
    const d4 = 1 + (3 * Math.sqrt(2 - 4 / Math.PI)) / d2;
    const { mean, upper, rangeUpper } = controlLimits([0, 1]);
    expect((upper - mean) / 3).toBeCloseTo(1 / d2, 3);
    expect(rangeUpper).toBeCloseTo(d4, 2);
  });
});
