import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type KitOf, type PartName, Stockroom } from '../../../../../tests/support/stockroom.ts';
import { unitDue } from '../../../../../tests/support/unit-due.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { LiveFeed } from '../../platform/live/live-feed.ts';
import { quarantineLot } from '../inventory/quarantine-lot.command.ts';
import { setAlternates } from '../inventory/set-alternates.command.ts';
import { raiseOrder } from '../purchasing/raise-order.command.ts';
import { KitCover } from './kit-cover.ts';
import { reserveKit } from './reserve-kit.command.ts';
import { setNeedBy } from './set-need-by.command.ts';

type Step = readonly [
  what: 'shelf' | 'order' | 'reserve' | 'need' | 'quarantine' | 'take-off' | 'issue' | 'alternates' | 'due' | 'receive',
  kit: number,
  part: number,
  much: number,
];
const parts: readonly PartName[] = ['washer', 'seal', 'other seal', 'spring', 'bushing', 'wire'];

describe('the kept answer to what is short', () => {
  let room: Stockroom;
  let kits: KitOf[];
  let lots: { id: string; code: string }[];
  let supplierId: string;
  let customers: string[];
  let received = 0;
  beforeAll(async () => {
    room = await Stockroom.open();
    const [one, two] = [
      await room.customer('KEPT-1', ['maker-new']),
      await room.customer('KEPT-2', ['maker-new', 'approved-manufacturer']),
    ];
    customers = [one, two];
    kits = [];
    for (const [at, customer] of [one, two, one, two].entries()) kits.push(await room.kit(`Q-${at}`, customer));
    lots = [];
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
  });
  afterAll(() => room.close());

  const steps: Record<Step[0], (kit: KitOf, part: PartName, much: number) => Promise<unknown>> = {
    shelf: async (_, part, much) => lots.push(await room.onShelf(part, much)),
    order: (_, part, much) => {
      const lines = [{ partId: room.part(part), quantity: much, dueOn: room.day(much * 3) }];
      return room.shop.run(raiseOrder, { supplierId, lines }, room.clerk);
    },
    reserve: ({ kitId }) => room.shop.run(reserveKit, { kitId }, room.clerk),
    need: async ({ kitId }, _, much) => {
      const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: kitId } });
      return room.shop.run(setNeedBy, { kitId, needBy: room.day(much) }, room.clerk, { version });
    },
    quarantine: async (_, __, much) => {
      const lot = await room.reads.lot.findUniqueOrThrow({ where: { id: lots[much % lots.length]?.id ?? '' } });
      return room.shop.run(quarantineLot, { lotId: lot.id, reason: 'doubted' }, room.clerk, { version: lot.version });
    },
    'take-off': (kit) => room.takenOff(kit),
    issue: (kit, _, much) => room.issue(kit, lots[much % lots.length]?.code ?? ''),
    // A unit out there comes due, or its date moves.
    due: async (_, __, much) =>
      unitDue(room, `DUE-${much}`, { customerId: customers[much % 2] ?? '', dueOn: room.day(much * 25) }),
    receive: async (_, __, much) => {
      received += 1;
      return room.kit(`R-${received}`, customers[much % 2] ?? '', 'received');
    },
    alternates: async (_, part, much) => {
      const { id, version } = await room.reads.part.findUniqueOrThrow({ where: { id: room.part(part) } });
      const alternates = much % 2 === 0 ? [] : [{ number: room.number('washer') }];
      return room.shop.run(setAlternates, { partId: id, alternates }, room.clerk, { version });
    },
  };

  it('is what working everything out anew would answer, after every one of many random changes', async () => {
    const { app } = room.shop.running;
    const given = [app.get(Reads), app.get<Clock>(CLOCK), app.get(ShopZone), app.get(LiveFeed)] as const;
    const kept = new KitCover(...given);
    const step = fc.tuple(
      fc.constantFrom(...(Object.keys(steps) as Step[0][])),
      fc.nat(3),
      fc.nat(parts.length - 1),
      fc.integer({ min: 1, max: 6 }),
    );
    let [done, foreseen] = [0, 0];
    try {
      await kept.ofOpenKits();
      await fc.assert(
        fc.asyncProperty(fc.array(step, { minLength: 6, maxLength: 10 }), async (changes) => {
          for (const [what, kit, part, much] of changes) {
            const isDone = await steps[what](kits[kit] as KitOf, parts[part] as PartName, much).then(
              () => 1,
              () => 0,
            );
            done += isDone;
            const anew = new KitCover(...given);
            try {
              const [mine, fresh] = [await kept.kept(), await anew.kept()];
              expect(mine.all()).toEqual(fresh.all());
              expect(mine.foreseen()).toEqual(fresh.foreseen());
              foreseen = Math.max(foreseen, mine.foreseen().length);
            } finally {
              await anew.onApplicationShutdown();
            }
          }
        }),
        { numRuns: 4, endOnFailure: true },
      );
    } finally {
      await kept.onApplicationShutdown();
    }
    expect(done).toBeGreaterThan(10);
    expect(foreseen).toBeGreaterThan(0);
  }, 300_000);
});
