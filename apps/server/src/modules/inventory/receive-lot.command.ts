import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { normaliseSerial } from '@hubwright/rules/identity';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { orderLock, recordDelivery, requireSupplier } from '../purchasing/public.ts';
import { moveStock } from './move-stock.ts';
import { refuseOtherUnit } from './other-unit.ts';
import { quarantine } from './place.ts';
import { checkReceipt, keepReceipt, refuseTwice } from './receipt.ts';
import { expiryOnReceipt } from './shelf-life.ts';

type Received = Input<typeof inventoryOperations.receiveLot>;

/** Pieces arrive: a lot in quarantine until someone authorised accepts it. Shelf life runs from the cure date. */
export const receiveLot = defineCommand(inventoryOperations.receiveLot, {
  locks: async (input, tx) => [
    `part:${input.partId}`,
    ...(input.purchaseOrderLineId ? await orderLock(tx, input.purchaseOrderLineId) : []),
  ],
  async execute(context) {
    const { tx, input, today, newId } = context;
    const part = found(await tx.part.findUnique({ where: { id: input.partId } }), 'This part number');
    refuseOtherUnit(part, input.unit);
    const expiresOn = expiryOnReceipt(part, input.cureDate, today);
    const serial = await serialOf(tx, part, input);
    await checkOwner(tx, input);
    const notGood = await checkReceipt(context, part);
    await refuseTwice(tx, input, serial);
    const order = input.purchaseOrderLineId
      ? await recordDelivery(tx, { ...input, today, lineId: input.purchaseOrderLineId })
      : undefined;
    const supplierId = order?.supplierId ?? input.supplierId;
    if (!order && supplierId) await requireSupplier(tx, { supplierId, today, doing: 'received from' });
    const lot = { id: newId(), code: await nextNumber(tx, 'LOT', 5), partId: part.id };
    const unitPrice = input.unitPrice ?? order?.unitPrice ?? part.unitPrice;
    const note = [input.damage, ...notGood].filter((words) => words !== '').join('; ');
    await tx.lot.create({ data: { ...lot, ...lotColumns(context, expiresOn), serial, unitPrice, note } });
    await keepReceipt(context, lot.id, supplierId);
    const { version } = await moveStock(context, {
      lot,
      quantity: input.quantity,
      from: { kind: 'supplier', ref: '' },
      to: quarantine,
      reason: 'received',
    });
    return {
      reply: { id: lot.id, version, code: lot.code, expiresOn: expiresOn ?? null },
      subjects: [{ kind: 'lot', id: lot.id, after: version }, ...(order ? [{ kind: 'order', id: order.orderId }] : [])],
      facts: { code: lot.code, part: part.number, quantity: input.quantity, expiresOn: expiresOn ?? null },
    };
  },
});

function lotColumns(
  { input, now }: Pick<Context<typeof inventoryOperations.receiveLot>, 'input' | 'now'>,
  expiresOn: string | undefined,
) {
  return {
    state: 'quarantine',
    origin: input.customerId ? 'customer' : 'purchase',
    sourceClass: input.sourceClass,
    supplierLot: input.supplierLot,
    certificate: input.certificate,
    cureDate: input.cureDate ?? null,
    expiresOn: expiresOn ? toDbDate(expiresOn) : null,
    ownerId: input.customerId ?? null,
    purchaseOrderLineId: input.purchaseOrderLineId ?? null,
    receivedAt: now,
  };
}

/** A serialized part comes one at a time, with a serial that no piece here carries yet. */
async function serialOf(tx: Tx, part: { id: string; number: string; serialised: boolean }, input: Received) {
  if (!part.serialised) return input.serial ? normaliseSerial(input.serial) : null;
  if (input.quantity !== 1 || !input.serial) {
    const pointer = input.serial ? '/quantity' : '/serial';
    throw new Problem(
      'serial-missing',
      `${part.number} is serialized: receive one at a time with its serial`,
      { part: part.number },
      [{ pointer, detail: 'One piece with its serial' }],
    );
  }
  const serial = normaliseSerial(input.serial);
  const here = await tx.lot.findFirst({
    where: { partId: part.id, serial, balances: { some: { onHand: { gt: 0 }, placeKind: { not: 'scrap' } } } },
    select: { code: true },
  });
  if (here)
    throw new Problem('serial-in-stock', `${part.number} serial ${serial} is lot ${here.code}`, { lot: here.code }, [
      { pointer: '/serial', detail: `Already here as ${here.code}` },
    ]);
  return serial;
}

/** What a customer supplied stays the customer's, so it must be known whose it is. */
async function checkOwner(tx: Tx, { customerId, sourceClass }: Received): Promise<void> {
  if (customerId)
    found(await tx.customer.findUnique({ where: { id: customerId }, select: { id: true } }), 'This customer');
  if ((sourceClass === 'customer-supplied') === (customerId !== undefined)) return;
  throw new Problem('invalid-input', 'A customer’s own part names the customer, and no other part does', {}, [
    { pointer: '/customerId', detail: customerId ? 'Only for customer-supplied parts' : 'Say whose part this is' },
  ]);
}
