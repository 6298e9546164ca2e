import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { kitsOperations as kits } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { quarantineLot } from '../../apps/server/src/modules/inventory/quarantine-lot.command.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

const { holdFromTray, rejectFromTray } = holdOperations;

/** Two washers and a flyweight; the customer brought own washers. */
describe('pieces held apart straight from a tray', () => {
  let room: Stockroom;
  let kit: KitOf;
  let customerId: string;
  let people: Record<'technician' | 'parts-room' | 'inspector' | 'front-desk', Visitor>;
  const code = async (id: string) => room.reads.lot.findUniqueOrThrow({ where: { id } });
  beforeAll(async () => {
    room = await Stockroom.open();
    customerId = await room.customer('TRAY', ['maker-new', 'customer-supplied']);
    await room.revised([{ part: 'washer', position: 'cover', quantity: 4, source: 'new' }]);
    kit = await room.kit('TH-1', customerId);
    people = {
      technician: await as(room.shop, 'technician'),
      'parts-room': await as(room.shop, 'parts-room'),
      inspector: await as(room.shop, 'inspector'),
      'front-desk': await as(room.shop, 'front-desk'),
    };
  });
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  const inTray = async (quantity: number, own: boolean, kitOf = kit) => {
    const more = own ? ({ customerId, sourceClass: 'customer-supplied' } as const) : {};
    const lot = await room.onShelf('washer', 6, more);
    const issued = await people['parts-room'].call(kits.issueLot, { kitId: kitOf.kitId, lotCode: lot.code, quantity });
    expect(issued.status).toBe(200);
    return lot;
  };
  const needs = async () => {
    const { lines } = (await people['parts-room'].call(kits.kitDetail, { kitId: kit.kitId })).body;
    return lines.map(({ toPull }) => toPull);
  };
  const hold = (lotCode: string, what: 'suspected' | 'quarantine') => ({
    operation: holdFromTray,
    input: { kitId: kit.kitId, lotCode, as: what, reason: 'markings look ground off' },
  });
  const reject = (lotCode: string, quantity?: number) => ({
    operation: rejectFromTray,
    input: { kitId: kit.kitId, lotCode, reason: 'cracked', signature: pin, ...(quantity ? { quantity } : {}) },
  });
  const refused = (who: keyof typeof people, request: ReturnType<typeof hold | typeof reject>, how: [number, string]) =>
    expectRefused({ shop: room.shop, visitor: people[who] }, request as never, { status: how[0], type: how[1] });

  it('as suspected, by whoever sees it: the lot is evidence, the line short, and what was promised of it free', async () => {
    const own = await inTray(2, true);
    expect(await needs()).toEqual([2]);
    await people['parts-room'].call(kits.reserveLine, {
      ...{ kitId: kit.kitId, lineId: kit.line.cover, lotId: own.id, quantity: 1 },
    } as never);
    const held = await people.technician.call(holdFromTray, hold(own.code, 'suspected').input);
    expect(held.body).toMatchObject({ lines: [{ position: 'cover', quantity: 2, stillNeeds: 4 }] });
    expect(await needs()).toEqual([4]);
    expect(await room.places(own.id)).toEqual({ quarantine: 6 });
    expect((await code(own.id)).state).toBe('suspected');
    expect(await room.reads.suspicion.count({ where: { lotId: own.id, decision: null } })).toBe(1);
    expect(await room.reads.reservation.count({ where: { lotId: own.id } })).toBe(0);
    await refused('technician', hold(own.code, 'suspected'), [409, 'not-in-tray']);
  });

  it('in doubt; where the lot is out of use already, the tray’s pieces follow it', async () => {
    const lot = await inTray(1, false);
    await people['parts-room'].call(holdFromTray, hold(lot.code, 'quarantine').input);
    expect(await room.places(lot.id)).toEqual({ quarantine: 6 });
    const other = await inTray(1, false);
    await room.shop.run(quarantineLot, { lotId: other.id, reason: 'recall' }, room.inspector);
    expect(await room.places(other.id)).toEqual({ quarantine: 5, tray: 1 });
    await people.inspector.call(holdFromTray, hold(other.code, 'quarantine').input);
    expect(await room.places(other.id)).toEqual({ quarantine: 6 });
    expect(await needs()).toEqual([4]);
  });

  it('rejected, by an inspector: some of a lot get a label of their own and are held, the rest stays as good as it was', async () => {
    const own = await inTray(3, true);
    const done = await people.inspector.call(rejectFromTray, reject(own.code, 1).input);
    expect(done.body).toMatchObject({ lotCode: own.code, lines: [{ stillNeeds: 2 }] });
    expect(await room.places(own.id)).toEqual({ 'bin B-01': 3, tray: 2 });
    expect((await code(own.id)).state).toBe('accepted');
    const apart = await code(done.body.held.id);
    expect(apart).toMatchObject({ state: 'rejected', ownerId: customerId, code: done.body.held.code });
    expect(await room.places(apart.id)).toEqual({ held: 1 });
    expect(await room.reads.stockSignature.findMany({ where: { lotId: apart.id } })).toMatchObject([
      { kind: 'rejected' },
    ]);
    const back = { kitId: kit.kitId, lotCode: own.code, bin: 'B-01' };
    await people['parts-room'].call(kits.returnFromTray, back);
  });

  it('rejected whole, under its own label', async () => {
    const own = await room.onShelf('washer', 2, { customerId, sourceClass: 'customer-supplied' });
    await people['parts-room'].call(kits.issueLot, { kitId: kit.kitId, lotCode: own.code });
    const done = await people.inspector.call(rejectFromTray, reject(own.code).input);
    expect(done.body.held).toEqual({ id: own.id, code: own.code });
    expect(await room.places(own.id)).toEqual({ held: 2 });
    expect((await code(own.id)).state).toBe('rejected');
    const { blocked } = (await people.inspector.call(inventoryOperations.lotDetail, { lotId: own.id })).body;
    expect(blocked.length).toBeGreaterThan(0);
  });

  it('not by the wrong person, not the shop’s own as an owner’s, not what is not there, not from a closed kit', async () => {
    const [shops, own] = [await inTray(1, false), await inTray(1, true)];
    await refused('front-desk', hold(own.code, 'suspected'), [403, 'not-permitted']);
    await refused('technician', reject(own.code), [403, 'not-permitted']);
    await refused('parts-room', reject(own.code), [403, 'not-permitted']);
    await refused('inspector', reject(shops.code), [409, 'not-a-customers']);
    await refused('inspector', reject(own.code, 2), [409, 'not-enough']);
    await refused('inspector', reject('LOT-99999'), [404, 'unknown-scan']);
    const suspected = { lotId: own.id, reason: 'no paper fits' };
    await room.sql("UPDATE lots SET state = 'suspected' WHERE id = $1", [suspected.lotId]);
    await refused('inspector', reject(own.code), [409, 'lot-suspected']);
    await refused('inspector', hold(own.code, 'quarantine'), [409, 'lot-suspected']);
    await room.sql("UPDATE lots SET state = 'rejected' WHERE id = $1", [shops.id]);
    await refused('inspector', hold(shops.code, 'quarantine'), [409, 'lot-not-accepted']);
    await room.sql("UPDATE kits SET state = 'closed' WHERE id = $1", [kit.kitId]);
    await refused('inspector', reject(own.code), [409, 'kit-closed']);
    await room.sql("UPDATE kits SET state = 'open' WHERE id = $1", [kit.kitId]);
  });
});
