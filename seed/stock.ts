import { judgeLot } from '../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../apps/server/src/modules/inventory/receive-lot.command.ts';
import { raiseOrder } from '../apps/server/src/modules/purchasing/raise-order.command.ts';
import type { Calendar } from './calendar.ts';
import { parts } from './data/parts.ts';
import { type DeliverySeed, deliveries, purchaseOrders } from './data/stock.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';

const partSeeds = new Map(parts.map((part) => [part.number, part]));

/** Deliveries and purchase orders of the last year. */
export function seedStock(run: SeedRun, calendar: Calendar, ids: Reference): void {
  for (const [index, delivery] of deliveries.entries())
    calendar.on(delivery.day, 13.5, () => deliver(run, ids, { ...delivery, paper: `TH-D${4100 + index}` }));
  for (const order of purchaseOrders) calendar.on(order.day, 14, () => raise(run, calendar, { order, ids }));
}

type Delivery = DeliverySeed & { readonly paper: string; readonly purchaseOrderLineId?: string };

async function deliver(run: SeedRun, ids: Reference, delivery: Delivery): Promise<void> {
  const part = partSeeds.get(delivery.part);
  const partId = ids.parts.get(delivery.part);
  if (!part || !partId) throw new Error(`There is no part ${delivery.part}`);
  const { id, version } = await run.run(
    receiveLot,
    {
      partId,
      quantity: delivery.quantity,
      sourceClass: delivery.sourceClass ?? 'maker-new',
      supplierLot: delivery.paper,
      certificate: delivery.certificate ?? `C-${delivery.paper}`,
      damage: delivery.damage ?? '',
      ...(part.shelfLifeMonths && delivery.cured !== undefined ? { cureDate: run.day(delivery.cured) } : {}),
      ...(delivery.serial ? { serial: delivery.serial } : {}),
      ...(delivery.purchaseOrderLineId ? { purchaseOrderLineId: delivery.purchaseOrderLineId } : {}),
    },
    { by: 'parts' },
  );
  if (delivery.left === 'in quarantine') return;
  const verdict = delivery.left === 'rejected' ? 'rejected' : 'accepted';
  const bin = verdict === 'accepted' && part.homeBin ? { bin: part.homeBin } : {};
  const note = delivery.damage ?? '';
  await run.run(judgeLot, { lotId: id, verdict, note, ...bin, signature: presigned }, { by: 'parts', version });
}

type OrderSeed = (typeof purchaseOrders)[number];

async function raise(run: SeedRun, calendar: Calendar, given: { order: OrderSeed; ids: Reference }): Promise<void> {
  const { order, ids } = given;
  const lines = order.lines.map(({ part, quantity, due }) => ({
    partId: ids.parts.get(part) as string,
    quantity,
    dueOn: run.day(due),
  }));
  const supplierId = ids.suppliers.get(order.supplier) as string;
  const { id } = await run.run(raiseOrder, { supplierId, note: order.note, lines }, { by: 'parts' });
  for (const [index, line] of order.lines.entries()) {
    if (!('came' in line)) continue;
    const purchaseOrderLineId = await run.orderLineId(id, index + 1);
    const { day, quantity, cured } = line.came;
    const came = { part: line.part, day, quantity, cured, paper: `TH-P${index + 1}`, purchaseOrderLineId };
    calendar.on(day, 14, () => deliver(run, ids, came));
  }
}
