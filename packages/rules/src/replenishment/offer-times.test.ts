import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { offerHolds, placeOffer } from './index.ts';

const offer = (validFrom: string | null, validUntil: string | null) => ({ validFrom, validUntil });

describe('offers of one supplier and part, one after the other', () => {
  it('ends what began earlier the day before, also over the end of a year', () => {
    const now = offer(null, null);
    expect(placeOffer([now], offer('2027-01-01', null))).toEqual({
      ends: [{ of: now, validUntil: '2026-12-31' }],
      inTheWay: [],
    });
  });

  it('leaves alone what ends before or begins after', () => {
    const others = [offer('2026-01-01', '2026-05-31'), offer('2026-09-01', null)];
    expect(placeOffer(others, offer('2026-06-01', '2026-08-31'))).toEqual({ ends: [], inTheWay: [] });
  });

  it('does not shorten what begins with it or after it', () => {
    const later = offer('2026-09-01', null);
    expect(placeOffer([later], offer('2026-06-01', null)).inTheWay).toEqual([later]);
    expect(placeOffer([later], offer('2026-09-01', null)).inTheWay).toEqual([later]);
    expect(placeOffer([later], offer(null, null)).inTheWay).toEqual([later]);
  });

  it('leaves one price on each day, whatever is put in after what', () => {
    const day = fc.integer({ min: 1, max: 60 }).map((at) => new Date(Date.UTC(2026, 0, at)).toISOString().slice(0, 10));
    const time = fc
      .tuple(fc.option(day), fc.option(day))
      .filter(([from, until]) => from === null || until === null || from <= until)
      .map(([from, until]) => offer(from, until));
    fc.assert(
      fc.property(fc.array(time, { maxLength: 8 }), day, (wanted, on) => {
        let kept: ReturnType<typeof offer>[] = [];
        for (const one of wanted) {
          const { ends, inTheWay } = placeOffer(kept, one);
          if (inTheWay.length > 0) continue;
          const ended = new Map(ends.map(({ of, validUntil }) => [of, validUntil]));
          kept = [...kept.map((each) => ({ ...each, validUntil: ended.get(each) ?? each.validUntil })), one];
        }
        expect(kept.filter((each) => offerHolds(each, on)).length).toBeLessThanOrEqual(1);
      }),
    );
  });
});
