import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { countLot } from '../../apps/server/src/modules/inventory/count-lot.command.ts';
import { decideCount } from '../../apps/server/src/modules/inventory/decide-count.command.ts';
import { decideSuspicion } from '../../apps/server/src/modules/inventory/decide-suspicion.command.ts';
import { mergeLots } from '../../apps/server/src/modules/inventory/merge-lots.command.ts';
import { moveLot } from '../../apps/server/src/modules/inventory/move-lot.command.ts';
import { quarantineLot } from '../../apps/server/src/modules/inventory/quarantine-lot.command.ts';
import { returnToSupplier } from '../../apps/server/src/modules/inventory/return-to-supplier.command.ts';
import { reverseMovement } from '../../apps/server/src/modules/inventory/reverse-movement.command.ts';
import { scrapLot } from '../../apps/server/src/modules/inventory/scrap-lot.command.ts';
import { splitLot } from '../../apps/server/src/modules/inventory/split-lot.command.ts';
import { suspectLot } from '../../apps/server/src/modules/inventory/suspect-lot.command.ts';
import { clearRack } from '../../apps/server/src/modules/kits/clear-rack.command.ts';
import { judgeClose } from '../../apps/server/src/modules/kits/closing.ts';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { passRackPart } from '../../apps/server/src/modules/kits/pass-rack-part.command.ts';
import { replaceRackPart } from '../../apps/server/src/modules/kits/replace-rack-part.command.ts';
import { reserveKit } from '../../apps/server/src/modules/kits/reserve-kit.command.ts';
import { returnFromTray } from '../../apps/server/src/modules/kits/return-from-tray.command.ts';
import { reuseFromRack } from '../../apps/server/src/modules/kits/reuse-from-rack.command.ts';
import { scrapFromTray } from '../../apps/server/src/modules/kits/scrap-from-tray.command.ts';
import { takeOut } from '../../apps/server/src/modules/kits/take-out.command.ts';
import { Database } from '../../apps/server/src/platform/database/client.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { actorOf, pin } from '../support/people.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

/** What someone in the shop may try next; whether it is allowed is the server's to say. */
type Step = { readonly do: (typeof tries)[number]; readonly pick: number; readonly quantity: number };
const tries = [
  'issue',
  'return',
  'scrap from tray',
  'install',
  'reuse',
  'pass',
  'replace',
  'clear rack',
  'take out',
  'move',
  'scrap',
  'count',
  'quarantine',
  'reverse',
  'reserve kit',
  'split',
  'merge',
  'return to supplier',
  'suspect',
  'decide suspicion',
  'decide count',
  'hold the rack',
] as const;

/** Problems that mean no; anything else is a fault of the server. */
const refusals = new Set([409, 412, 404, 403]);

describe('the ledger under whatever people do', () => {
  let room: Stockroom;
  let customer: string;
  let orderLine: string;
  let manager: Person;
  let database: Database;
  let runs = 0;
  beforeAll(async () => {
    room = await Stockroom.open();
    customer = await room.customer('RANDOM', ['maker-new']);
    orderLine = await room.ordered('washer', 10_000);
    manager = await actorOf(room.shop, 'manager');
    database = new Database(room.shop.databaseUrl);
  });
  afterAll(async () => {
    await database.close();
    await room.close();
  });

  const steps = fc.array(
    fc.record({ do: fc.constantFrom(...tries), pick: fc.nat(7), quantity: fc.integer({ min: 1, max: 4 }) }),
    { minLength: 8, maxLength: 22 },
  );

  it('keeps every piece, holds nothing below zero and closes only what is whole', async () => {
    await fc.assert(
      fc.asyncProperty(steps, async (plan) => {
        runs += 1;
        const kit = await room.kit(`P-${runs}`, customer);
        const lots = [
          await room.onShelf('washer', 4, { purchaseOrderLineId: orderLine }),
          await room.onShelf('seal', 2),
          await room.onShelf('spring', 2),
        ];
        const tags = Object.values(await room.takenOff(kit));
        const world = { room, kit, lots, tags, manager };
        for (const step of plan) await attempt(world, step);
        expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
        await judgedByCounting(database, room, kit);
      }),
      { numRuns: 12 },
    );
  }, 300_000);

  it('closes what was built whole, and the counting agrees', async () => {
    const kit = await room.kit('P-whole', customer);
    const [washer, seal] = [await room.onShelf('washer', 2), await room.onShelf('seal', 1)];
    const tags = await room.takenOff(kit);
    const world = { room, kit, lots: [washer, seal], tags: [], manager };
    for (const lot of world.lots) await room.issue(kit, lot.code);
    for (const pick of [0, 1]) await attempt(world, { do: 'install', pick, quantity: 2 - pick });
    for (const position of ['speeder', 'pilot'] as const) {
      const { lotId, lotCode } = tags[position] as { lotId: string; lotCode: string };
      await room.shop.run(passRackPart, { kitId: kit.kitId, lotId, signature: pin }, room.inspector);
      await room.shop.run(reuseFromRack, { kitId: kit.kitId, lineId: kit.line[position], lotCode }, room.technician);
    }
    await room.shop.run(clearRack, { kitId: kit.kitId, to: 'scrap', reason: 'always new' }, room.technician);
    expect(await judgedByCounting(database, room, kit)).toBe(true);
  });
});

