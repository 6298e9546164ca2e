import { describe, expect, it } from '@jest/globals';
import { type ItemTimesInput, itemTimes, type Paper, piecesOfAssembly } from './index.ts';
import { piecesOfPart } from './pieces.ts';

const onA = { id: 'i', aircraftId: 'a', meter: 'tachometer', from: '2025-02-01', fromTenths: 1000 };
const paper = (date: string, change: Partial<Paper> = {}): Paper => ({
  ...{ date, kind: 'declared', basis: 'declared', sinceNewTenths: 500, sinceOverhaulTenths: 'unknown' },
  ...change,
});
const reading = (date: string, tenths: number, no = 1) => ({ aircraftId: 'a', meter: 'tachometer', no, date, tenths });
const assembly = (given: Partial<Parameters<typeof piecesOfAssembly>[0]>) =>
  piecesOfAssembly({ intervals: [], changes: [], away: [], ...given });
const times = (change: Partial<ItemTimesInput>) =>
  itemTimes({ asOf: '2026-01-01', papers: [paper('2025-01-01')], pieces: [], readings: [], ...change });
const closed = { ...onA, to: '2025-06-01', toTenths: 1200 };

describe('the times of an item', () => {
  it('add flying on two propellers to what was declared (the worked example)', () => {
    const other = {
      ...closed,
      id: 'j',
      aircraftId: 'b',
      from: '2025-07-01',
      fromTenths: 0,
      to: '2025-08-01',
      toTenths: 300,
    };
    const first = piecesOfPart(
      { from: '2025-01-01', to: '2025-06-10', endsUnseen: false },
      { pieces: assembly({ intervals: [closed] }), away: [] },
    );
    const second = piecesOfPart(
      { from: '2025-06-10', endsUnseen: false },
      { pieces: assembly({ intervals: [other] }), away: [] },
    );
    const answer = times({ papers: [paper('2025-01-01', { sinceNewTenths: 1000 })], pieces: [...first, ...second] });
    expect(answer.sinceNew).toMatchObject({ tenths: 1500, atLeastTenths: 1500 });
    expect(answer.sinceOverhaul).toMatchObject({ tenths: 'unknown', atLeastTenths: 500 });
  });

  it('go on over a replaced meter, and are unknown where the old one was not read', () => {
    const change = { aircraftId: 'a', meter: 'tachometer', on: '2025-04-01', oldTenths: 1100, newTenths: 0 };
    const readings = [reading('2025-09-01', 70, 2)];
    const pieces = assembly({ intervals: [onA], changes: [change] });
    expect(times({ pieces, readings }).sinceNew.tenths).toBe(500 + 100 + 70);
    const unread = assembly({ intervals: [onA], changes: [{ ...change, oldTenths: 'unknown' as const }] });
    expect(times({ pieces: unread, readings: [...readings, reading('2025-03-01', 1040)] }).sinceNew).toMatchObject({
      tenths: 'unknown',
      atLeastTenths: 500 + 40 + 70,
    });
  });

  it('are not known while nobody reported what it did out of the shop', () => {
    const away = [{ from: '2025-02-01', to: undefined }];
    expect(times({ pieces: assembly({ away }) }).sinceNew).toMatchObject({ tenths: 'unknown', atLeastTenths: 500 });
    expect(times({ pieces: assembly({ away, intervals: [closed] }) }).sinceNew.tenths).toBe(700);
  });

  it('go on from what an overhaul says of time since new where nothing else is known, and never ask about it', () => {
    const overhaul = paper('2025-01-20', {
      kind: 'overhaul',
      basis: 'overhaul',
      sinceNewTenths: 20_000,
      sinceOverhaulTenths: 0,
    });
    const unknown = paper('2025-01-01', { sinceNewTenths: 'unknown' });
    const pieces = assembly({ intervals: [closed] });
    const answer = times({ papers: [unknown, overhaul], pieces });
    expect(answer).toMatchObject({
      sinceNew: { tenths: 20_200, start: { date: '2025-01-20' } },
      sinceOverhaul: { tenths: 200 },
    });
    const known = times({ papers: [paper('2025-01-01'), overhaul], pieces });
    expect(known).toMatchObject({ sinceNew: { tenths: 700 }, doubts: [] });
  });

  it('take a declaration only where there is no answer, a signed paper always, and doubt the rest', () => {
    const pieces = assembly({ intervals: [closed] });
    const later = paper('2025-06-05', { sinceNewTenths: 650, sinceOverhaulTenths: 300 });
    const answer = times({ pieces, papers: [paper('2025-01-01'), later] });
    expect([answer.sinceNew.tenths, answer.sinceOverhaul.tenths]).toEqual([700, 300]);
    expect(answer.doubts).toMatchObject([{ which: 'sinceNew', saidTenths: 650, computed: { tenths: 700 } }]);
    const signed = times({ pieces, papers: [paper('2025-01-01'), { ...later, kind: 'established' }] });
    expect([signed.sinceNew.tenths, signed.doubts]).toEqual([650, []]);
    const lower = times({ pieces, papers: [paper('2025-01-01'), { ...later, sinceOverhaulTenths: 100 }] });
    expect(lower.sinceOverhaul.tenths).toBe('unknown');
  });

  it('restart at an overhaul, new never', () => {
    const papers = [paper('2025-01-01'), paper('2025-06-10', { kind: 'overhaul', sinceOverhaulTenths: 0 })];
    const back = { ...onA, id: 'j', from: '2025-07-01', fromTenths: 1200 };
    const answer = times({
      papers,
      pieces: assembly({ intervals: [closed, back] }),
      readings: [reading('2025-09-01', 1290)],
    });
    expect([answer.sinceNew.tenths, answer.sinceOverhaul.tenths]).toEqual([790, 90]);
    expect(answer.sinceOverhaul.restartedOn).toBe('2025-06-10');
  });

  it('of a part found gone are unknown from the day its propeller was last seen whole', () => {
    const away = [{ from: '2025-01-20', to: '2025-06-01' }];
    const pieces = piecesOfPart(
      { from: '2025-01-01', to: '2025-06-01', endsUnseen: true },
      { pieces: assembly({ intervals: [closed], away }), away },
    );
    expect(times({ pieces }).sinceNew).toMatchObject({ tenths: 'unknown', atLeastTenths: 500 });
  });

  it('of a part that came or went inside of an interval have that end unknown, with readings as the least', () => {
    const pieces = piecesOfPart(
      { from: '2025-03-01', endsUnseen: false },
      { pieces: assembly({ intervals: [closed] }), away: [] },
    );
    const readings = [reading('2025-04-01', 1050), reading('2025-02-15', 1010)];
    expect(times({ pieces, readings }).sinceNew).toMatchObject({ tenths: 'unknown', atLeastTenths: 500 + 150 });
  });

  it('count from a paper in the middle of an interval by the reading of that day', () => {
    const papers = [paper('2025-04-01', { kind: 'established', sinceNewTenths: 900 })];
    const pieces = assembly({ intervals: [closed] });
    expect(times({ papers, pieces, readings: [reading('2025-04-01', 1050)] }).sinceNew.tenths).toBe(900 + 150);
    expect(times({ papers, pieces }).sinceNew).toMatchObject({ tenths: 'unknown', atLeastTenths: 900 });
  });

  it('say nothing before the history begins, and start from nothing without papers', () => {
    expect(times({ asOf: '2024-01-01' }).sinceNew).toMatchObject({ tenths: 'unknown', start: null });
    expect(times({ papers: [], pieces: assembly({ intervals: [closed] }) }).sinceNew).toMatchObject({
      tenths: 'unknown',
      atLeastTenths: 200,
    });
  });
});
