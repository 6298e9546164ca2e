import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
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
    const { code } = await room.onShelf('wire', 180);
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
    expect(level).toBeGreaterThan(20);
    expect(found).toMatchObject({ short: 0, need: level - 20, isOverdue: false });
    expect(found?.because.map(({ sentence }) => sentence)).toContain(
      `20 are here and 0 on order: ${level - 20} are missing to the level.`,
    );
  });

  it('asks for nothing more once what is missing is on order', async () => {
    const missing = await suggested();
    const clerk = await as(room.shop, 'parts-room');
    const { id: supplierId } = await room.reads.supplier.findUniqueOrThrow({ where: { code: 'OSTREY' } });
    const lines = [{ partId: room.part('wire'), quantity: missing?.need ?? 0, dueOn: day(20, clock.now()) }];
    expect((await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines })).status).toBe(200);
    expect(await suggested()).toBeUndefined();
  });
});
