import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { quarantineLot } from '../../apps/server/src/modules/inventory/quarantine-lot.command.ts';
import { reserveLine } from '../../apps/server/src/modules/kits/reserve-line.command.ts';
import { as } from '../support/people.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';
import { tableHashes } from '../support/table-hashes.ts';

/** What the parts room may try, and must be told no: the status, the problem, the field it points at. */
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
  let other: KitOf;
  const lots: Record<string, { id: string; code: string; version: number }> = {};
  let closedKit: KitOf;

  beforeAll(async () => {
    room = await Stockroom.open();
    [clerk, bench] = [await as(room.shop, 'parts-room'), await as(room.shop, 'technician')];
    const customer = await room.customer('REFUSE', ['maker-new']);
    kit = await room.kit('R-1', customer);
    other = await room.kit('R-2', customer);
    closedKit = await room.kit('R-3', customer);
    await room.sql("UPDATE kits SET state = 'closed' WHERE id = $1", [closedKit.kitId]);
    lots.good = await room.onShelf('washer', 3);
    lots.expired = await room.onShelf('seal', 5);
    await room.sql('UPDATE lots SET expires_on = $2 WHERE id = $1', [lots.expired.id, room.day(-2)]);
    lots.shortLife = await room.onShelf('seal', 5, { cureDate: room.day(-1750) });
    lots.held = await room.onShelf('washer', 5);
    await room.shop.run(quarantineLot, { lotId: lots.held.id, reason: 'doubt' }, room.inspector);
    lots.waiting = { ...(await room.received('washer', 5)) };
    lots.uncertified = await room.onShelf('bushing', 5);
    await room.sql("UPDATE lots SET certificate = '' WHERE id = $1", [lots.uncertified.id]);
    await room.sql("UPDATE kit_lines SET source = 'new' WHERE id = $1", [kit.line.pilot]);
    lots.used = await room.onShelf('washer', 5, { sourceClass: 'used-serviceable' });
    lots.reserved = await room.onShelf('washer', 2);
    await room.shop.run(
      reserveLine,
      { kitId: other.kitId, lineId: other.line.cover, lotId: lots.reserved.id },
      room.clerk,
    );
    lots.wrongPart = await room.onShelf('flyweight', 1, { serial: 'FW-001' });
    lots.single = await room.onShelf('washer', 1);
  });
  afterAll(() => room.close());

  const issue = (lot: string, more: object = {}) =>
    clerk.call(kitsOperations.issueLot, { kitId: kit.kitId, lotCode: lots[lot]?.code ?? lot, ...more });
  const rows: Row[] = [
    { what: 'a scan that is no lot', status: 404, type: 'unknown-scan', request: () => issue('LOT-99999') },
    { what: 'issuing expired stock', status: 409, type: 'lot-expired', request: () => issue('expired') },
    {
      what: 'issuing stock too old for the build',
      status: 409,
      type: 'shelf-life-short',
      request: () => issue('shortLife'),
    },
    { what: 'issuing quarantined stock', status: 409, type: 'lot-not-accepted', request: () => issue('held') },
    { what: 'issuing stock nobody judged', status: 409, type: 'lot-not-accepted', request: () => issue('waiting') },
    {
      what: 'issuing uncertified stock',
      status: 409,
      type: 'certificate-missing',
      request: () => issue('uncertified'),
    },
    {
      what: 'issuing what is promised to another kit',
      status: 409,
      type: 'lot-reserved',
      request: () => issue('reserved'),
    },
    {
      what: 'issuing a source the customer refuses',
      status: 409,
      type: 'source-not-accepted',
      request: () => issue('used'),
    },
    {
      what: 'issuing a part the kit does not need',
      status: 409,
      type: 'part-not-on-kit',
      request: () => issue('wrongPart'),
    },
    {
      what: 'issuing more than the lot holds',
      status: 409,
      type: 'not-enough',
      request: () => issue('single', { quantity: 2 }),
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
      what: 'a field nobody knows',
      status: 422,
      type: 'invalid-input',
      pointer: '/force',
      request: () => issue('good', { force: true }),
    },
    {
      what: 'a list where an object belongs',
      status: 400,
      type: 'malformed-request',
      request: () => clerk.send('POST', `/api/kits/${kit.kitId}/issues`, { body: ['LOT-1'] }),
    },
    {
      what: 'text that is not JSON',
      status: 400,
      type: 'malformed-request',
      request: () => clerk.send('POST', `/api/kits/${kit.kitId}/issues`, { payload: '{"lotCode": ' }),
    },
    {
      what: 'ten megabytes',
      status: 413,
      type: 'too-large',
      request: () =>
        clerk.send('POST', '/api/inventory/lots', { payload: JSON.stringify({ note: 'x'.repeat(10_000_000) }) }),
    },
    {
      what: 'no key',
      status: 400,
      type: 'key-missing',
      request: () => clerk.send('POST', `/api/kits/${kit.kitId}/reserve`, { body: {}, key: '' }),
    },
    {
      what: 'a technician issuing',
      status: 403,
      type: 'not-permitted',
      request: () => bench.call(kitsOperations.issueLot, { kitId: kit.kitId, lotCode: lots.good?.code ?? '' }),
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
    const before = await tableHashes(room.shop.databaseUrl);
    const answer = await row.request();
    const errors = (answer.body.errors ?? []) as { pointer: string }[];
    expect({ status: answer.status, type: answer.body.type }).toEqual({
      status: row.status,
      type: `/problems/${row.type}`,
    });
    if (row.pointer) expect(errors.map(({ pointer }) => pointer)).toContain(row.pointer);
    expect(await tableHashes(room.shop.databaseUrl)).toEqual(before);
  });

  it('the hash does see a change', async () => {
    const before = await tableHashes(room.shop.databaseUrl);
    expect((await issue('single')).status).toBe(200);
    expect(await tableHashes(room.shop.databaseUrl)).not.toEqual(before);
  });

  it('two clerks reach for the last one: one gets it, the other is told', async () => {
    const last = await room.onShelf('wire', 40);
    const second = await as(room.shop, 'caspar');
    const [a, b] = await Promise.all([
      clerk.call(kitsOperations.issueLot, { kitId: kit.kitId, lotCode: last.code, quantity: 40 }),
      second.call(kitsOperations.issueLot, { kitId: other.kitId, lotCode: last.code, quantity: 40 }),
    ]);
    expect([a.status, b.status].sort()).toEqual([200, 409]);
    expect([a, b].find(({ status }) => status === 409)?.body.type).toBe('/problems/not-enough');
    expect(await room.places(last.id)).toEqual({ tray: 40 });
  });

  it('a double click and a replay move the pieces once', async () => {
    const lot = await room.onShelf('wire', 100);
    const twice = await room.kit('R-twice', await room.customer('TWICE', ['maker-new']));
    const key = 'one-intention-0001';
    const request = { kitId: twice.kitId, lotCode: lot.code, quantity: 5 };
    const [a, b] = await Promise.all([
      clerk.call(kitsOperations.issueLot, request, { key }),
      clerk.call(kitsOperations.issueLot, request, { key }),
    ]);
    const replay = await clerk.call(kitsOperations.issueLot, request, { key });
    expect(replay.status).toBe(200);
    for (const twin of [a, b]) expect([200, 409]).toContain(twin.status);
    const done = [a, b].filter(({ status }) => status === 200);
    expect(done.length).toBeGreaterThan(0);
    for (const twin of done) expect(twin.body).toEqual(replay.body);
    expect(await room.places(lot.id)).toEqual({ 'bin B-01': 95, tray: 5 });
    const reused = await clerk.call(kitsOperations.issueLot, { ...request, quantity: 6 }, { key });
    expect(reused.body.type).toBe('/problems/key-reused');
  });
});
