import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { as, pin } from '../../../../../tests/support/people.ts';
import { type KitOf, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { clearRack } from './clear-rack.command.ts';
import { installFromTray } from './install-from-tray.command.ts';
import { passRackPart } from './pass-rack-part.command.ts';
import { replaceRackPart } from './replace-rack-part.command.ts';
import { returnFromTray } from './return-from-tray.command.ts';
import { reuseFromRack } from './reuse-from-rack.command.ts';
import { takeOff } from './take-off.command.ts';
import { takeOut } from './take-out.command.ts';

type Tags = Record<string, { lotId: string; lotCode: string }>;

describe('a build', () => {
  let room: Stockroom;
  let customer: string;
  let kit: KitOf;
  let tags: Tags;
  let washer: string;
  let seal: string;
  let count = 0;
  beforeAll(async () => {
    room = await Stockroom.open();
    customer = await room.customer('BUILD', ['maker-new']);
    washer = (await room.onShelf('washer', 500)).code;
    seal = (await room.onShelf('seal', 500)).code;
  });
  afterAll(() => room.close());
  beforeEach(async () => {
    count += 1;
    kit = await room.kit(`B-${count}`, customer);
    tags = await room.takenOff(kit);
  });

  const sheet = async () => {
    const bench = await as(room.shop, 'technician');
    return (await bench.call(kitsOperations.buildSheet, { workOrderId: kit.workOrderId })).body;
  };
  const pass = (lotId: string) =>
    room.shop.run(passRackPart, { kitId: kit.kitId, lotId, signature: pin }, room.inspector);
  const reuse = (position: 'speeder' | 'pilot') =>
    room.shop.run(
      reuseFromRack,
      { kitId: kit.kitId, lineId: kit.line[position], lotCode: tags[position]?.lotCode ?? '' },
      room.technician,
    );
  const install = (position: 'cover' | 'drive', lotCode: string, quantity?: number) =>
    room.shop.run(
      installFromTray,
      { kitId: kit.kitId, lineId: kit.line[position], lotCode, ...(quantity ? { quantity } : {}) },
      room.technician,
    );
  const clear = () =>
    room.shop.run(clearRack, { kitId: kit.kitId, to: 'scrap', reason: 'always new' }, room.technician);
  const filled = async () => {
    await room.issue(kit, washer);
    await room.issue(kit, seal);
    await install('cover', washer);
    await install('drive', seal);
  };

  it('takes everything off into the rack, each with its tag, and not twice', async () => {
    expect(Object.keys(tags)).toEqual(['cover', 'drive', 'speeder', 'pilot']);
    expect(tags.speeder?.lotCode).toBe(`${kit.number}-03`);
    await expect(room.shop.run(takeOff, { kitId: kit.kitId }, room.technician)).rejects.toMatchObject({
      type: 'already-taken-off',
    });
  });

  it('does not start before teardown, nor by someone not authorised', async () => {
    const waiting = await room.kit('B-waiting', customer, 'received');
    await expect(room.shop.run(takeOff, { kitId: waiting.kitId }, room.technician)).rejects.toMatchObject({
      type: 'work-stopped',
    });
    await expect(room.shop.run(takeOff, { kitId: waiting.kitId }, room.inspector)).rejects.toMatchObject({
      type: 'not-authorised',
    });
  });

  it('closes when every position is filled and tray and rack are empty', async () => {
    await filled();
    for (const position of ['speeder', 'pilot'] as const) {
      await pass(tags[position]?.lotId ?? '');
      await reuse(position);
    }
    expect((await clear()).cleared).toBe(3);
    const { judgement, positions } = await sheet();
    expect(judgement).toMatchObject({ closed: true, sentences: [] });
    expect(positions.map(({ position, installed, missing }) => [position, installed, missing])).toEqual([
      ['cover', 2, 0],
      ['drive', 1, 0],
      ['speeder', 1, 0],
      ['pilot', 1, 0],
      ['safety', 0, 0],
    ]);
  });

  it('names one new washer left in the tray, then a reused spring left in the rack', async () => {
    await room.issue(kit, washer);
    await room.issue(kit, seal);
    await install('cover', washer, 1);
    await install('drive', seal);
    await pass(tags.pilot?.lotId ?? '');
    await reuse('pilot');
    await clear();
    const { judgement } = await sheet();
    expect(judgement).toMatchObject({
      closed: false,
      leftOver: [
        { part: 'TW-10', quantity: 1, place: 'tray', lots: [washer] },
        { part: 'TP-30', quantity: 1, place: 'rack', lots: [`${kit.number}-03`] },
      ],
      missing: [
        { part: 'TW-10', quantity: 1, position: 'cover' },
        { part: 'TP-30', quantity: 1, position: 'speeder' },
      ],
    });
    expect(judgement.sentences).toHaveLength(4);
  });

  it('takes no part back that an inspector has not passed, and never where only new ones go', async () => {
    await expect(reuse('speeder')).rejects.toMatchObject({ type: 'not-passed' });
    await expect(pass(tags.drive?.lotId ?? '')).rejects.toMatchObject({ type: 'new-only' });
    const old = { kitId: kit.kitId, lineId: kit.line.drive, lotCode: tags.drive?.lotCode ?? '' };
    await expect(room.shop.run(reuseFromRack, old, room.technician)).rejects.toMatchObject({ type: 'new-only' });
  });

  it('replaces a worn spring: the rack lets go of it and the kit asks for a new one', async () => {
    const spring = await room.onShelf('spring', 1);
    await expect(room.issue(kit, spring.code)).rejects.toMatchObject({ type: 'part-not-on-kit' });
    const worn = { kitId: kit.kitId, lotId: tags.speeder?.lotId ?? '', quantity: 1, reason: 'free length below limit' };
    await room.shop.run(replaceRackPart, worn, room.inspector);
    expect(await room.places(worn.lotId)).toEqual({ scrap: 1 });
    expect((await room.issue(kit, spring.code)).lines).toMatchObject([{ position: 'speeder', quantity: 1 }]);
  });

  it('does not let go of a part that goes back', async () => {
    const lots = [{ lotId: tags.speeder?.lotId ?? '', quantity: 1 }];
    const input = { kitId: kit.kitId, to: 'scrap' as const, lots, reason: 'looks old' };
    await expect(room.shop.run(clearRack, input, room.technician)).rejects.toMatchObject({ type: 'goes-back-in' });
  });

  it('returns every part to its owner when the work was declined', async () => {
    await room.sql("UPDATE work_orders SET consent = 'declined' WHERE id = $1", [kit.workOrderId]);
    const input = { kitId: kit.kitId, to: 'customer' as const, reason: 'returned in pieces' };
    expect((await room.shop.run(clearRack, input, room.technician)).cleared).toBe(5);
    await expect(room.issue(kit, washer)).rejects.toMatchObject({ type: 'work-stopped' });
  });

  it('never installs more than the position takes, and takes a piece out again', async () => {
    await filled();
    await expect(install('cover', washer)).rejects.toMatchObject({ type: 'not-in-tray' });
    const out = { kitId: kit.kitId, lineId: kit.line.cover, lotCode: washer, quantity: 1, reason: 'wrong side' };
    const back = await room.shop.run(takeOut, { ...out, to: 'back' }, room.technician);
    expect(back.lines).toMatchObject([{ stillNeeds: 0 }]);
    await expect(install('cover', washer, 2)).rejects.toMatchObject({ type: 'more-than-needed' });
    const home = { kitId: kit.kitId, lotCode: washer, bin: 'B-01' };
    expect((await room.shop.run(returnFromTray, home, room.clerk)).lines).toMatchObject([{ stillNeeds: 1 }]);
  });

  it('asks for a fresh seal when the installed one is scrapped after a failed test', async () => {
    await filled();
    const out = { kitId: kit.kitId, lineId: kit.line.drive, lotCode: seal, quantity: 1, reason: 'leak test failed' };
    expect((await room.shop.run(takeOut, { ...out, to: 'scrap' }, room.technician)).lines).toMatchObject([
      { position: 'drive', stillNeeds: 1 },
    ]);
    expect((await room.issue(kit, seal)).lines).toMatchObject([{ position: 'drive', quantity: 1 }]);
  });
});
