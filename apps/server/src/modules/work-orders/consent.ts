import type { Tx } from '../../platform/database/client.ts';

/** Why charged work may not start, or null when it may. */
export type ConsentGap = 'evaluation' | 'quote' | 'over-and-above' | null;

/**
 * What the customer has not said yes to. Without a finding: the firm quote. With one: a quote that pays for it, the firm
 * one or an over-and-above; a finding that costs nothing needs only the firm quote.
 */
export async function consentGap(tx: Tx, workOrderId: string, findingId?: string | null): Promise<ConsentGap> {
  const workOrder = await tx.workOrder.findUnique({ where: { id: workOrderId }, select: { consent: true } });
  if (workOrder?.consent !== 'approved') {
    const evaluated = ['evaluation-approved', 'quote-due', 'quote-sent', 'quote-silent'];
    return evaluated.includes(workOrder?.consent ?? '') ? 'quote' : 'evaluation';
  }
  if (!findingId) return null;
  const finding = await tx.finding.findUnique({
    where: { id: findingId },
    select: { labourMinor: true, _count: { select: { parts: true } } },
  });
  if (!finding || (finding.labourMinor === 0 && finding._count.parts === 0)) return null;
  const paid = await tx.quoteLine.count({ where: { findingId, quote: { workOrderId, state: 'approved' } } });
  return paid > 0 ? null : 'over-and-above';
}

/** Whether repair of a work order, or of one finding on it, may be started and charged. */
export async function workIsApproved(tx: Tx, workOrderId: string, findingId?: string | null): Promise<boolean> {
  return (await consentGap(tx, workOrderId, findingId)) === null;
}
