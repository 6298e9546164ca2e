import { type Damage, type Disposition, mayRepair } from '@hubwright/contracts/findings/areas';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { mayRepairAgain } from '@hubwright/rules/routes';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitsOf } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import type { AskedStep } from './repair-steps.ts';
import { corrosionRules, refuseOutsideWork } from './write-finding.ts';

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
      include: {
        traveler: {
          include: {
            steps: {
              include: {
                measures: {
                  include: { measurements: { orderBy: [{ signOff: { signedAt: 'desc' } }, { id: 'desc' }], take: 1 } },
                },
              },
            },
          },
        },
        workOrder: true,
      },
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
  decision: { disposition: Disposition; steps: readonly AskedStep[] },
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
  refuseBeyondChart(failed, disposition);
  if (disposition === 'repair') refuseUntested(decision.steps, traveler.steps);
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

type Failed = DecidableFinding['traveler']['steps'][number] | undefined;

/** Nothing is straightened cold beyond the manual's chart (common practice, no source). Throws `beyond-chart`. */
function refuseBeyondChart(failed: Failed, disposition: Disposition): void {
  if (disposition !== 'repair') return;
  const beyond = failed?.measures.find(({ chart, measurements }) => chart !== null && measurements[0]?.pass === false);
  if (beyond)
    throw new Problem('beyond-chart', `“${beyond.name}” was measured beyond the chart`, { measure: beyond.name });
}

/** A blade that was blended or straightened is tested again afterwards (common practice, no source). Throws `test-after-repair-missing`. */
function refuseUntested(steps: readonly AskedStep[], laid: readonly { state: string; process: string }[]): void {
  const lastBlend = steps.findLastIndex(({ process }) => process === 'blade-repair');
  const lastTest = steps.findLastIndex(({ process }) => process === 'non-destructive-test');
  // A test of the route that is still open comes behind the repair.
  const isTestOpen = laid.some(({ state, process }) => state === 'open' && process === 'non-destructive-test');
  if (lastBlend < 0 || lastTest > lastBlend || isTestOpen) return;
  throw new Problem('test-after-repair-missing', `Nothing tests the part after “${steps[lastBlend]?.title}”`, {}, [
    { pointer: '/steps', detail: 'Put a non-destructive test behind it' },
  ]);
}

/** Throws `corrosion-too-heavy` where the manual does not leave this decision for corrosion of this class. */
export async function refuseTooHeavy(tx: Tx, finding: DecidableFinding, disposition: Disposition): Promise<void> {
  if (finding.damage !== 'corroded' || finding.corrosionClass === null) return;
  const rules = await corrosionRules(tx, finding.traveler, finding.area);
  const rule = rules.find((one) => one.class === finding.corrosionClass);
  if (!rule || rule.may.includes(disposition)) return;
  const may = rule.may.join(' or ');
  throw new Problem('corrosion-too-heavy', `${finding.corrosionClass} corrosion here: the manual leaves ${may}`, {
    may: rule.may,
  });
}
