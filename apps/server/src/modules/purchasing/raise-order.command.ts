import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { isUnder, orderSum, priceAt } from '@hubwright/rules/replenishment';
import { defineCommand } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { requireSupplier } from './approved.ts';
import { keepRevision } from './order-revision.ts';

type Order = Input<typeof purchasingOperations.raiseOrder>;

/**
 * Order parts from a supplier who is approved today, or allowed by an exception. Without a price the supplier's own at that number stands, or the
 * part's.
 */
export const raiseOrder = defineCommand(purchasingOperations.raiseOrder, {
  locks: (input) => [`supplier:${input.supplierId}`],
  async execute(context) {
    const { tx, input, today, newId } = context;
    const asked = { supplierId: input.supplierId, today, doing: 'ordered from' };
    const { supplier, exception } = await requireSupplier(tx, asked);
    refusePastDates(input, today);
    const sold = await soldBy(tx, input, today);
    const lines = input.lines.map((line, index) => {
      const { price, supplierPartNumber } = sold(line);
      return {
        ...{ id: newId(), sequence: index + 1, partId: line.partId, quantity: line.quantity },
        ...{ dueOn: toDbDate(line.dueOn), unitPrice: line.unitPrice ?? price, supplierPartNumber },
      };
    });
    refuseTooSmall(input, orderSum(lines), supplier);
    const id = newId();
    const number = await nextNumber(tx, 'PO', 4);
    await tx.purchaseOrder.create({
      data: { id, number, supplierId: supplier.id, state: 'ordered', orderedOn: toDbDate(today), note: input.note },
    });
    await tx.purchaseOrderLine.createMany({ data: lines.map((line) => ({ ...line, orderId: id })) });
    await keepRevision(context, id, {
      changes: [lines.length === 1 ? 'Raised with one line.' : `Raised with ${lines.length} lines.`],
      reason: '',
    });
    return {
      reply: { id, version: 1, number },
      subjects: [{ kind: 'order', id, after: 1 }],
      facts: { number, supplier: supplier.code, ...(exception ? { exception } : {}) },
    };
  },
});

function refusePastDates({ lines }: Order, today: string): void {
  const errors = lines.flatMap(({ dueOn }, index) =>
    dueOn < today ? [{ pointer: `/lines/${index}/dueOn`, detail: 'This day has passed' }] : [],
  );
  if (errors.length > 0) throw new Problem('invalid-input', 'A delivery cannot be due before today', {}, errors);
}

function refuseTooSmall({ takesLess }: Order, sum: string, supplier: { name: string; leastOrder: string }): void {
  if (takesLess || !isUnder(sum, supplier.leastOrder)) return;
  const words = `${supplier.name} takes no order under ${supplier.leastOrder}; this one comes to ${sum}`;
  throw new Problem('order-too-small', words, { sum, least: supplier.leastOrder });
}

/** What a line costs each at its number, and how the supplier calls the part: by its offer of that day, or else by the part. */
async function soldBy(tx: Tx, { lines, supplierId }: Order, today: string) {
  const parts = await tx.part.findMany({
    where: { id: { in: lines.map(({ partId }) => partId) } },
    select: { id: true, unitPrice: true, offers: { where: { supplierId, ...holdsOn(today) } } },
  });
  const known = new Map(parts.map((part) => [part.id, part]));
  const unknown = lines.findIndex(({ partId }) => !known.has(partId));
  if (unknown !== -1)
    throw new Problem('not-found', 'One of the part numbers does not exist', {}, [
      { pointer: `/lines/${unknown}/partId`, detail: 'There is no such part' },
    ]);
  return ({ partId, quantity }: Order['lines'][number]) => {
    const part = known.get(partId);
    const [offer] = part?.offers ?? [];
    const breaks = (offer?.breaks ?? []) as { from: number; unitPrice: string }[];
    return {
      price: priceAt(breaks, quantity) ?? part?.unitPrice ?? '0',
      supplierPartNumber: offer?.supplierPartNumber ?? '',
    };
  };
}

const holdsOn = (day: string) => ({
  AND: [
    { OR: [{ validFrom: null }, { validFrom: { lte: toDbDate(day) } }] },
    { OR: [{ validUntil: null }, { validUntil: { gte: toDbDate(day) } }] },
  ],
});
