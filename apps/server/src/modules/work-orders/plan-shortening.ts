import { Problem } from '@hubwright/contracts/problems';
import { type Consent, consentTable, consentTitles, next } from '@hubwright/contracts/work-orders/states';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { bladeRulesOf } from '../manuals/public.ts';
import { type Comparison, compareWith } from './compare-work.ts';
import { conditionOf } from './part-limits.ts';
import { consentFollows, type PlannedWorkOrder, workOrderToPlan } from './plan-scope.ts';
import type { Difference } from './revision-differences.ts';

export interface ShorteningPlan extends Comparison {
  readonly diameter: string;
  readonly designation: string;
}

/**
 * All that shortening every blade of a propeller changes. Source: it is a major repair, every blade alike, the new designation marked,
 * never below the least diameter (AC 43.13-1B 8-73b; 14 CFR 43 App. A (b)(3)(iii)). Throws `diameter-not-allowed`,
 * `diameter-not-eligible`, `limits-missing`.
 */
export async function planShortening(tx: Tx, workOrder: PlannedWorkOrder, diameter: string): Promise<ShorteningPlan> {
  const { diameters } = await bladeRulesOf(tx, workOrder);
  const condition = await conditionOf(tx, workOrder);
  const before = diameters.find((one) => Number(one.diameter) === Number(condition.diameter ?? diameters[0]?.diameter));
  const after = diameters.find((one) => Number(one.diameter) === Number(diameter));
  if (!after || !before || Number(after.diameter) >= Number(before.diameter)) {
    const allowed = diameters.filter((one) => before && Number(one.diameter) < Number(before.diameter));
    const names = allowed.map((one) => one.diameter).join(', ') || 'none';
    throw new Problem('diameter-not-allowed', `Diameters below the current one that the manual names: ${names}`, {
      allowed,
    });
  }
  await refuseIneligible(tx, workOrder, diameter);
  const comparison = await compareWith(tx, workOrder, { ...workOrder, shortenTo: after.diameter });
  return {
    ...comparison,
    ...after,
    differences: [...agreedDifferences(workOrder, before, after), ...comparison.differences],
    reopensBuild: workOrder.stage === 'final-inspection',
  };
}

/** The same for a read, outside any transaction. Nothing is written on this way, so the read-only models serve as well. */
export async function planShorteningForReading(models: Reads['models'], workOrderId: string, diameter: string) {
  const tx = models as unknown as Tx;
  return planShortening(tx, found(await workOrderToPlan(tx, workOrderId), 'This work order'), diameter);
}

async function refuseIneligible(tx: Tx, { applicationId }: PlannedWorkOrder, diameter: string): Promise<void> {
  const application = applicationId && (await tx.application.findUnique({ where: { id: applicationId } }));
  const least = application ? application.leastDiameter : null;
  if (!application || least === null)
    throw new Problem('diameter-not-eligible', 'The least diameter of this installation is not on record', {
      least: null,
    });
  if (Number(diameter) < Number(least)) {
    const { airframe, engine, approval } = application;
    const why = `${airframe} with ${engine} is approved down to ${least} (${approval})`;
    throw new Problem('diameter-not-eligible', why, { least });
  }
}

type Named = { readonly diameter: string; readonly designation: string };

function agreedDifferences(workOrder: PlannedWorkOrder, before: Named, after: Named): Difference[] {
  const consent = workOrder.consent as Consent;
  const then = next(consentTable, consent, 'change-scope')?.to ?? consent;
  const lines: [what: string, before: string, after: string, consequences: string[]][] = [
    ['Diameter, every blade alike', before.diameter, after.diameter, ['a major repair; the record says so']],
    ['Designation', before.designation, after.designation, ['marked on hub and blades at release']],
    ['Consent of the customer', consentTitles[consent], consentTitles[then], consentFollows(workOrder)],
  ];
  return lines.map(([what, was, is, consequences]) => ({
    ...{ area: 'scope', change: 'changed', where: workOrder.number },
    ...{ what, before: was, after: is, consequences },
  }));
}
