import type { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';

type Receiving = Context<typeof inventoryOperations.receiveLot>;

/**
 * Every item of the newest checklist for this class of part is answered, once, and what is not good says what. Where no checklist was issued there is
 * nothing to answer. Answers the items found not good, in words.
 */
export async function checkReceipt(
  { tx, input }: Receiving,
  part: { number: string; class: string },
): Promise<string[]> {
  const checklist = await tx.receivingChecklist.findFirst({
    where: { partClass: part.class },
    orderBy: { revision: 'desc' },
  });
  if (!checklist) {
    if (input.answers.length === 0 && !input.checklistId) return [];
    throw new Problem('checklist-open', `There is no receiving checklist for ${part.class} parts to answer`);
  }
  const items = checklist.items as string[];
  if (input.checklistId !== checklist.id)
    throw new Problem(
      'checklist-open',
      input.checklistId
        ? `The checklist for ${part.class} parts has revision ${checklist.revision} now: answer that one`
        : `${part.number} is received by the checklist for ${part.class} parts, revision ${checklist.revision}`,
      { checklist: checklist.id },
    );
  const errors = items.flatMap((item, index) => {
    const given = input.answers.filter((answer) => answer.item === index);
    const pointer = `/answers/${index}`;
    if (given.length !== 1) return [{ pointer, detail: `Answer once: ${item}` }];
    return given[0]?.answer === 'not-good' && given[0].note === '' ? [{ pointer, detail: 'Say what is not good' }] : [];
  });
  if (errors.length > 0 || input.answers.length !== items.length)
    throw new Problem('checklist-open', `${part.number}: not every item is answered`, {}, errors);
  return input.answers.filter(({ answer }) => answer === 'not-good').map(({ item, note }) => `${items[item]}: ${note}`);
}

/** The same paper, supplier's lot and serial on the same order line is the same box, unless its receipt was undone. */
export async function refuseTwice(tx: Tx, input: Receiving['input'], serial: string | null): Promise<void> {
  if (!input.purchaseOrderLineId || input.deliveryNote === '') return;
  const before = await tx.lotReceipt.findFirst({
    where: {
      ...{ lineId: input.purchaseOrderLineId, deliveryNote: input.deliveryNote },
      lot: {
        ...{ supplierLot: input.supplierLot, serial },
        // A lot that was split off came in no box of its own.
        movements: { some: { fromKind: 'supplier' }, none: { toKind: 'supplier', reversesId: { not: null } } },
      },
    },
    include: { lot: { select: { id: true, code: true } } },
  });
  if (before)
    throw new Problem(
      'delivered-twice',
      `Delivery note ${input.deliveryNote} with lot ${input.supplierLot} became ${before.lot.code} before`,
      { lot: before.lot.code },
      [{ pointer: '/deliveryNote', detail: `Received as ${before.lot.code}` }],
    );
}

/** Keeps what was looked at with the lot it was looked at for. */
export async function keepReceipt(context: Receiving, lotId: string, supplierId: string | undefined): Promise<void> {
  const { tx, input, newId, now, actor, entryId } = context;
  await tx.lotReceipt.create({
    data: {
      ...{ id: newId(), lotId, lineId: input.purchaseOrderLineId ?? null, supplierId: supplierId ?? null },
      ...{ deliveryNote: input.deliveryNote, checklistId: input.checklistId ?? null, answers: input.answers },
      ...{ personId: actor.personId, at: now, entryId },
    },
  });
}
