import { describe, expect, it } from '@jest/globals';
import { WedgeReader } from './wedge.ts';

/** Presses the keys with the same pause between them; what the last one answered. */
function type(reader: WedgeReader, keys: readonly string[], gapMs: number, startMs = 0): string | undefined {
  return keys.map((key, place) => reader.press(key, startMs + place * gapMs)).at(-1);
}

describe('a barcode wedge', () => {
  it('is known by its speed and its closing Enter, modifiers between the characters notwithstanding', () => {
    expect(type(new WedgeReader(), ['Shift', 'L', 'O', 'T', '-', '0', '0', '0', '1', '2', 'Enter'], 8)).toBe(
      'LOT-00012',
    );
    expect(type(new WedgeReader(), [...'0412', 'Tab'], 20)).toBe('0412');
  });

  it('is not a person typing, however steadily', () => {
    expect(type(new WedgeReader(), [...'LOT-00012', 'Enter'], 120)).toBeUndefined();
  });

  it('is not a person who pauses before Enter', () => {
    const reader = new WedgeReader();
    type(reader, [...'0412'], 10);
    expect(reader.press('Enter', 500)).toBeUndefined();
  });

  it('is not Enter alone, nor two keys hit together', () => {
    expect(type(new WedgeReader(), ['Enter'], 1)).toBeUndefined();
    expect(type(new WedgeReader(), ['a', 'b', 'Enter'], 5)).toBeUndefined();
  });

  it('leaves nothing behind for the next scan', () => {
    const reader = new WedgeReader();
    type(reader, [...'x'], 10);
    expect(type(reader, [...'0412', 'Enter'], 10, 1000)).toBe('0412');
    expect(type(reader, [...'0413', 'Enter'], 10, 1060)).toBe('0413');
  });
});