type Person = Awaited<ReturnType<typeof actorOf>>;

interface World {
  readonly room: Stockroom;
  readonly kit: KitOf;
  readonly lots: readonly { id: string; code: string }[];
  readonly tags: readonly { lotId: string; lotCode: string }[];
  readonly manager: Person;
}

async function attempt(world: World, step: Step): Promise<void> {
  try {
    await (handling.has(step.do) ? handle(world, step) : act(world, step));
  } catch (error) {
    if (!refusals.has((error as { status?: number }).status ?? 0)) throw error;
  }
}

async function act({ room, kit, lots, tags }: World, { do: what, pick, quantity }: Step): Promise<unknown> {
  const { shop, clerk, technician, inspector } = room;
  const lot = lots[pick % lots.length] as { id: string; code: string };
  const tag = tags[pick % Math.max(1, tags.length)] ?? { lotId: lot.id, lotCode: lot.code };
  const lineId = Object.values(kit.line)[pick % 5] as string;
  const scan = { kitId: kit.kitId, lotCode: lot.code };
  switch (what) {
    case 'issue':
      return room.issue(kit, lot.code, pick % 2 ? { quantity } : {});
    case 'return':
      return shop.run(returnFromTray, { ...scan, bin: 'B-02', quantity }, clerk);
    case 'scrap from tray':
      return shop.run(scrapFromTray, { ...scan, quantity, reason: 'dropped' }, technician);
    case 'install':
      return shop.run(installFromTray, { ...scan, lineId, quantity }, technician);
    case 'reuse':
      return shop.run(reuseFromRack, { kitId: kit.kitId, lineId, lotCode: tag.lotCode }, technician);
    case 'pass':
      return shop.run(passRackPart, { kitId: kit.kitId, lotId: tag.lotId, signature: pin }, inspector);
    case 'replace':
      return shop.run(replaceRackPart, { kitId: kit.kitId, lotId: tag.lotId, quantity, reason: 'worn' }, inspector);
    case 'clear rack':
      return shop.run(clearRack, { kitId: kit.kitId, to: pick % 2 ? 'scrap' : 'customer', reason: 'old' }, technician);
    case 'take out': {
      const to = pick % 2 ? ('back' as const) : ('scrap' as const);
      const lotCode = pick > 3 ? tag.lotCode : lot.code;
      return shop.run(takeOut, { kitId: kit.kitId, lineId, lotCode, quantity, to, reason: 'test failed' }, technician);
    }
    case 'move':
      return shop.run(moveLot, { lotId: lot.id, from: 'B-01', to: 'B-02', quantity }, clerk);
    case 'scrap':
      return shop.run(scrapLot, { lotId: lot.id, bin: 'B-01', quantity, reason: 'bent', ...room.witnessed }, clerk);
    case 'count': {
      const { version } = await room.reads.lot.findUniqueOrThrow({ where: { id: lot.id } });
      const input = { lotId: lot.id, bin: 'B-01', counted: quantity, reason: 'count' };
      return shop.run(countLot, input, clerk, { version });
    }
    case 'quarantine':
      return pick === 0 ? shop.run(quarantineLot, { lotId: lot.id, reason: 'doubt' }, inspector) : undefined;
    case 'reverse': {
      const last = await room.reads.movement.findFirst({ where: { lotId: lot.id }, orderBy: { sequence: 'desc' } });
      return last && shop.run(reverseMovement, { movementId: last.id, reason: 'mistake' }, clerk);
    }
    case 'reserve kit':
      return shop.run(reserveKit, { kitId: kit.kitId }, clerk);
    default:
      throw new Error(`${what} is about a lot`);
  }
}

