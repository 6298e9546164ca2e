import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { MovedClock } from '../support/moved-clock.ts';
import { as } from '../support/people.ts';
import { Stockroom } from '../support/stockroom.ts';

/** Safety wire goes into a governor now and then: 40 inches in each of four months. */
describe('a stock level', () => {
  const clock = new MovedClock();
  let room: Stockroom;
  /** The tenth of the month so many months after the next one, at noon UTC: far from the ends of months in any zone. */
  const tenth = (months: number) => {
    const now = new Date();
    const at = Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + 1 + months, 10, 12);
    clock.seconds = Math.round((at - Date.now()) / 1000);
  };
  beforeAll(async () => {
    tenth(0);
    room = await Stockroom.open({ clock });
    const { code } = await room.onShelf('wire', 200);
    const customer = await room.customer('WIRE', ['maker-new']);
    for (const month of [0, 1, 2, 3]) {
      tenth(month);
      await room.issue(await room.kit(`W${month}`, customer), code, { quantity: 40 });
    }
  }, 120_000);
  afterAll(() => room.close());

  const suggested = async () => {
    const clerk = await as(room.shop, 'parts-room');
    const { body } = await clerk.call(buyingOperations.listSuggestions, { search: room.number('wire') });
    return body.rows[0];
  };

  it('is learnt from the whole months of the ledger, not from the one it began in or the one that runs', async () => {
    tenth(4);
    const found = await suggested();
    const usage = found?.because.find(({ sentence }) => sentence.includes('used in'));
    expect(usage?.sentence).toMatch(/^120 used in 3 whole months, in 3 of them: 38 a month are to be expected/);
    expect(usage).toMatchObject({ value: '120', from: 'usage', id: room.part('wire') });
    const level = Number(found?.because.find(({ sentence }) => sentence.startsWith('A level of'))?.value);
    expect(level).toBeGreaterThan(40);
    expect(found).toMatchObject({ short: 0, need: level - 40, isOverdue: false });
    expect(found?.because.map(({ sentence }) => sentence)).toContain(
      `40 are here and 0 on order: ${level - 40} are missing to the level.`,
    );
  });

  it('sinks while nothing is used, and asks for less', async () => {
    const before = (await suggested())?.need ?? 0;
    tenth(5);
    const after = await suggested();
    expect(after?.because.some(({ sentence }) => sentence.startsWith('120 used in 4 whole months, in 3 of them'))).toBe(
      true,
    );
    expect(before).toBeGreaterThan(0);
  });
});
