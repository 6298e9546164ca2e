import { describe, expect, it } from '@jest/globals';
import { asStepCode, isClockOut, minuteWords } from './clock.ts';

describe('a scan at the bench', () => {
  it('is of a step, ends the clock, or is somebody else’s', () => {
    expect(asStepCode('tr-00012.a3f2c4')).toBe('TR-00012.A3F2C4');
    for (const other of ['TR-00012', 'TR-00012.A3F2C', 'LOT-00012', 'HB-ABC', 'CLOCK-OUT'])
      expect(asStepCode(other)).toBeUndefined();
    expect([isClockOut('clock-out'), isClockOut('CLOCK')]).toEqual([true, false]);
  });

  it.each([
    [0, '0 min'],
    [59, '59 min'],
    [60, '1 h'],
    [65, '1 h 05'],
    [725, '12 h 05'],
  ])('says %d minutes as %s', (minutes, words) => expect(minuteWords(minutes)).toBe(words));
});
