import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { judgeMedia, type MediaLimits, mediaStanding, netArcHeight, onOtherStrips } from './index.ts';

const limits: MediaLimits = {
  sieves: [
    { name: 'coarse', high: 10 },
    { name: 'fine', low: 85 },
  ],
  mostBroken: 12,
};
const good = {
  sieves: [
    { name: 'coarse', percent: 10 },
    { name: 'fine', percent: 85 },
  ],
  broken: 12,
  clean: true,
};

describe('a check of media', () => {
  it('passes on every limit', () => {
    expect(judgeMedia(limits, good)).toEqual({ passed: true, reasons: [] });
  });

  it.each<[string, Partial<typeof good>, string[]]>([
    [
      'too coarse',
      { sieves: [{ name: 'coarse', percent: 10.1 }, ...good.sieves.slice(1)] },
      ['coarse: 10.1 % is outside 0 to 10 %.'],
    ],
    [
      'too fine',
      { sieves: [...good.sieves.slice(0, 1), { name: 'fine', percent: 84.9 }] },
      ['fine: 84.9 % is outside 85 to 100 %.'],
    ],
    ['not read', { sieves: good.sieves.slice(1) }, ['coarse: not read.']],
    ['read twice', { sieves: [...good.sieves, ...good.sieves.slice(1)] }, ['fine: read more than once.']],
    ['broken', { broken: 13 }, ['13 broken or deformed in the field, 12 allowed.']],
    ['contaminated', { clean: false }, ['It is contaminated.']],
  ])('says what is wrong: %s', (_, changes, reasons) => {
    expect(judgeMedia(limits, { ...good, ...changes })).toEqual({ passed: false, reasons });
  });

  it.each<[string, MediaLimits, object]>([
    ['no-sieves', { ...limits, sieves: [] }, {}],
    ['not-a-count', limits, { broken: -1 }],
    ['not-a-count', { ...limits, mostBroken: 1.5 }, {}],
    ['not-a-percent', limits, { sieves: [{ name: 'coarse', percent: 101 }, ...good.sieves.slice(1)] }],
  ])('refuses %s', (code, given, changes) => {
    expect(() => judgeMedia(given, { ...good, ...changes })).toThrow(expect.objectContaining({ code }));
  });

  it('never passes what is worse than something that failed', () => {
    const percent = fc.integer({ min: 0, max: 100 });
    fc.assert(
      fc.property(percent, percent, fc.nat(30), fc.nat(20), (coarse, fine, broken, more) => {
        const read = (extra: number) => ({
          sieves: [
            { name: 'coarse', percent: coarse },
            { name: 'fine', percent: Math.max(0, fine - extra) },
          ],
          ...{ broken: broken + extra, clean: true },
        });
        if (!judgeMedia(limits, read(0)).passed) expect(judgeMedia(limits, read(more)).passed).toBe(false);
      }),
    );
  });
});

describe('how media stands', () => {
  const checked = { on: '2026-03-01', passed: true };
  const every = { everyDays: 30, checked };

  it('holds through its last good day', () => {
    expect(mediaStanding({ ...every, today: '2026-03-31' })).toEqual({ state: 'good', dueOn: '2026-03-31' });
    expect(mediaStanding({ ...every, today: '2026-04-01' }).state).toBe('overdue');
  });
  it('holds up to its last good hour, whichever ends first', () => {
    const byHours = { ...every, everyHours: 8, checked: { ...checked, atHours: 100 }, today: '2026-03-02' };
    expect(mediaStanding({ ...byHours, hours: 108 })).toEqual({ state: 'good', dueOn: '2026-03-31', dueAtHours: 108 });
    expect(mediaStanding({ ...byHours, hours: 108.1 }).state).toBe('overdue');
    expect(mediaStanding({ ...byHours, hours: 100, today: '2026-04-01' }).state).toBe('overdue');
    expect(mediaStanding(byHours).state).toBe('good');
    expect(mediaStanding({ ...byHours, checked }).state).toBe('overdue');
  });
  it('does not hold without a check or after one that failed', () => {
    expect(mediaStanding({ everyDays: 30, today: '2026-03-01' })).toEqual({ state: 'unchecked' });
    expect(mediaStanding({ ...every, checked: { ...checked, passed: false }, today: '2026-03-01' }).state).toBe(
      'failed',
    );
  });
});

describe('a strip', () => {
  const strip = { strip: 'A', unit: 'in' } as const;
  it('is used as bowed as is allowed and no more, to either side', () => {
    expect(netArcHeight({ ...strip, before: '-0.0010', after: '0.0080' })).toBe('0.0090');
    for (const before of ['0.0011', '-0.0011'])
      expect(() => netArcHeight({ ...strip, before, after: '0.0080' })).toThrow(
        expect.objectContaining({ code: 'pre-bowed' }),
      );
    expect(netArcHeight({ ...strip, strip: 'C', before: '0.0015', after: '0.0080' })).toBe('0.0065');
    expect(() => netArcHeight({ ...strip, before: '', after: '0.0080' })).toThrow(
      expect.objectContaining({ code: 'not-finite', path: 'before' }),
    );
  });
  it('gives back its net arc height whatever it was bowed by', () => {
    const tenths = fc.integer({ min: -10, max: 10 });
    fc.assert(
      fc.property(tenths, fc.integer({ min: 1, max: 240 }), (bow, net) => {
        const text = (value: number) => (value / 10_000).toFixed(4);
        expect(netArcHeight({ ...strip, before: text(bow), after: text(bow + net) })).toBe(text(net));
      }),
    );
  });
  it('says nothing of other strips without an arc height', () => {
    expect(() => onOtherStrips('A', 0, 'in')).toThrow(expect.objectContaining({ code: 'not-finite' }));
  });
});
