import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ledgerFaults } from '../../../../../tests/support/ledger-faults.ts';
import { as, pin } from '../../../../../tests/support/people.ts';
import { tableHashes } from '../../../../../tests/support/refused.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { firstList, type KitOf, type RevisedLine, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { confirmIdentity } from '../units/confirm-identity.command.ts';
import { installFromTray } from './install-from-tray.command.ts';
import { reserveLine } from './reserve-line.command.ts';
import { returnFromTray } from './return-from-tray.command.ts';
import { takeOut } from './take-out.command.ts';

const without = (list: readonly RevisedLine[], ...positions: string[]) =>
  list.filter(({ position }) => !positions.includes(position));

describe('a kit whose manual revision was superseded', () => {
  let room: Stockroom;
  let customer: string;
  let inspector: Visitor;
  let clerk: Visitor;
  let lots: Record<'washer' | 'seal' | 'wire', { id: string; code: string }>;
  beforeAll(async () => {
    room = await Stockroom.open();
    [inspector, clerk] = [await as(room.shop, 'inspector'), await as(room.shop, 'parts-room')];
    customer = await room.customer('REBASE', ['maker-new']);
    lots = {
      washer: await room.onShelf('washer', 100),
      seal: await room.onShelf('seal', 20),
      wire: await room.onShelf('wire', 400),
    };
  });
  afterAll(() => room.close());

  const rebase = async (kit: KitOf, options: { dryRun?: boolean } = {}) => {
    const { version } = await room.reads.workOrder.findUniqueOrThrow({ where: { id: kit.workOrderId } });
    const input = { workOrderId: kit.workOrderId, signature: pin };
    return inspector.call(travelerOperations.rebaseRevision, input, { version, ...options });
  };
  const detail = async (kit: KitOf) => (await clerk.call(kitsOperations.kitDetail, { kitId: kit.kitId })).body;
  const openItems = async (kit: KitOf) => (await detail(kit)).openItems.map(({ what }) => what);
  const sentences = async (kit: KitOf) =>
    (await clerk.call(kitsOperations.buildSheet, { workOrderId: kit.workOrderId })).body.judgement.sentences;
  const lineAt = async (kit: KitOf, position: string) =>
    room.reads.kitLine.findMany({ where: { kitId: kit.kitId, position }, orderBy: { sequence: 'asc' } });

  it('follows the new list: what was promised is free, what was pulled is named; shown before signing as it then happens', async () => {
    const kit = await room.kit('RB-1', customer);
    await room.shop.run(reserveLine, { kitId: kit.kitId, lineId: kit.line.cover, lotId: lots.washer.id }, room.clerk);
    await room.issue(kit, lots.seal.code);
    await room.revised([
      ...without(firstList, 'cover', 'drive', 'safety'),
      { part: 'washer', position: 'cover', quantity: 1, source: 'new' },
      { part: 'other seal', position: 'drive', quantity: 1, source: 'new' },
      { part: 'wire', position: 'safety', quantity: 60, minimum: 0, source: 'new' },
    ]);
    const before = await tableHashes(room.shop.databaseUrl);
    const seen = await inspector.call(travelerOperations.revisionDifferences, { workOrderId: kit.workOrderId });
    const tried = await rebase(kit, { dryRun: true });
    expect(tried.status).toBe(200);
    expect(await tableHashes(room.shop.databaseUrl)).toEqual(before);
    const done = await rebase(kit);
    expect(tried.body.differences).toEqual(seen.body.differences);
    expect(done.body.differences).toEqual(seen.body.differences);
    expect(
      done.body.differences.map(({ change, what, before: was, after, consequences }) => [
        change,
        what.split(' ')[0],
        was,
        after,
        ...consequences,
      ]),
    ).toEqual([
      ['changed', 'TW-10', '2, new', '1, new', '1 × TW-10 test washer promised to it is free again'],
      [
        'removed',
        'TS-20',
        '1, new',
        null,
        `1 × TS-20 test seal for drive (${lots.seal.code}) lies in the tray: bring it back to its bin`,
      ],
      ['changed', 'TX-50', '0 to 40, new', '0 to 60, new'],
      ['added', 'TS-21', null, '1, new'],
    ]);
    expect(await room.reads.reservation.findMany({ where: { kitLineId: kit.line.cover } })).toMatchObject([
      { quantity: 1 },
    ]);
    expect((await lineAt(kit, 'drive')).map(({ partId, quantity }) => [partId, quantity])).toEqual([
      [room.part('seal'), 0],
      [room.part('other seal'), 1],
    ]);
    expect((await lineAt(kit, 'safety'))[0]).toMatchObject({ quantity: 60, minimum: 0 });
    expect(await openItems(kit)).toEqual([
      `1 × TS-20 test seal for drive (${lots.seal.code}) lies in the tray: bring it back to its bin.`,
    ]);
    expect(await sentences(kit)).toContain(
      `1 × TS-20 test seal left in the tray (${lots.seal.code}): install it, or bring it back to its bin.`,
    );
    await room.shop.run(returnFromTray, { kitId: kit.kitId, lotCode: lots.seal.code, bin: 'B-01' }, room.clerk);
    expect(await openItems(kit)).toEqual([]);
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
  });

  it('keeps what is in the unit and names it until someone takes it out', async () => {
    await room.revised(firstList);
    const kit = await room.kit('RB-2', customer);
    await room.takenOff(kit);
    const washers = { kitId: kit.kitId, lineId: kit.line.cover, lotCode: lots.washer.code };
    await room.issue(kit, lots.washer.code);
    await room.shop.run(installFromTray, washers, room.technician);
    await room.revised([
      ...without(firstList, 'cover', 'speeder'),
      { part: 'spring', position: 'speeder', quantity: 1, source: 'new' },
    ]);
    const { differences } = (await rebase(kit)).body;
    expect(differences.flatMap(({ consequences }) => consequences)).toEqual([
      `2 × TW-10 test washer for cover (${lots.washer.code}) is in the unit: take it out, or have an inspector decide`,
      `2 × TW-10 test washer for cover (${kit.number}-01) lies in the rack and does not go back: scrap it or return it to its owner`,
      `1 × TP-30 test spring for speeder (${kit.number}-03) lies in the rack and does not go back: scrap it or return it to its owner`,
    ]);
    const inUnit = `2 × TW-10 test washer in the unit at cover (${lots.washer.code}) beyond the list, or from a source its position does not take: take it out, or have an inspector decide.`;
    expect(await sentences(kit)).toContain(inUnit);
    await room.shop.run(
      takeOut,
      { ...washers, quantity: 2, to: 'back', reason: 'not listed any more' },
      room.technician,
    );
    expect(await sentences(kit)).not.toContain(inUnit);
    expect(await openItems(kit)).toEqual([
      expect.stringContaining('lies in the tray: bring it back to its bin'),
      expect.stringContaining('lies in the rack and does not go back'),
    ]);
  });

  it('asks again for what an earlier revision dropped, and leaves decided lines alone', async () => {
    const kit = await room.kit('RB-3', customer);
    await room.sql("UPDATE kit_lines SET source = 'new' WHERE id = $1", [kit.line.pilot]);
    await room.revised(without(firstList, 'drive'));
    expect((await rebase(kit)).status).toBe(200);
    await room.revised(firstList);
    const { body } = await rebase(kit);
    expect(body.differences.map(({ change, after }) => [change, after])).toContainEqual(['added', '1, new']);
    const lines = await room.reads.kitLine.findMany({ where: { kitId: kit.kitId }, orderBy: { sequence: 'asc' } });
    expect(lines.map(({ position, quantity, source }) => [position, quantity, source])).toEqual(
      expect.arrayContaining([
        ['drive', 1, 'new'],
        ['pilot', 1, 'new'],
        ['speeder', 1, 'reused'],
      ]),
    );
    expect(
      await room.reads.kitListLine.findUnique({
        where: { id: lines[0]?.listLineId ?? '' },
        include: { revision: true },
      }),
    ).toMatchObject({
      revision: { state: 'current' },
    });
  });

  it('names lines of a serial range while the serial is not read, and takes them once it is', async () => {
    await room.revised([
      ...firstList,
      { part: 'flyweight', position: 'weights', quantity: 1, source: 'new', serialFrom: 'VG1500' },
      { part: 'wire', position: 'cap', quantity: 3, source: 'new', serialTo: 'VG1499' },
    ]);
    const kit = await room.kit(null, customer);
    const open = [
      '1 × TF-60 test flyweight at weights is for serials from VG1500 on, and the serial of the unit is not read yet: have it read, then add the line to the kit.',
      '3 in of TX-50 test wire at cap is for serials up to VG1499, and the serial of the unit is not read yet: have it read, then add the line to the kit.',
    ];
    expect(await openItems(kit)).toEqual(open);
    expect(await detail(kit)).toMatchObject({ canComplete: false });
    expect(await sentences(kit)).toEqual(expect.arrayContaining(open));
    const workOrder = await room.reads.workOrder.findUniqueOrThrow({ where: { id: kit.workOrderId } });
    const read = { itemId: workOrder.unitId, serial: 'VG1600', signature: pin };
    await room.shop.run(confirmIdentity, read, room.inspector, { version: 1 });
    const listed = '1 × TF-60 test flyweight at weights is listed for this unit and not in its kit: add it to the kit.';
    expect(await detail(kit)).toMatchObject({ openItems: [{ place: 'list', what: listed }], canComplete: true });
    const added = await clerk.call(kitsOperations.explodeKit, { workOrderId: kit.workOrderId, needBy: room.day(10) });
    expect(added.body).toMatchObject({ lines: 1 });
    expect(await detail(kit)).toMatchObject({ openItems: [], canComplete: false });
  });
});
