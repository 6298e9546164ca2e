import type { Operation } from '@hubwright/contracts/operation';
import type { LotIdentity } from '@hubwright/rules/stock';
import type { Context } from '../../platform/command/command.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { theLot } from './lot.ts';

type FullLot = Awaited<ReturnType<typeof theLot>>;

/** What a lot is, in the terms in which two of them are compared. */
export function identityOf(lot: FullLot): LotIdentity {
  return {
    part: lot.partId,
    state: lot.state,
    certificate: lot.certificate,
    supplierLot: lot.supplierLot,
    source: lot.sourceClass,
    cureDate: lot.cureDate,
    expires: lot.expiresOn && fromDbDate(lot.expiresOn),
    owner: lot.ownerId,
    order: lot.purchaseOrderLineId,
    unitPrice: lot.unitPrice,
    serial: lot.serial,
    frozen: lot.part.outTimeHours !== null,
  };
}

/** A lot without pieces that has all of another's paper, dates, receipt and freezer log, under a label of its own. */
export async function copyLot(
  { tx, newId, entryId }: Pick<Context<Operation>, 'tx' | 'newId' | 'entryId'>,
  { part: _, ...lot }: FullLot,
): Promise<{ id: string; code: string; partId: string }> {
  const id = newId();
  const code = await nextNumber(tx, 'LOT', 5);
  await tx.lot.create({ data: { ...lot, id, code, version: 1 } });
  const log = await tx.freezerMove.findMany({ where: { lotId: lot.id }, orderBy: [{ at: 'asc' }, { id: 'asc' }] });
  await tx.freezerMove.createMany({ data: log.map((move) => ({ ...move, id: newId(), lotId: id, entryId })) });
  // What was looked at when they came in was looked at for these pieces too: a judgement asks for it.
  const receipt = await tx.lotReceipt.findUnique({ where: { lotId: lot.id } });
  if (receipt) {
    const { answers, ...came } = receipt;
    await tx.lotReceipt.create({
      data: { ...came, answers: answers as object, id: newId(), lotId: id, entryId },
    });
  }
  return { id, code, partId: lot.partId };
}
