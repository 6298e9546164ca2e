import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../dates/index.ts';
import { awayOnItsOwn, itemTimes, type OnRecord, piecesOfAssembly, piecesThrough, type Sat } from './index.ts';

const start = '2025-01-01';
const on = (n: number) => addDays(start, n);
const sat = (parentId: string, from: number, to?: number): Sat => ({
  ...{ parentId, position: 'place', from: on(from), endsUnseen: false },
  ...(to === undefined ? {} : { to: on(to) }),
});
const nothing: OnRecord = { sat: [], pieces: [], away: [] };

/** A unit on one aircraft from one day to another, its meter showing ten tenths more each day. */
const flying = (from: number, to: number, aircraftId: string): OnRecord => ({
  ...nothing,
  pieces: piecesOfAssembly({
    intervals: [
      {
        ...{ id: `${aircraftId} ${from}`, aircraftId, meter: 'tachometer' },
        ...{ from: on(from), fromTenths: from * 10, to: on(to), toTenths: to * 10 },
      },
    ],
    changes: [],
    away: [],
  }),
});
const flownOf = (record: Record<string, OnRecord>, readings: { aircraftId: string; day: number }[] = []) => {
  const papers = [
    { date: start, kind: 'declared', basis: 'declared', sinceNewTenths: 0, sinceOverhaulTenths: 'unknown' } as const,
  ];
  return itemTimes({
    ...{ asOf: on(400), papers, pieces: piecesThrough('part', (id) => record[id] ?? nothing) },
    readings: readings.map(({ aircraftId, day }) => ({
      ...{ aircraftId, meter: 'tachometer', no: 1, date: on(day), tenths: day * 10 },
    })),
  }).sinceNew;
};

describe('a part flies where what it sits in flew', () => {
  it('through every level: a clamp in a blade that moved from one propeller to another', () => {
    const record = {
      part: { ...nothing, sat: [sat('blade', 0)] },
      blade: { ...nothing, sat: [sat('one', 0, 100), sat('other', 100)] },
      one: flying(10, 60, 'a'),
      other: flying(120, 150, 'b'),
    };
    expect(flownOf(record)).toMatchObject({ tenths: 500 + 300, atLeastTenths: 800 });
    const [first] = piecesThrough('part', (id) => (record as Record<string, OnRecord>)[id] ?? nothing);
    expect(first?.path.map(({ parentId }) => parentId)).toEqual(['blade', 'one']);
  });

  it('is not known where any level went unseen, with what the levels know at least', () => {
    const record = {
      part: { ...nothing, sat: [sat('head', 0)] },
      head: { ...nothing, sat: [sat('unit', 0, 40)] },
      unit: flying(10, 60, 'a'),
    };
    expect(flownOf(record)).toMatchObject({ tenths: 'unknown', atLeastTenths: 0 });
    expect(flownOf(record, [{ aircraftId: 'a', day: 35 }])).toMatchObject({ tenths: 'unknown', atLeastTenths: 250 });
  });

  it('may have held what holds it now at another time, never at the same', () => {
    const swapped = {
      part: { ...nothing, sat: [sat('twin', 0, 10)] },
      twin: { ...nothing, sat: [sat('part', 10, 20)] },
    };
    expect(flownOf(swapped)).toMatchObject({ tenths: 0 });
    const ring = { part: { ...nothing, sat: [sat('twin', 0)] }, twin: { ...nothing, sat: [sat('part', 5)] } };
    expect(() => flownOf(ring)).toThrow('A part cannot sit in what sits in it.');
  });

  it('is out of the shop by itself only while it sits in nothing', () => {
    expect(awayOnItsOwn([{ from: on(0), to: on(50) }], [sat('unit', 10, 20), sat('unit', 30)])).toEqual([
      { from: on(0), to: on(10) },
      { from: on(20), to: on(30) },
    ]);
  });

  it('on any number of levels has what the outermost flew meanwhile; splitting any stay changes no total', () => {
    const chain = fc.record({
      levels: fc.integer({ min: 1, max: 6 }),
      split: fc.integer({ min: 0, max: 6 }),
      at: fc.integer({ min: 61, max: 200 }),
    });
    fc.assert(
      fc.property(chain, ({ levels, split, at }) => {
        const ids = ['part', ...Array.from({ length: levels }, (_, i) => `level ${i + 1}`)];
        const record = Object.fromEntries(
          ids.map((id, i): [string, OnRecord] => {
            const parent = ids[i + 1];
            if (parent === undefined) return [id, flying(10, 60, 'a')];
            const stays = i === split ? [sat(parent, 0, at), sat(parent, at)] : [sat(parent, 0)];
            return [id, { ...nothing, sat: stays }];
          }),
        );
        expect(flownOf(record)).toMatchObject({ tenths: 500, atLeastTenths: 500 });
      }),
    );
  });
});
