import { describe, expect, it } from '@jest/globals';
import { balanceData, courserRotor, readingsWith } from '../../../../../seed/data/field-balance.ts';
import { answerOf, surprisesOf } from './answer.ts';
import type { EffectiveRun } from './field-balance.ts';

const data = balanceData['Q3C-76'] as NonNullable<(typeof balanceData)[string]>;
const pieces = [
  { part: 'bolt', mass: 8.4, onHand: 20 },
  { part: 'washer', mass: 2.1, onHand: 20 },
];
type Read = Pick<EffectiveRun, 'kind' | 'readings' | 'trial' | 'weights'>;
const runs = (turn: (phase: number) => number): EffectiveRun[] => {
  const read = (...weights: [number, number][]) =>
    readingsWith(courserRotor, weights).map((one) => ({ ...one, phase: String(turn(Number(one.phase))) }));
  const made: Read[] = [
    { kind: 'baseline', readings: read(), trial: null, weights: [] },
    { kind: 'trial', readings: read([12, 30]), trial: { mass: '12', place: 'H2' }, weights: [] },
    { kind: 'check', readings: read([20, 30]), trial: null, weights: [{ place: 'H2', angle: 30, mass: 20 }] },
  ];
  return made as EffectiveRun[];
};
const standing = { place: 'H2', angle: 30, partNumber: 'bolt', lotCode: 'L', pieces: 2, mass: 20, found: false };
const found = { ...standing, partNumber: null, lotCode: null, pieces: 1, mass: 25, found: true };

describe('what runs on an aircraft say', () => {
  it('is the same whichever way the instrument counts phase, once that is said', () => {
    const stock = { standing: [standing], pieces };
    const same = answerOf(
      { data, sheet: { counting: 'clockwise' } },
      runs((phase) => phase),
      stock,
    );
    const mirrored = answerOf(
      { data, sheet: { counting: 'counterclockwise' } },
      runs((phase) => (360 - phase) % 360),
      stock,
    );
    expect(mirrored.answer?.changes).toEqual(same.answer?.changes);
    expect(mirrored.answer?.beside).toEqual(same.answer?.beside);
    // Counted the wrong way, it asks for a weight elsewhere.
    const wrong = answerOf(
      { data, sheet: { counting: 'counterclockwise' } },
      runs((phase) => phase),
      stock,
    );
    expect(wrong.answer?.changes).not.toEqual(same.answer?.changes);
  });

  it('is a trim without another trial: what stands counts, and all anew is offered beside it', () => {
    const { answer } = answerOf(
      { data, sheet: { counting: 'clockwise' } },
      runs((phase) => phase),
      { standing: [standing], pieces },
    );
    // 24 g @ 214° is out of balance, 20 g @ 30° stand: 4.2 g at 53.6° are missing, within two decimals and whole degrees.
    expect(answer?.changes[0]?.mass).toBeCloseTo(4.2, 0);
    expect(answer?.beside.fillings.reduce((sum, { mass }) => sum + mass, 0)).toBeLessThan(9);
    expect(answer?.anew?.fillings.reduce((sum, { mass }) => sum + mass, 0)).toBeGreaterThan(20);
    expect(
      surprisesOf(
        { data, sheet: { counting: 'clockwise' } },
        runs((phase) => phase),
      ),
    ).toEqual([false, false, false]);
  });

  it('proposes no more for a place than what stands there leaves, nor more than there is', () => {
    const [baseline, trial] = runs((phase) => phase) as [EffectiveRun, EffectiveRun, EffectiveRun];
    const full = answerOf({ data, sheet: { counting: 'clockwise' } }, [baseline, trial], { standing: [found], pieces });
    expect(full.answer?.anew).toBeNull();
    const inH2 = full.answer?.beside.fillings.find(({ place }) => place === 'H2');
    expect(inH2?.mass ?? 0).toBeLessThanOrEqual(5);
    const none = answerOf({ data, sheet: { counting: 'clockwise' } }, [baseline, trial], { standing: [], pieces: [] });
    expect(none.answer?.beside.fillings).toEqual([]);
    expect(none.answer?.beside.residuals[0]?.mass).toBeCloseTo(none.answer?.changes[0]?.mass ?? 0, 9);
  });

  it('is nothing without a trial, with why where a trial changed nothing', () => {
    const [baseline, trial] = runs((phase) => phase) as [EffectiveRun, EffectiveRun, EffectiveRun];
    const stock = { standing: [], pieces };
    expect(answerOf({ data, sheet: { counting: 'clockwise' } }, [baseline], stock)).toEqual({
      answer: null,
      unanswered: null,
    });
    const idle = { ...trial, readings: baseline.readings };
    const said = answerOf({ data, sheet: { counting: 'clockwise' } }, [baseline, idle], stock);
    expect(said).toEqual({ answer: null, unanswered: 'The trial weight changed nothing: repeat with a larger one.' });
  });
});
