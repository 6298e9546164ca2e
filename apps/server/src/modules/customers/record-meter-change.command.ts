import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseFuture, refuseOutOfLine } from './meter-points.ts';

/** Readings from that day on are the new meter's; what is on record after it must fit the new one. */
export const recordMeterChange = defineCommand(meterOperations.recordMeterChange, {
  locks: (input) => [`aircraft:${input.aircraftId}`],
  async execute({ tx, input, now, today, actor, newId }) {
    const { aircraftId, meter, changedOn, oldTenths, newTenths, basis } = input;
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: aircraftId } }), 'This aircraft');
    refuseFuture(changedOn, today, '/changedOn');
    await refuseOutOfLine(tx, { aircraftId, meter, said: [], change: { on: changedOn, oldTenths, newTenths } });
    const id = newId();
    await tx.meterChange.create({
      data: {
        id,
        aircraftId,
        meter,
        changedOn: toDbDate(changedOn),
        oldTenths: oldTenths === 'unknown' ? null : oldTenths,
        newTenths,
        basis,
        recordedBy: actor.personId,
        recordedAt: now,
      },
    });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'aircraft', id: aircraft.id }],
      facts: { registration: aircraft.registration },
    };
  },
});
