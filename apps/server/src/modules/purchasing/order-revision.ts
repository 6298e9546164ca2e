import type { Context } from '../../platform/command/command.ts';
import { fromDbDate } from '../../platform/database/dates.ts';

/** An order as its supplier reads it: what a revision keeps and a paper prints. */
export interface OrderContent {
  readonly number: string;
  readonly orderedOn: string;
  readonly state: string;
  readonly note: string;
  readonly supplier: { readonly code: string; readonly name: string; readonly email: string; readonly phone: string };
  readonly lines: readonly {
    readonly sequence: number;
    readonly part: string;
    /** As its supplier calls it; not in revisions kept before it was asked for. */
    readonly supplierPart?: string;
    readonly description: string;
    readonly issueUnit: string;
    readonly quantity: number;
    readonly dueOn: string;
    readonly unitPrice: string;
  }[];
}

type Changing = Pick<Context<never>, 'tx' | 'newId' | 'now' | 'entryId'> & { readonly actor: { personId: string } };

/** Keeps the order as it reads now under its present revision. Call after the rows were written, under the order's lock. */
export async function keepRevision(
  { tx, newId, now, entryId, actor }: Changing,
  orderId: string,
  why: { changes: string[]; reason: string },
): Promise<void> {
  const order = await tx.purchaseOrder.findUniqueOrThrow({
    where: { id: orderId },
    include: { supplier: true, lines: { include: { part: true }, orderBy: { sequence: 'asc' } } },
  });
  const { code, name, email, phone } = order.supplier;
  const content: OrderContent = {
    ...{ number: order.number, orderedOn: fromDbDate(order.orderedOn), state: order.state, note: order.note },
    supplier: { code, name, email, phone },
    lines: order.lines.map(({ sequence, quantity, dueOn, unitPrice, part, supplierPartNumber }) => ({
      ...(supplierPartNumber === '' ? {} : { supplierPart: supplierPartNumber }),
      ...{ sequence, part: part.number, description: part.description, issueUnit: part.issueUnit },
      ...{ quantity, dueOn: fromDbDate(dueOn), unitPrice },
    })),
  };
  await tx.orderRevision.create({
    data: {
      ...{ id: newId(), orderId, revision: order.revision, ...why },
      ...{ content: JSON.parse(JSON.stringify(content)), personId: actor.personId, at: now, entryId },
    },
  });
}
