import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, describe, it } from '@jest/globals';
import { quarantineLot } from '../../apps/server/src/modules/inventory/quarantine-lot.command.ts';
import { as } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

/** What the parts room may try beside the list of `bad-input.test.ts`, and must be told no. */
interface Row {
  readonly what: string;
  readonly status: number;
  readonly type: string;
  readonly pointer?: string;
  request(): Promise<Answer>;
}

const someId = '0197c0de-0000-7000-8000-000000000000';

describe('what stock refuses, it leaves untouched', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let bench: Visitor;
  let kit: KitOf;
  const lots: Record<string, { id: string; code: string; version: number }> = {};
  let closedKit: KitOf;

  beforeAll(async () => {
    room = await Stockroom.open();
    [clerk, bench] = [await as(room.shop, 'parts-room'), await as(room.shop, 'technician')];
    const customer = await room.customer('REFUSE', ['maker-new']);
    kit = await room.kit('R-1', customer);
    closedKit = await room.kit('R-3', customer);
    await room.sql("UPDATE kits SET state = 'closed' WHERE id = $1", [closedKit.kitId]);
    lots.good = await room.onShelf('washer', 3);
    lots.shortLife = await room.onShelf('seal', 5, { cureDate: room.day(-1750) });
    lots.held = await room.onShelf('washer', 5);
    await room.shop.run(quarantineLot, { lotId: lots.held.id, reason: 'doubt' }, room.inspector);
    lots.waiting = { ...(await room.received('washer', 5)) };
    lots.wrongPart = await room.onShelf('flyweight', 1, { serial: 'FW-001' });
  });
  afterAll(() => room.close());

  const issue = (lot: string, more: object = {}) =>
    clerk.call(kitsOperations.issueLot, { kitId: kit.kitId, lotCode: lots[lot]?.code ?? lot, ...more });
  const rows: Row[] = [
    {
      what: 'issuing stock too old for the build',
      status: 409,
      type: 'shelf-life-short',
      request: () => issue('shortLife'),
    },
    { what: 'issuing stock nobody judged', status: 409, type: 'lot-not-accepted', request: () => issue('waiting') },
    {
      what: 'issuing a part the kit does not need',
      status: 409,
      type: 'part-not-on-kit',
      request: () => issue('wrongPart'),
    },
    {
      what: 'issuing more than the line needs',
      status: 409,
      type: 'more-than-needed',
      pointer: '/quantity',
      request: () => issue('good', { quantity: 3 }),
    },
    {
      what: 'issuing a negative quantity',
      status: 422,
      type: 'invalid-input',
      pointer: '/quantity',
      request: () => issue('good', { quantity: -1 }),
    },
    {
      what: 'issuing half a piece',
      status: 422,
      type: 'invalid-input',
      pointer: '/quantity',
      request: () => issue('good', { quantity: 0.5 }),
    },
    {
      what: 'no key',
      status: 400,
      type: 'key-missing',
      request: () => clerk.send('POST', `/api/kits/${kit.kitId}/reserve`, { body: {}, key: '' }),
    },
    {
      what: 'a kit that does not exist',
      status: 404,
      type: 'not-found',
      request: () => clerk.call(kitsOperations.issueLot, { kitId: someId, lotCode: lots.good?.code ?? '' }),
    },
    {
      what: 'a closed kit',
      status: 409,
      type: 'kit-closed',
      request: () => clerk.call(kitsOperations.issueLot, { kitId: closedKit.kitId, lotCode: lots.good?.code ?? '' }),
    },
    {
      what: 'reserving a quarantined lot',
      status: 409,
      type: 'not-enough',
      request: () =>
        clerk.call(kitsOperations.reserveLine, {
          kitId: kit.kitId,
          lineId: kit.line.cover,
          lotId: lots.held?.id ?? '',
        }),
    },
    {
      what: 'reserving more than the line needs',
      status: 409,
      type: 'more-than-needed',
      pointer: '/quantity',
      request: () => clerk.call(kitsOperations.reserveLine, { kitId: kit.kitId, lineId: kit.line.cover, quantity: 3 }),
    },
    {
      what: 'returning what is not in the tray',
      status: 409,
      type: 'not-in-tray',
      request: () =>
        clerk.call(kitsOperations.returnFromTray, { kitId: kit.kitId, lotCode: lots.good?.code ?? '', bin: 'B-01' }),
    },
    {
      what: 'installing what is not in the tray',
      status: 409,
      type: 'not-in-tray',
      request: () =>
        bench.call(kitsOperations.installFromTray, {
          kitId: kit.kitId,
          lineId: kit.line.cover,
          lotCode: lots.good?.code ?? '',
        }),
    },
  ];

  it.each(rows.map((row) => [row.what, row] as const))('%s', async (_, row) => {
    await expectUnchanged(room.shop, row.request, row);
  });
});
