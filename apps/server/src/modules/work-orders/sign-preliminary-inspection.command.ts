import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { refuseHeld } from './advance.ts';
import { preliminaryInspection, receivingSubject } from './looked-at.ts';

const operation = workOrderOperations.signPreliminaryInspection;

/** Preliminary and, after a declared event, hidden-damage inspection by an authorised person: 14 CFR 145.211(c)(1)(i) and (ii). */
export const signPreliminaryInspection = defineCommand(operation, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const workOrder = await readForInspection(tx, input.workOrderId);
    sameVersion(workOrder.version, expectedVersion);
    if (workOrder.stage !== 'received')
      throw new Problem('wrong-state', `${workOrder.number} is past receiving`, { stage: workOrder.stage });
    if (await preliminaryInspection(tx, workOrder.id))
      throw new Problem('already-looked-at', `The preliminary inspection of ${workOrder.number} is signed already`);
    if (workOrder.events.length > 0 && input.hiddenDamage === '')
      throw new Problem('hidden-damage-unsaid', `Declared: ${workOrder.events.join(', ')}`, {}, [
        { pointer: '/hiddenDamage', detail: 'Say what was looked at for hidden damage, and what was found' },
      ]);
    await refuseHeld(tx, workOrder);
    const authorisation = await requireAuthorisation(tx, actor, {
      process: 'receiving-inspection',
      level: 'inspect',
      today,
    });
    const content = { ...shown(workOrder), result: input.result, hiddenDamage: input.hiddenDamage };
    const signOff = await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: receivingSubject, id: workOrder.id },
      meaning: operation.signs ?? '',
      result: input.hiddenDamage ? `${input.result}\nHidden damage: ${input.hiddenDamage}` : input.result,
      authorisation,
      revisionId: workOrder.revisionId,
      performedAt: input.performedAt,
      lateReason: input.lateReason,
      content,
    });
    const version = workOrder.version + 1;
    await tx.workOrder.update({ where: { id: workOrder.id }, data: { version } });
    return {
      reply: { id: workOrder.id, version, signOffId: signOff.id },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      facts: { signOffId: signOff.id, contentHash: signOff.contentHash, content },
      authorisation,
    };
  },
});

async function readForInspection(tx: Tx, id: string) {
  const workOrder = await tx.workOrder.findUnique({
    where: { id },
    include: {
      unit: { include: { parts: { where: { toDate: null }, include: { item: true }, orderBy: { position: 'asc' } } } },
      looseItems: { orderBy: { id: 'asc' } },
    },
  });
  return found(workOrder, 'This work order');
}

/** What the inspector looked at, as the desk booked it in. */
function shown(workOrder: Awaited<ReturnType<typeof readForInspection>>) {
  const { number, scope, reason, events, paperwork, paperworkNote, unit, looseItems } = workOrder;
  const name = (item: typeof unit | (typeof unit.parts)[number]['item']) => ({
    partNumber: item.partNumber,
    serial: item.serial ?? item.provisionalName,
  });
  return {
    ...{ number, scope, reason, events, paperwork, paperworkNote },
    unit: name(unit),
    parts: unit.parts.map(({ position, item }) => ({ position, ...name(item) })),
    looseItems: looseItems.map(({ description, quantity }) => ({ description, quantity })),
  };
}
