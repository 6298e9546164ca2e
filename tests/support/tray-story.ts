import { judgeLot } from '../../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../../apps/server/src/modules/inventory/receive-lot.command.ts';
import { receiveUnit } from '../../apps/server/src/modules/work-orders/receive-unit.command.ts';
import { readsOf, threeBlade } from './arrivals.ts';
import { actorOf, pin } from './people.ts';
import type { ShopApp } from './shop-app.ts';

/** A reseal of the three-blade model; answers its kit. */
export async function resealKit(shop: ShopApp): Promise<string> {
  const arrival = await threeBlade(shop, '4411', { scope: 'reseal' });
  const { kitId } = await shop.run(receiveUnit, arrival, await actorOf(shop, 'desk'));
  if (!kitId) throw new Error('The reseal has no kit');
  return kitId;
}

/** Two lots of the first always-new part of a kit that does not age, accepted and in a bin; answers their codes. */
export async function onShelf(shop: ShopApp, kitId: string): Promise<[string, string]> {
  const lines = await readsOf(shop).kitLine.findMany({
    where: { kitId, source: 'new', part: { shelfLifeMonths: null, serialised: false } },
    orderBy: { sequence: 'asc' },
    include: { part: true },
  });
  const line = lines[0];
  if (!line) throw new Error('The kit has no such line');
  const codes = [];
  for (const paper of ['S-1', 'S-2']) {
    const received = await shop.run(
      receiveLot,
      { partId: line.partId, quantity: 500, sourceClass: 'maker-new', supplierLot: paper, certificate: `C-${paper}` },
      await actorOf(shop, 'parts'),
    );
    const verdict = { lotId: received.id, verdict: 'accepted' as const, bin: 'B-01', signature: pin };
    await shop.run(judgeLot, verdict, await actorOf(shop, 'inspector'), { version: received.version });
    codes.push(received.code);
  }
  return codes as [string, string];
}
