import { describe, expect, it } from '@jest/globals';
import { stripsFrom } from './peening.ts';

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
