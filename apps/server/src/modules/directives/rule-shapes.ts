import type { Directive, DirectiveOutcome, DirectiveRecord } from '@hubwright/rules/directives';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';

/** What is read of a directive to decide by it. A withdrawn one says nothing of others. */
export const withLinks = {
  lines: { orderBy: { sequence: 'asc' } },
  names: { where: { kind: 'credits' } },
  namedBy: { where: { kind: { in: ['supersedes', 'ends'] }, from: { withdrawnOn: null } }, include: { from: true } },
} as const satisfies Prisma.DirectiveInclude;

export type DirectiveWithLinks = Prisma.DirectiveGetPayload<{ include: typeof withLinks }>;

export function ruleShape(row: DirectiveWithLinks): Directive {
  const { id, everyHoursTenths, everyMonths, endOfMonth, lines } = row;
  return {
    ...{ id, everyHoursTenths, everyMonths, endOfMonth, lines },
    repeats: row.repeats as Directive['repeats'],
    effectiveOn: fromDbDate(row.effectiveOn),
    first: {
      ...{ days: row.firstDays, months: row.firstMonths },
      ...{ hoursTenths: row.firstHoursTenths, totalTenths: row.firstTotalTenths },
    },
    withdrawnOn: fromDbDateOrNull(row.withdrawnOn),
    supersededBy: row.namedBy
      .filter(({ kind }) => kind === 'supersedes')
      .map(({ from }) => ({ number: nameOf(from), effectiveOn: fromDbDate(from.effectiveOn) })),
    credits: row.names.map(({ toId }) => toId),
    endedBy: row.namedBy.filter(({ kind }) => kind === 'ends').map(({ fromId }) => fromId),
  };
}

type ComplianceRow = Prisma.DirectiveComplianceGetPayload<object>;

export function recordShape(row: ComplianceRow): DirectiveRecord {
  const { directiveId, itemId, terminating, workOrderId } = row;
  return {
    ...{ directiveId, itemId, terminating, workOrderId },
    outcome: row.outcome as DirectiveOutcome,
    on: fromDbDate(row.doneOn),
    hoursTenths: row.hoursTenths ?? 'unknown',
    until: fromDbDateOrNull(row.deferredUntil),
  };
}

/** A directive as people name it: `D-7`, or `D-7 rev. B`. */
export function nameOf({ number, revision }: { number: string; revision: string }): string {
  return revision === 'original' ? number : `${number} rev. ${revision}`;
}
