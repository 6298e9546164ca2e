import { areaOf } from '@hubwright/contracts/findings/areas';
import type { PartClass } from '@hubwright/contracts/manuals/words';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import { nextNumber } from '../../platform/database/counters.ts';

/** What was found. `area` is a code of the part's class. */
export interface Found {
  readonly area: string;
  readonly damage: string;
  readonly place: string;
  readonly description: string;
}

interface FoundOn {
  readonly id: string;
  readonly workOrderId: string;
  readonly partClass: string;
}

/** Adds a finding to a traveler. Throws `area-unknown`. */
export async function writeFinding(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'newId'>,
  traveler: FoundOn,
  { found, stepId }: { found: Found; stepId?: string },
): Promise<{ id: string; number: string }> {
  if (!areaOf(traveler.partClass as PartClass, found.area)) {
    throw new Problem('area-unknown', `A ${traveler.partClass} has no area “${found.area}”`, {}, [
      { pointer: '/area', detail: 'Choose an area of this part' },
    ]);
  }
  const { tx, now, actor } = context;
  const id = context.newId();
  const number = await nextNumber(tx, 'F', 4);
  await tx.finding.create({
    data: {
      id,
      number,
      workOrderId: traveler.workOrderId,
      travelerId: traveler.id,
      stepId: stepId ?? null,
      area: found.area,
      damage: found.damage,
      place: found.place,
      description: found.description,
      raisedBy: actor.personId,
      raisedAt: now,
    },
  });
  return { id, number };
}

/** Throws `wrong-state` unless the unit is under work. */
export function refuseOutsideWork(workOrder: { number: string; stage: string }): void {
  if (['teardown', 'inspected', 'in-work', 'build', 'final-inspection'].includes(workOrder.stage)) return;
  throw new Problem('wrong-state', `${workOrder.number} is not under work`, { stage: workOrder.stage });
}
