import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

/** Order parts from a supplier who is approved today. Without a price the part's own stands. */
export const raiseOrder = defineCommand(purchasingOperations.raiseOrder, {
  locks: (input) => [`supplier:${input.supplierId}`],
  async execute({ tx, input, today, newId }) {
    const supplier = found(await tx.supplier.findUnique({ where: { id: input.supplierId } }), 'This supplier');
    const until = supplier.approvedUntil ? fromDbDate(supplier.approvedUntil) : undefined;
    if (!until || until < today)
      throw new Problem(
        'supplier-not-approved',
        until ? `${supplier.name} was approved until ${until}` : `${supplier.name} has not been approved`,
        { supplier: supplier.code },
      );
    refusePastDates(input, today);
    const prices = await pricesOf(tx, input);
    const id = newId();
    const number = await nextNumber(tx, 'PO', 4);
    await tx.purchaseOrder.create({
      data: { id, number, supplierId: supplier.id, state: 'ordered', orderedOn: toDbDate(today), note: input.note },
    });
    await tx.purchaseOrderLine.createMany({
      data: input.lines.map(({ partId, quantity, dueOn, unitPrice }, index) => ({
        id: newId(),
        orderId: id,
        sequence: index + 1,
        partId,
        quantity,
        dueOn: toDbDate(dueOn),
        unitPrice: unitPrice ?? prices.get(partId) ?? '0',
      })),
    });
    return {
      reply: { id, version: 1, number },
      subjects: [{ kind: 'order', id, after: 1 }],
      facts: { number, supplier: supplier.code },
    };
  },
});

function refusePastDates({ lines }: Input<typeof purchasingOperations.raiseOrder>, today: string): void {
  const errors = lines.flatMap(({ dueOn }, index) =>
    dueOn < today ? [{ pointer: `/lines/${index}/dueOn`, detail: 'This day has passed' }] : [],
  );
  if (errors.length > 0) throw new Problem('invalid-input', 'A delivery cannot be due before today', {}, errors);
}

async function pricesOf(
  tx: Tx,
  { lines }: Input<typeof purchasingOperations.raiseOrder>,
): Promise<Map<string, string>> {
  const parts = await tx.part.findMany({
    where: { id: { in: lines.map(({ partId }) => partId) } },
    select: { id: true, unitPrice: true },
  });
  const prices = new Map(parts.map(({ id, unitPrice }) => [id, unitPrice]));
  const unknown = lines.findIndex(({ partId }) => !prices.has(partId));
  if (unknown === -1) return prices;
  throw new Problem('not-found', 'One of the part numbers does not exist', {}, [
    { pointer: `/lines/${unknown}/partId`, detail: 'There is no such part' },
  ]);
}
