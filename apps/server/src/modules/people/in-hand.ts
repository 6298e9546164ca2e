import type { Reply } from '@hubwright/contracts/operation';
import type { accessOperations } from '@hubwright/contracts/people/access-operations';
import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Process } from '@hubwright/contracts/people/operations';
import type { Tx } from '../../platform/database/client.ts';
import { toDbDate } from '../../platform/database/dates.ts';

type InHand = Reply<typeof accessOperations.endPerson>['inHand'];

/** What a person had in hand and others must take over: holds they placed, findings they raised that nobody decided, and what only they could sign. */
export async function inHandOf(tx: Tx, personId: string, today: string): Promise<InHand> {
  const holds = await tx.hold.findMany({
    where: { placedBy: personId, liftedAt: null },
    include: { workOrder: { select: { number: true } } },
    take: 200,
  });
  const findings = await tx.finding.findMany({
    where: { raisedBy: personId, disposition: null },
    include: { workOrder: { select: { number: true } } },
    take: 200,
  });
  return {
    holds: holds.map(({ id, workOrderId, workOrder, reason }) => ({
      id,
      workOrderId,
      workOrder: workOrder.number,
      reason,
    })),
    findings: findings.map(({ id, workOrderId, workOrder, number }) => ({
      ...{ id, workOrderId, number: String(number) },
      workOrder: workOrder.number,
    })),
    soleHolder: await soleHolderOf(tx, personId, today),
  };
}

/** Call before the authorisations end. */
async function soleHolderOf(tx: Tx, personId: string, today: string): Promise<InHand['soleHolder']> {
  const day = toDbDate(today);
  const inForce = await tx.authorisation.findMany({
    where: {
      validFrom: { lte: day },
      person: { active: true },
      AND: [
        { OR: [{ expiresOn: null }, { expiresOn: { gt: day } }] },
        { OR: [{ revokedOn: null }, { revokedOn: { gt: day } }] },
      ],
    },
    select: { personId: true, process: true, level: true },
  });
  const key = (held: { process: string; level: string }) => `${held.process} ${held.level}`;
  const others = new Set(inForce.filter((held) => held.personId !== personId).map(key));
  const own = new Map(
    inForce.filter((held) => held.personId === personId && !others.has(key(held))).map((held) => [key(held), held]),
  );
  return [...own.values()].map(({ process, level }) => ({
    process: process as Process,
    level: level as AuthorisationLevel,
  }));
}
