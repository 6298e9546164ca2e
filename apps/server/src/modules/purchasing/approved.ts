import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';

interface Asked {
  readonly supplierId: string;
  readonly today: string;
  /** An exception for one order holds for no other. */
  readonly orderId?: string | undefined;
  /** What is to be done, for the refusal: `ordered from`, `received from`. */
  readonly doing: string;
}

/**
 * The supplier, when it is approved today or a manager or inspector has allowed an exception that holds today. Call under the supplier's
 * or the order's lock. Answers the exception it rests on, for the record.
 */
export async function requireSupplier(tx: Tx, asked: Asked) {
  const { supplierId, today, orderId, doing } = asked;
  const supplier = found(await tx.supplier.findUnique({ where: { id: supplierId } }), 'This supplier');
  const until = fromDbDateOrNull(supplier.approvedUntil);
  if (until !== null && until >= today) return { supplier, exception: undefined };
  const exception = await tx.supplierException.findFirst({
    where: {
      supplierId,
      goodUntil: { gte: toDbDate(today) },
      OR: [{ orderId: null }, ...(orderId ? [{ orderId }] : [])],
    },
    orderBy: { at: 'desc' },
  });
  if (exception)
    return {
      supplier,
      exception: { id: exception.id, reason: exception.reason, goodUntil: fromDbDate(exception.goodUntil) },
    };
  throw new Problem('supplier-not-approved', `${standingWords(supplier.name, until, today)} It cannot be ${doing}.`, {
    supplier: supplier.code,
  });
}

/** How a supplier stands today, in a sentence. */
export function standingWords(name: string, until: string | null, today: string): string {
  if (until === null) return `${name} has not been approved.`;
  return until < today ? `The approval of ${name} ran out on ${until}.` : `${name} is approved until ${until}.`;
}
