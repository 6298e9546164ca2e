import { describe, expect, it } from '@jest/globals';
import { InOrder } from './in-order.ts';

const event = (transaction: number, row: number) => ({ id: `${transaction}-${row}`, nouns: ['parts'], subjects: [] });

describe('InOrder', () => {
  it('tells an event that came both live and in the catch-up once, in its place', () => {
    const told: string[] = [];
    const stream = new InOrder((one) => told.push(one.id), '7-12');
    stream.live(event(9, 14));
    stream.live(event(10, 15));
    expect(told).toEqual([]);
    stream.caughtUp([event(8, 13), event(9, 14)]);
    stream.live(event(9, 14));
    stream.live(event(11, 2));
    expect(told).toEqual(['8-13', '9-14', '10-15', '11-2']);
  });

  it('does not tell again what was seen before, though the feed comes to it only now', () => {
    const told: string[] = [];
    const stream = new InOrder((one) => told.push(one.id), '9-14');
    stream.caughtUp([]);
    stream.live(event(9, 13));
    stream.live(event(9, 14));
    stream.live(event(10, 15));
    expect(told).toEqual(['10-15']);
  });

  it('tells a new dashboard each event as it comes', () => {
    const told: string[] = [];
    const stream = new InOrder((one) => told.push(one.id));
    stream.live(event(9, 1));
    stream.live(event(9, 2));
    expect(told).toEqual(['9-1', '9-2']);
  });
});
