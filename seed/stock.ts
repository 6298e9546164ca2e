import { issueChecklist } from '../apps/server/src/modules/inventory/issue-checklist.command.ts';
import { judgeLot } from '../apps/server/src/modules/inventory/judge-lot.command.ts';
import { receiveLot } from '../apps/server/src/modules/inventory/receive-lot.command.ts';
import { confirmOrder } from '../apps/server/src/modules/purchasing/confirm-order.command.ts';
import { markSent } from '../apps/server/src/modules/purchasing/mark-order-sent.command.ts';
import { raiseOrder } from '../apps/server/src/modules/purchasing/raise-order.command.ts';
import { setLeastOrder } from '../apps/server/src/modules/purchasing/set-least-order.command.ts';
import { setOffer } from '../apps/server/src/modules/purchasing/set-offer.command.ts';
import type { Calendar } from './calendar.ts';
import { parts } from './data/parts.ts';
import {
  checklistDay,
  checklists,
  type DeliverySeed,
  deliveries,
  leastOrders,
  offers,
  purchaseOrders,
  ringOrders,
} from './data/stock.ts';
import type { Reference } from './reference.ts';
import { presigned, type SeedRun } from './run.ts';

const partSeeds = new Map(parts.map((part) => [part.number, part]));

/** Deliveries and purchase orders of the last year. */
export function seedStock(run: SeedRun, calendar: Calendar, ids: Reference): void {
  for (const [index, delivery] of deliveries.entries())
    calendar.on(delivery.day, 13.5, () => deliver(run, ids, { ...delivery, paper: `TH-D${4100 + index}` }));
  calendar.on(checklistDay, 13.2, () => issueChecklists(run));
  for (const order of ringOrders) calendar.on(order.day, 14, () => raiseRings(run, calendar, { order, ids }));
  calendar.on(-40, 13.2, () => priceLists(run, ids));
  for (const order of purchaseOrders) calendar.on(order.day, 14, () => raise(run, calendar, { order, ids }));
}

type StockClass = keyof typeof checklists;

async function issueChecklists(run: SeedRun): Promise<void> {
  for (const [partClass, items] of Object.entries(checklists) as [StockClass, readonly string[]][])
    await run.run(issueChecklist, { partClass, items: [...items] }, { by: 'inspector' });
}

/** Price lists and least orders, written down once somebody had the time. */
async function priceLists(run: SeedRun, ids: Reference): Promise<void> {
  for (const { part, supplier, breaks, ...terms } of offers)
    await run.run(
      setOffer,
      {
        ...{ partId: ids.parts.get(part) as string, supplierId: ids.suppliers.get(supplier) as string },
        ...{ ...terms, breaks: [...breaks] },
      },
      { by: 'parts' },
    );
  for (const [code, leastOrder] of Object.entries(leastOrders))
    await run.run(
      setLeastOrder,
      { supplierId: ids.suppliers.get(code) as string, leastOrder },
      { by: 'parts', version: 1 },
    );
}

/** An order of one line, promised in two weeks, which comes when it comes. */
async function raiseRings(
  run: SeedRun,
  calendar: Calendar,
  { order, ids }: { order: (typeof ringOrders)[number]; ids: Reference },
): Promise<void> {
  const { part, day, quantity, promised, took } = order;
  const lines = [{ partId: ids.parts.get(part) as string, quantity, dueOn: run.day(day + promised) }];
  const supplierId = ids.suppliers.get('HARROW') as string;
  const { id } = await run.run(raiseOrder, { supplierId, note: '', lines }, { by: 'parts' });
  const purchaseOrderLineId = await run.orderLineId(id, 1);
  const came = { part, day: day + took, quantity, cured: day - 30, paper: `TH-R${400 + day}`, purchaseOrderLineId };
  calendar.on(day + took, 14, () => deliver(run, ids, came));
}

/** Every item of the checklist that holds that day, found good. */
async function looked(run: SeedRun, partClass: string) {
  const checklist = await run.reads.receivingChecklist.findFirst({
    where: { partClass },
    orderBy: { revision: 'desc' },
  });
  if (!checklist) return {};
  const answers = (checklist.items as string[]).map((_, item) => ({ item, answer: 'good' as const }));
  return { checklistId: checklist.id, answers };
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
      deliveryNote: delivery.purchaseOrderLineId ? `DN-${delivery.paper}` : '',
      ...(await looked(run, part.class)),
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
  if ('sent' in order) await run.run(markSent, { orderId: id, how: order.sent }, { by: 'parts', version: 1 });
  if ('confirmed' in order) await confirm(run, id, order);
  for (const [index, line] of order.lines.entries()) {
    if (!('came' in line)) continue;
    const purchaseOrderLineId = await run.orderLineId(id, index + 1);
    const { day, quantity, cured } = line.came;
    const came = { part: line.part, day, quantity, cured, paper: `TH-P${index + 1}`, purchaseOrderLineId };
    calendar.on(day, 14, () => deliver(run, ids, came));
  }
}

/** What the supplier wrote back: each line on its day, as many as were ordered. */
async function confirm(
  run: SeedRun,
  orderId: string,
  order: OrderSeed & { readonly confirmed: number },
): Promise<void> {
  const lines = [];
  for (const [index, { quantity, due }] of order.lines.entries())
    lines.push({
      lineId: await run.orderLineId(orderId, index + 1),
      ...{ quantity, comesOn: run.day(due + order.confirmed) },
    });
  const input = { orderId, reference: `AC-${4000 - order.day}`, lines };
  await run.run(confirmOrder, input, { by: 'parts', version: 2 });
}
