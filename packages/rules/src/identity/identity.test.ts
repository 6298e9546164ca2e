import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { normaliseSerial } from './index.ts';

describe('a serial number', () => {
  test.each([
    ['  qa  007 ', 'QA 007'],
    ['0012', '0012'],
    ['b-17\t x/3', 'B-17 X/3'],
    ['u\u0308-1', '\u00dc-1'],
  ])('%j is kept as %j', (typed, kept) => {
    expect(normaliseSerial(typed)).toBe(kept);
  });

  test.each(['', '   ', '\n'])('%j is none', (typed) => {
    expect(() => normaliseSerial(typed)).toThrow(expect.objectContaining({ name: 'RuleError', code: 'no-serial' }));
  });

  test('what is no text is refused', () => {
    expect(() => normaliseSerial(12 as unknown as string)).toThrow(expect.objectContaining({ code: 'no-serial' }));
  });

  test.each(['A\u200b1', 'A\u001d1', 'A\u00ad1', '\u202eA1'])(
    'characters that cannot be seen are refused: %j',
    (typed) => {
      expect(() => normaliseSerial(typed)).toThrow(expect.objectContaining({ code: 'unreadable-serial' }));
    },
  );

  test('done twice is done once, and case and outer blanks never matter', () => {
    const visible = fc.string({ unit: 'grapheme', minLength: 1 }).filter((s) => s.trim() !== '' && !/\p{C}/u.test(s));
    fc.assert(
      fc.property(visible, (typed) => {
        const kept = normaliseSerial(typed);
        expect(normaliseSerial(kept)).toBe(kept);
        expect(normaliseSerial(`  ${typed.toUpperCase()}\t`)).toBe(kept);
      }),
    );
  });
});
