import { describe, expect, it } from '@jest/globals';
import { noDraft, verdict } from './media-verdict.ts';
import { namedParameters, parametersIn } from './ParameterFields.tsx';
import { sievesFrom, stripsFrom } from './peening.ts';

describe('strips as they are pasted', () => {
  it('are a time and an arc height a line, parted by tab, comma or space', () => {
    expect(stripsFrom('2\t0.0058\n4, 0.0083\n\n8 0.0098')).toEqual([
      { time: '2', arcHeight: '0.0058' },
      { time: '4', arcHeight: '0.0083' },
      { time: '8', arcHeight: '0.0098' },
    ]);
  });
  it('are refused where a line is something else', () => {
    expect(stripsFrom('2 0.0058 0.1')).toBeNull();
    expect(stripsFrom('two 0.0058')).toBeNull();
    expect(stripsFrom('')).toEqual([]);
  });
});

describe('limits by sieve as they are typed', () => {
  it('are a name, the least and the most percent a line, either left empty', () => {
    expect(sievesFrom('on 0.0331 in, , 0\n\non 0.0165 in and above, 85,')).toEqual([
      { name: 'on 0.0331 in', high: '0' },
      { name: 'on 0.0165 in and above', low: '85' },
    ]);
  });
  it('are refused where a line is something else', () => {
    expect(sievesFrom('on 0.0331 in, 10')).toBeNull();
    expect(sievesFrom(', 0, 10')).toBeNull();
    expect(sievesFrom('on 0.0331 in, a, 10')).toBeNull();
  });
});

describe('the set-up of a program', () => {
  it('keeps the rows that were given a value, with their units', () => {
    const drafts = namedParameters.map((one) => (one.name === 'air pressure' ? { ...one, value: ' 38 ' } : one));
    expect(parametersIn(drafts)).toEqual([{ name: 'air pressure', value: '38', unit: 'psi' }]);
    expect(parametersIn(namedParameters)).toEqual([]);
  });
});

describe('a check of media while it is typed', () => {
  const media = {
    limits: { sieves: [{ name: 'fine', low: '85' }], mostBroken: 12, field: 'half an inch square' },
    everyHours: null,
  };
  const read = { ...noDraft, percents: { fine: '91' }, broken: '3', clean: 'clean' as const };
  it('is judged once everything is read, and not before', () => {
    expect(verdict(media, noDraft)).toBeUndefined();
    expect(verdict(media, { ...read, clean: null })).toBeUndefined();
    expect(verdict({ ...media, everyHours: '8' }, read)).toBeUndefined();
    expect(verdict(media, { ...read, percents: { fine: 'x' } })).toBeUndefined();
    expect(verdict(media, read)).toEqual({ passed: true, reasons: [] });
    expect(verdict(media, { ...read, broken: '13' })?.passed).toBe(false);
  });
});
