import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

/** What was recorded stays; a row that supersedes it says it never was. */
export const withdrawMeterChange = defineCommand(meterOperations.withdrawMeterChange, {
  async locks(input, tx) {
    const change = await tx.meterChange.findUnique({ where: { id: input.changeId }, select: { aircraftId: true } });
    return change ? [`aircraft:${change.aircraftId}`] : [];
  },
  async execute({ tx, input, now, actor, newId }) {
    const change = found(
      await tx.meterChange.findUnique({ where: { id: input.changeId }, include: { supersededBy: true } }),
      'This meter change',
    );
    if (change.supersededBy || change.withdrawn)
      throw new Problem('change-withdrawn', 'This meter change was withdrawn before');
    const { aircraftId, meter, changedOn, oldTenths, newTenths } = change;
    const id = newId();
    await tx.meterChange.create({
      data: {
        ...{ id, aircraftId, meter, changedOn, oldTenths, newTenths },
        supersedesId: change.id,
        withdrawn: true,
        basis: input.reason,
        recordedBy: actor.personId,
        recordedAt: now,
      },
    });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'aircraft', id: aircraftId }], reason: input.reason };
  },
});
