import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { accuracyRatio, guardBand, judgeCalibration } from './index.ts';

const point = { nominal: 1, asFound: 1.0003, asLeft: 1.0001, allowed: 0.0005 };

describe('an instrument that comes back from calibration', () => {
  it('was good when every point was within its allowed error, the largest allowed error included', () => {
    expect(judgeCalibration([point])).toMatchObject({ asFound: 'good', asLeft: 'good', worstFound: 0.0003 });
    expect(judgeCalibration([{ ...point, asFound: 1.0005 }]).asFound).toBe('good');
    expect(judgeCalibration([{ ...point, asFound: 0.9995 }]).asFound).toBe('good');
  });

  it('was out when one point was not, either way, and says the worst', () => {
    const found = judgeCalibration([point, { ...point, nominal: 2, asFound: 1.9993, asLeft: 2 }]);
    expect(found).toEqual({ asFound: 'out', asLeft: 'good', worstFound: -0.0007, worstLeft: 0.0001 });
    expect(judgeCalibration([{ ...point, asLeft: 1.01 }])).toMatchObject({ asFound: 'good', asLeft: 'out' });
  });

  it('is not judged without points, readings or an allowed error', () => {
    expect(() => judgeCalibration([])).toThrow(/one point/);
    expect(() => judgeCalibration([{ ...point, asLeft: Number.NaN }])).toThrow(/number/);
    expect(() => judgeCalibration([{ ...point, allowed: 0 }])).toThrow(/more than 0/);
  });

  it('is out exactly when some error is larger than allowed', () => {
    const thousandth = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(thousandth(-50, 50), thousandth(1, 50)), { minLength: 1, maxLength: 8 }),
        (given) => {
          const points = given.map(([error, allowed], index) => ({
            ...{ nominal: index, asFound: index + error, asLeft: index, allowed },
          }));
          const isOut = given.some(
            ([error, allowed]) => Math.round(Math.abs(error) * 1000) > Math.round(allowed * 1000),
          );
          expect(judgeCalibration(points).asFound === 'out').toBe(isOut);
        },
      ),
    );
  });
});

describe('the ratio of tolerance to uncertainty', () => {
  it('is the half span over the expanded uncertainty, the same as guard bands use', () => {
    expect(accuracyRatio({ low: 4.124, high: 4.1275, expandedUncertainty: 0.0002 })).toBe(8.75);
    const limits = { low: -1, high: 1 };
    const { ratio } = guardBand({ limits, expandedUncertainty: 0.25, method: 'none' });
    expect(accuracyRatio({ ...limits, expandedUncertainty: 0.25 })).toBe(ratio);
    expect(() => accuracyRatio({ ...limits, expandedUncertainty: 0 })).toThrow(/more than 0/);
    expect(() => accuracyRatio({ low: 1, high: 1, expandedUncertainty: 1 })).toThrow(/both sides/);
  });
});
