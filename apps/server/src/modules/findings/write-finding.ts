import { areaOf } from '@hubwright/contracts/findings/areas';
import { drawingOf, type FindingSpot } from '@hubwright/contracts/findings/spot';
import type { CorrosionClass, PartClass } from '@hubwright/contracts/manuals/words';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { bladeRulesOf } from '../manuals/public.ts';

/** What was found. `area` is a code of the part's class. */
export interface Found {
  readonly area: string;
  readonly damage: string;
  readonly place: string;
  readonly description: string;
  readonly spot?: FindingSpot | undefined;
  readonly corrosionClass?: CorrosionClass | undefined;
}

interface FoundOn {
  readonly id: string;
  readonly workOrderId: string;
  readonly partClass: string;
  readonly revisionId: string;
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
  await refuseUnclassed(tx, traveler, found);
  refuseOtherDrawing(traveler, found);
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
      ...(found.spot ? { spot: found.spot } : {}),
      corrosionClass: found.corrosionClass ?? null,
      raisedBy: actor.personId,
      raisedAt: now,
    },
  });
  return { id, number };
}

/** Throws `corrosion-class-missing` where the manual has classes for corrosion of this area, and nobody said which it is. */
async function refuseUnclassed(tx: Tx, traveler: FoundOn, found: Found): Promise<void> {
  if (found.damage !== 'corroded' || found.corrosionClass) return;
  const rules = await corrosionRules(tx, traveler, found.area);
  if (rules.length === 0) return;
  const classes = rules.map((rule) => rule.class).join(', ');
  throw new Problem('corrosion-class-missing', `The manual has classes for corrosion here: ${classes}`, {}, [
    { pointer: '/corrosionClass', detail: 'Say which class it is' },
  ]);
}

/** What the revision of a traveler says of corrosion in one area of its part. */
export async function corrosionRules(tx: Tx, traveler: Omit<FoundOn, 'id'>, area: string) {
  const { modelId } = await tx.workOrder.findUniqueOrThrow({
    where: { id: traveler.workOrderId },
    select: { modelId: true },
  });
  const { corrosion } = await bladeRulesOf(tx, { revisionId: traveler.revisionId, modelId });
  return corrosion.filter((rule) => rule.partClass === traveler.partClass && rule.area === area);
}

function refuseOtherDrawing({ partClass }: FoundOn, { spot }: Found): void {
  if (!spot || drawingOf(partClass as PartClass) === spot.on) return;
  throw new Problem('invalid-input', 'This is a place on another drawing', {}, [
    { pointer: '/spot', detail: `A ${partClass} is not drawn as a ${spot.on}` },
  ]);
}

/** Throws `wrong-state` unless the unit is under work. */
export function refuseOutsideWork(workOrder: { number: string; stage: string }): void {
  if (['teardown', 'inspected', 'in-work', 'build', 'final-inspection'].includes(workOrder.stage)) return;
  throw new Problem('wrong-state', `${workOrder.number} is not under work`, { stage: workOrder.stage });
}
