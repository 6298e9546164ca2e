import { type Damage, type Disposition, mayRepair } from '@hubwright/contracts/findings/areas';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { mayRepairAgain } from '@hubwright/rules/routes';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitsOf } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { refuseOutsideWork } from './write-finding.ts';

/** What a decision decides on: the work order, its money and its kits. */
export async function decisionLocks(tx: Tx, findingId: string): Promise<string[]> {
  const finding = await tx.finding.findUnique({ where: { id: findingId }, select: { workOrderId: true } });
  return finding ? [`work-order:${finding.workOrderId}`, ...(await kitsOf(tx, finding.workOrderId))] : [];
}

export type DecidableFinding = Awaited<ReturnType<typeof decidableFinding>>;

/** A finding of a unit under work by the current revision, at the version the caller saw. */
export async function decidableFinding(tx: Tx, findingId: string, expectedVersion: number | undefined) {
  const finding = found(
    await tx.finding.findUnique({
      where: { id: findingId },
      include: { traveler: { include: { steps: true } }, workOrder: true },
    }),
    'This finding',
  );
  sameVersion(finding.version, expectedVersion);
  refuseOutsideWork(finding.workOrder);
  await requireCurrentRevision(tx, finding.traveler.revisionId);
  return finding;
}

/** Throws where the manual or plain sense leaves no choice: a hub that may not be repaired, a value still outside, a repair without steps. */
export function refuseImpossible(
  finding: DecidableFinding,
  decision: { disposition: Disposition; steps: readonly unknown[] },
): void {
  const { traveler } = finding;
  const { disposition } = decision;
  if (disposition === 'repair' && !mayRepair(traveler.partClass as PartClass, finding.area, finding.damage as Damage)) {
    throw new Problem(
      'repair-not-allowed',
      `${finding.number}: a deformed hub in a critical area is rejected, never repaired`,
      { area: finding.area },
    );
  }
  const failed = traveler.steps.find(({ id, state }) => id === finding.stepId && state === 'failed');
  if (disposition === 'repair' && failed && !mayRepairAgain(failed)) {
    throw new Problem(
      'repairs-used-up',
      `“${failed.title}” failed in attempt ${failed.attempt}; the manual allows ${failed.mostRepairs} ${failed.mostRepairs === 1 ? 'repair' : 'repairs'}`,
      { step: failed.title, attempt: failed.attempt, mostRepairs: failed.mostRepairs },
    );
  }
  if (disposition === 'serviceable' && failed) {
    throw new Problem('still-outside-limits', `“${failed.title}” was measured outside its limits`, {
      step: failed.title,
    });
  }
  const openRepair = traveler.steps.some(({ state, phase }) => state === 'open' && phase === 'repair');
  if (disposition === 'repair' && decision.steps.length === 0 && !failed && !openRepair) {
    throw new Problem('repair-steps-missing', `Name the steps that repair ${finding.number}`, {}, [
      { pointer: '/steps', detail: 'Name at least one step' },
    ]);
  }
}
