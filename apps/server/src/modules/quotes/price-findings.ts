import { type Models, type PricedLine, partLine } from './priced-line.ts';

/** A finding as far as money goes. */
export interface FindingToPrice {
  readonly id: string;
  readonly number: string;
  readonly place: string;
  readonly disposition: string | null;
  readonly labourMinor: number;
  readonly parts: readonly {
    readonly position: string;
    readonly quantity: number;
    readonly part: { id: string; number: string; description: string; unitPrice: string };
  }[];
  /** An approved quote pays for it. */
  readonly paid: boolean;
  readonly hasCost: boolean;
}

export async function findingsOf(models: Models, workOrderId: string): Promise<FindingToPrice[]> {
  // One after the other: a transaction is one connection.
  const findings = await models.finding.findMany({
    where: { workOrderId },
    orderBy: { number: 'asc' },
    take: 500,
    include: { parts: { include: { part: true }, orderBy: { id: 'asc' } } },
  });
  const paid = await models.quoteLine.findMany({
    where: { findingId: { not: null }, quote: { workOrderId, state: 'approved' } },
    select: { findingId: true },
  });
  const paidIds = new Set(paid.map((line) => line.findingId));
  return findings.map((finding) => ({
    ...finding,
    paid: paidIds.has(finding.id),
    // An undecided finding may still cost something.
    hasCost: finding.disposition === null || finding.labourMinor > 0 || finding.parts.length > 0,
  }));
}

export function findingLines(finding: FindingToPrice, currency: string): PricedLine[] {
  const labour: PricedLine[] =
    finding.labourMinor === 0
      ? []
      : [
          {
            ...{ kind: 'finding-labour', description: `${finding.number} ${finding.place}: labour`, partId: null },
            ...{ findingId: finding.id, quantity: 1, unitPrice: '', amountMinor: finding.labourMinor, taxable: true },
          },
        ];
  const parts = finding.parts.map((wanted) => ({
    ...partLine({ ...wanted, currency }),
    kind: 'finding-part' as const,
    findingId: finding.id,
  }));
  return [...labour, ...parts];
}
