import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import { cureExpiry } from '@hubwright/rules/dates';
import { normaliseSerial } from '@hubwright/rules/identity';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { moveStock } from './move-stock.ts';

/** Pieces arrive: a lot in quarantine until someone authorised accepts it. Shelf life runs from the cure date. */
export const receiveLot = defineCommand(inventoryOperations.receiveLot, {
  locks: (input) => [`part:${input.partId}`],
  async execute(context) {
    const { tx, input, now, today, newId } = context;
    const part = found(await tx.part.findUnique({ where: { id: input.partId } }), 'This part number');
    const expiresOn = expiry(part, input.cureDate, today);
    if (part.serialised && (input.quantity !== 1 || !input.serial)) {
      throw new Problem('serial-missing', `${part.number} is serialized: receive one at a time with its serial`, {
        part: part.number,
      });
    }
    const id = newId();
    const code = await nextNumber(tx, 'LOT', 5);
    await tx.lot.create({
      data: {
        id,
        code,
        partId: part.id,
        state: 'quarantine',
        origin: input.customerId ? 'customer' : 'purchase',
        sourceClass: input.sourceClass,
        supplierLot: input.supplierLot,
        certificate: input.certificate,
        cureDate: input.cureDate ?? null,
        expiresOn: expiresOn ? toDbDate(expiresOn) : null,
        ownerId: input.customerId ?? null,
        serial: input.serial ? normaliseSerial(input.serial) : null,
        unitPrice: input.unitPrice ?? part.unitPrice,
        purchaseOrderLineId: input.purchaseOrderLineId ?? null,
        receivedAt: now,
        note: input.damage,
      },
    });
    await moveStock(context, {
      lot: { id, code, partId: part.id },
      quantity: input.quantity,
      from: { kind: 'supplier', ref: '' },
      to: { kind: 'quarantine', ref: '' },
      reason: 'received',
    });
    return {
      reply: { id, version: 1, code, expiresOn: expiresOn ?? null },
      subjects: [{ kind: 'lot', id, after: 1 }],
      facts: { code, part: part.number, quantity: input.quantity, expiresOn: expiresOn ?? null },
    };
  },
});

function expiry(
  part: { number: string; shelfLifeMonths: number | null },
  cureDate: string | undefined,
  today: string,
): string | undefined {
  if (part.shelfLifeMonths === null) return undefined;
  if (!cureDate)
    throw new Problem('cure-date-wrong', `${part.number} has a shelf life: enter the cure date from the package`, {}, [
      { pointer: '/cureDate', detail: 'Enter the cure date' },
    ]);
  const cured = cureExpiry(cureDate, { months: 0 });
  if (cured > today && !/Q/i.test(cureDate))
    throw new Problem('cure-date-wrong', `A cure date of ${cureDate} lies in the future`, {}, [
      { pointer: '/cureDate', detail: 'The cure date lies in the future' },
    ]);
  const expires = cureExpiry(cureDate, { months: part.shelfLifeMonths });
  if (expires <= today)
    throw new Problem('lot-expired', `Cured ${cureDate}, this expired on ${expires}`, { expiresOn: expires });
  return expires;
}