const handling: ReadonlySet<Step['do']> = new Set([
  'split',
  'merge',
  'return to supplier',
  'suspect',
  'decide suspicion',
  'decide count',
  'hold the rack',
]);

/** What is done with lots beside using them; labels made by a split are among the lots that may be picked next. */
async function handle({ room, kit, lots, manager }: World, { do: what, pick, quantity }: Step): Promise<unknown> {
  const { shop, clerk, technician, inspector } = room;
  const lotId = lots[pick % lots.length]?.id ?? '';
  const { version, partId } = await room.reads.lot.findUniqueOrThrow({ where: { id: lotId } });
  const newest = { where: { partId, id: { not: lotId } }, orderBy: { code: 'desc' } } as const;
  switch (what) {
    case 'split':
      return shop.run(splitLot, { lotId, bin: 'B-01', quantity, reason: 'apart' }, clerk, { version });
    case 'merge': {
      const from = await room.reads.lot.findFirst(newest);
      const merge = { lotId: from?.id ?? '', intoId: lotId, reason: 'together' };
      return from && shop.run(mergeLots, merge, clerk, { version: from.version });
    }
    case 'return to supplier': {
      const back = { lotId, quantity, reference: 'RG', reason: 'burrs', replaced: pick > 3 };
      return shop.run(returnToSupplier, pick % 2 ? { ...back, bin: 'B-01' } : back, clerk, { version });
    }
    case 'suspect':
      return pick === 1 ? shop.run(suspectLot, { lotId, reason: 'mark' }, technician) : undefined;
    case 'decide suspicion': {
      const decision = pick > 3 ? ('cleared' as const) : ('confirmed' as const);
      const decide = { lotId, decision, basis: 'maker says so', signature: pin };
      return shop.run(decideSuspicion, decide, inspector, { version });
    }
    case 'decide count': {
      const waiting = await room.reads.lotCount.findFirst({ where: { lotId, state: 'waiting' } });
      const verdict = (['approved', 'refused', 'recount'] as const)[pick % 3] ?? 'approved';
      return waiting && shop.run(decideCount, { countId: waiting.id, verdict }, manager);
    }
    case 'hold the rack':
      return shop.run(clearRack, { kitId: kit.kitId, to: 'held', reason: 'worn' }, technician);
    default:
      throw new Error(`${what} is not about a lot`);
  }
}

/**
 * The judgement against plain counting of balances and movements by place: a build may close only when tray and rack are
 * empty and every position holds what it requires. Answers the judgement.
 */
async function judgedByCounting(database: Database, room: Stockroom, kit: KitOf): Promise<boolean> {
  const { closed } = await database.prisma.$transaction((tx) => judgeClose(tx, kit.workOrderId));
  const left = await room.reads.balance.findMany({
    where: {
      onHand: { gt: 0 },
      OR: [
        { placeKind: 'tray', placeRef: kit.kitId },
        { placeKind: 'rack', placeRef: kit.workOrderId },
      ],
    },
  });
  const lines = await room.reads.kitLine.findMany({ where: { kitId: kit.kitId } });
  const movements = await room.reads.movement.findMany({
    where: { kitLineId: { in: lines.map(({ id }) => id) }, OR: [{ fromKind: 'unit' }, { toKind: 'unit' }] },
  });
  const inUnit = (lineId: string) =>
    movements
      .filter(({ kitLineId }) => kitLineId === lineId)
      .reduce((sum, { toKind, quantity }) => sum + (toKind === 'unit' ? quantity : -quantity), 0);
  const whole = lines.every(({ id, quantity, minimum }) => {
    const installed = inUnit(id);
    return installed >= (minimum ?? quantity) && installed <= quantity;
  });
  expect(closed).toBe(left.length === 0 && whole);
  return closed;
}
