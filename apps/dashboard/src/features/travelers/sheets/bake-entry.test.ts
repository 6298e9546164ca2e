import { describe, expect, it } from '@jest/globals';
import { bakeInput } from './bake-entry.ts';

describe('a bake as it is written down', () => {
  const chart = '2026-03-01 12:20 350\n2026-03-02, 11:20, 349.5';
  it('is a beginning and readings of date, time and temperature', () => {
    const entry = bakeInput({ startedAt: '2026-03-01T12:00', chart });
    expect(entry?.chart.map(({ temperature }) => temperature)).toEqual(['350', '349.5']);
    expect(entry?.startedAt).toBe(new Date('2026-03-01T12:00').toISOString());
  });
  it('is nothing while a line or the beginning cannot be read', () => {
    expect(bakeInput({ startedAt: '', chart })).toBeUndefined();
    expect(bakeInput({ startedAt: '2026-03-01T12:00', chart: '12:20 350' })).toBeUndefined();
    expect(bakeInput({ startedAt: '2026-03-01T12:00', chart: '2026-03-01 12:20 350' })).toBeUndefined();
  });
});
