import { givingBackOperations } from '@hubwright/contracts/inventory/giving-back-operations';
import { destroyOperations } from '@hubwright/contracts/kits/destroy-operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { scrapLot } from '../../apps/server/src/modules/inventory/scrap-lot.command.ts';
import { surrenderLot } from '../../apps/server/src/modules/inventory/surrender-lot.command.ts';
import { clearRack } from '../../apps/server/src/modules/kits/clear-rack.command.ts';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { takeOut } from '../../apps/server/src/modules/kits/take-out.command.ts';
import { purgeOrder } from '../../apps/server/src/modules/records/purge-order.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { copyOf } from '../support/database.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { as, pin } from '../support/people.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

/** What is scrapped before a witness, and what the records then say of it; tests spoil copies of one shop. */
describe('pieces whose end somebody else must see', () => {
  let room: Stockroom;
  let customerId: string;
  let kit: KitOf;
  let weights: { lotId: string; lotCode: string };
  let spring: { lotId: string; lotCode: string };
  const line = (position: string) => (kit.line as Record<string, string>)[position] ?? '';
  const lotOf = (id: string) => room.reads.lot.findUniqueOrThrow({ where: { id } });
  beforeAll(async () => {
    room = await Stockroom.open();
    customerId = await room.customer('SEEN', ['maker-new', 'customer-supplied']);
    await room.revised(
      [
        { part: 'washer', position: 'cover', quantity: 2, source: 'new' },
        { part: 'flyweight', position: 'weights', quantity: 1, source: 'new' },
        { part: 'spring', position: 'speeder', quantity: 1, source: 'new' },
      ],
      [{ partNumber: room.number('spring'), hoursTenths: 20_000 }],
    );
    kit = await room.kit('SEEN-1', customerId);
  });
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });

  it('scraps the rack’s small parts at once, and holds what has a serial or a limited life for its owner', async () => {
    const tags = await room.takenOff(kit);
    [weights, spring] = [tags.weights, tags.speeder] as [typeof weights, typeof spring];
    const clear = { kitId: kit.kitId, to: 'scrap' as const, reason: 'always new' };
    const reply = await room.shop.run(clearRack, clear, room.technician);
    expect(reply).toMatchObject({ cleared: 4, held: 2 });
    expect(await room.places(tags.cover?.lotId ?? '')).toEqual({ scrap: 2 });
    expect(await room.places(weights.lotId)).toEqual({ held: 1 });
    expect(await room.places(spring.lotId)).toEqual({ held: 1 });
  });

  it('gives what is held back to its owner, unless it was given up', async () => {
    const desk = await as(room.shop, 'front-desk');
    const give = async (lotId: string, quantity: number) =>
      desk.call(
        givingBackOperations.giveBackLot,
        { lotId, quantity, reference: 'taken along by the owner' },
        { version: (await lotOf(lotId)).version },
      );
    expect((await give(spring.lotId, 2)).body.type).toBe('/problems/not-enough');
    const washer = await room.onShelf('washer', 4);
    expect((await give(washer.id, 1)).body.type).toBe('/problems/not-a-customers');
    expect((await give(spring.lotId, 1)).status).toBe(200);
    expect(await room.places(spring.lotId)).toEqual({});
    const letter = { lotId: weights.lotId, letter: 'order form', dated: room.day(0), givenBy: 'the owner' };
    const { version } = await lotOf(weights.lotId);
    await room.shop.run(surrenderLot, letter, room.clerk, { version });
    expect((await give(weights.lotId, 1)).body.type).toBe('/problems/already-surrendered');
    await room.shop.run(
      scrapLot,
      { lotId: weights.lotId, quantity: 1, reason: 'past use', ...room.witnessed },
      room.clerk,
    );
    expect(await room.places(weights.lotId)).toEqual({ scrap: 1 });
  });

  it('scraps a serialized piece from the tray only before a witness, and a washer without one', async () => {
    const technician = await as(room.shop, 'technician');
    const [piece, washers] = [await room.onShelf('flyweight', 1, { serial: 'FW-9' }), await room.onShelf('washer', 9)];
    await room.issue(kit, piece.code);
    await room.issue(kit, washers.code, { quantity: 2 });
    const dropped = { kitId: kit.kitId, quantity: 1, reason: 'dropped' };
    const installed = { kitId: kit.kitId, lineId: line('weights'), lotCode: piece.code };
    await room.shop.run(installFromTray, installed, room.technician);
    const out = { ...installed, quantity: 1, reason: 'bent' };
    await expect(room.shop.run(takeOut, { ...out, to: 'scrap' }, room.technician)).rejects.toMatchObject({
      type: 'witness-needed',
    });
    await room.shop.run(takeOut, { ...out, to: 'back' }, room.technician);
    const unseen = await technician.call(kitsOperations.scrapFromTray, { ...dropped, lotCode: piece.code });
    expect(unseen.body).toMatchObject({
      type: '/problems/witness-needed',
      detail: `${room.number('flyweight')} has a serial: it is scrapped before a witness`,
    });
    expect(await room.places(piece.id)).toEqual({ tray: 1 });
    const washer = await technician.call(kitsOperations.scrapFromTray, { ...dropped, lotCode: washers.code });
    expect(washer.status).toBe(200);
    const seen = { ...dropped, lotCode: piece.code, signature: pin, witnessId: room.clerk.personId };
    const destroy = (changes: object) =>
      technician.call(destroyOperations.destroyFromTray, { ...seen, witnessSignature: pin, ...changes });
    expect((await destroy({ witnessId: room.technician.personId })).body.type).toBe('/problems/second-person-needed');
    expect((await destroy({ witnessSignature: { pin: '1111' } })).body.type).toBe('/problems/signature-refused');
    expect((await destroy({})).status).toBe(200);
    expect(await room.places(piece.id)).toEqual({ scrap: 1 });
    const signed = await room.reads.stockSignature.findMany({ where: { lotId: piece.id }, orderBy: { role: 'asc' } });
    expect(signed.map(({ role, personId }) => [role, personId])).toEqual([
      ['signer', room.technician.personId],
      ['witness', room.clerk.personId],
    ]);
    const manager = await as(room.shop, 'manager');
    const listed = await manager.call(accessOperations.listSignatures, { subjectKind: 'lot', subjectId: piece.id });
    const [row] = listed.body.rows.filter(({ operation }) => operation === 'destroy-from-tray');
    expect(row?.contentHashes).toEqual([signed[0]?.contentHash]);
  });

  /** Runs statements as someone who owns the database and switches its guards off. */
  async function spoiled(...statements: string[]) {
    const copy = await copyOf(room.shop.databaseUrl);
    const client = new pg.Client({ connectionString: copy.url });
    await client.connect();
    try {
      await client.query('SET session_replication_role = replica');
      for (const statement of statements) await client.query(statement);
      return await verifyDatabase(copy.url, `${room.shop.dataFolder}/files`);
    } finally {
      await client.end();
      await copy.drop();
    }
  }

  it('are checked with every other signature: a changed content, a moved one, one that is gone', async () => {
    const witness = await room.reads.stockSignature.findFirstOrThrow({
      where: { lotId: weights.lotId, role: 'witness' },
    });
    // A database somebody is connected to is not copied.
    await room.shop.running.close();
    expect((await spoiled()).faults).toEqual([]);
    const place = `signature ${witness.id}`;
    const at = `WHERE id = '${witness.id}'`;
    const changed = await spoiled(`UPDATE stock_signatures SET content = jsonb_set(content, '{quantity}', '2') ${at}`);
    expect(changed.faults).toEqual([{ place, reason: 'what was signed is not what its hash says' }]);
    const moved = await spoiled(
      `UPDATE stock_signatures SET entry_id = (SELECT entry_id FROM surrenders LIMIT 1) ${at}`,
    );
    expect(moved.faults).toContainEqual({ place, reason: 'the record entry does not name this signature' });
    const gone = await spoiled(`DELETE FROM stock_signatures ${at}`);
    expect(gone.faults).toEqual([{ place, reason: expect.stringMatching(/^it is gone; entry \S+ names it$/) }]);
  });

  it('go with the records of their order by a signed proof, and nothing is missed after it', async () => {
    await room.sql(`UPDATE work_orders SET closed_at = now() WHERE id = $1`, [kit.workOrderId]);
    await room.sql(`UPDATE shop_profile SET retention_rules = '[{"approval":"one authority","years":2}]'`);
    const today = addDays(room.day(0), 900);
    await purgeOrder(
      { url: room.shop.databaseUrl, dataFolder: room.shop.dataFolder },
      { number: kit.number, by: 'admin', today, at: new Date(`${today}T12:00:00.000Z`) },
    );
    const left = await room.sql('SELECT id FROM stock_signatures WHERE lot_id = $1', [weights.lotId]);
    expect(left).toEqual([]);
    expect((await verifyDatabase(room.shop.databaseUrl, `${room.shop.dataFolder}/files`)).faults).toEqual([]);
  });
});
