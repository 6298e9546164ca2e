import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { averageAndRange, fProbability, type StudyCell, studyAnova } from './index.ts';

const cell = (appraiser: string, part: string, ...readings: number[]): StudyCell => ({ appraiser, part, readings });
const small = [cell('A', '1', 1, 1.1), cell('A', '2', 2, 2.1), cell('B', '1', 1.2, 1.1), cell('B', '2', 2, 2.2)];

describe('a gauge study', () => {
  it.each([
    ['too small', [cell('A', '1', 1, 2), cell('A', '2', 1, 2)], 'study-too-small'],
    ['with a cell missing', small.slice(0, 3), 'cell-missing'],
    ['with one twice', [...small, cell('A', '1', 1, 2)], 'cell-twice'],
    ['with fewer trials somewhere', [...small.slice(0, 3), cell('B', '2', 1)], 'trials-differ'],
    ['with what is no number', [...small.slice(0, 3), cell('B', '2', 1, Number.NaN)], 'not-a-reading'],
  ])('%s is refused', (_, cells, code) => {
    for (const method of [averageAndRange, studyAnova])
      expect(() => method(cells)).toThrow(expect.objectContaining({ code }));
  });

  it('beyond the tables is for the analysis of variance alone', () => {
    const four = small.map((one) => ({ ...one, readings: [...one.readings, 1.5, 1.6] }));
    expect(() => averageAndRange(four)).toThrow(expect.objectContaining({ code: 'study-too-large' }));
    expect(studyAnova(four).total).toBeGreaterThan(0);
  });

  it('of a gauge too coarse to show any spread says unknown, not infinitely good', () => {
    const same = small.map((one) => ({ ...one, readings: [Number(one.part), Number(one.part)] }));
    expect(averageAndRange(same)).toMatchObject({ gauge: 0, categories: 'unknown' });
    expect(studyAnova(same)).toMatchObject({ gauge: 0, categories: 'unknown' });
  });

  it('is compared with a tolerance where there is one', () => {
    const study = averageAndRange(small, 2);
    expect(study.percentOfTolerance).toBeCloseTo((6 * study.gauge) / 0.02, 9);
    expect(() => averageAndRange(small, 0)).toThrow(expect.objectContaining({ code: 'not-a-tolerance' }));
  });

  const studies = fc
    .tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 3 }))
    .chain(([appraisers, parts, trials]) =>
      fc
        .array(fc.integer({ min: -500, max: 500 }), {
          minLength: appraisers * parts * trials,
          maxLength: appraisers * parts * trials,
        })
        .map((all) =>
          Array.from({ length: appraisers * parts }, (_, index) =>
            cell(
              `appraiser ${Math.floor(index / parts)}`,
              `part ${index % parts}`,
              ...all.slice(index * trials, (index + 1) * trials).map((value) => value / 100),
            ),
          ),
        ),
    );

  it('adds up: squares to the whole, components to the total; in another unit everything is larger by the same factor', () => {
    fc.assert(
      fc.property(studies, (cells) => {
        const study = studyAnova(cells);
        const all = cells.flatMap(({ readings }) => [...readings]);
        const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
        const whole = all.reduce((sum, value) => sum + (value - mean) ** 2, 0);
        expect(study.table.reduce((sum, { squares }) => sum + squares, 0)).toBeCloseTo(whole, 6);
        expect(study.gauge ** 2 + study.parts ** 2).toBeCloseTo(study.total ** 2, 8);
        const inMillimetres = cells.map((one) => ({ ...one, readings: one.readings.map((value) => value * 25.4) }));
        expect(averageAndRange(inMillimetres).gauge).toBeCloseTo(averageAndRange(cells).gauge * 25.4, 6);
        expect(studyAnova(inMillimetres).percent.gauge).toBeCloseTo(study.percent.gauge, 6);
      }),
    );
  });
});

it('the F distribution goes from certain to impossible, and an F turned round is its mirror', () => {
  expect(fProbability(0, 3, 7)).toBe(1);
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 1, max: 40 }),
      (f, a, b) => {
        const probability = fProbability(f, a, b);
        expect(probability).toBeGreaterThanOrEqual(0);
        expect(probability).toBeLessThanOrEqual(1);
        expect(fProbability(1 / f, b, a)).toBeCloseTo(1 - probability, 9);
        expect(fProbability(f * 1.1, a, b)).toBeLessThanOrEqual(probability + 1e-12);
      },
    ),
  );
  expect(() => fProbability(-1, 1, 1)).toThrow(/positive/);
});
