import { customerOperations } from '@hubwright/contracts/customers/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { figureField, figureSaid } from './meter-figure.ts';
import { refuseFuture, refuseOutOfLine } from './meter-points.ts';

/** A meter only goes up, and by no more than a day has room for. */
export const recordReading = defineCommand(customerOperations.recordReading, {
  locks: (input) => [`aircraft:${input.aircraftId}`],
  async execute({ tx, input, now, today, newId }) {
    const { aircraftId, meter } = input;
    const hoursTenths = figureSaid(meter, input);
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: aircraftId } }), 'This aircraft');
    refuseFuture(input.readOn, today, '/readOn');
    await refuseOutOfLine(tx, {
      aircraftId,
      meter,
      said: [{ on: input.readOn, tenths: hoursTenths, as: 'reading', pointer: `/${figureField(meter)}` }],
    });
    const readOn = toDbDate(input.readOn);
    const id = newId();
    // A figure struck by mistake may be entered again; one that stands is refused by its constraint.
    const again = await tx.aircraftReading.count({
      where: { aircraftId, meter, readOn, hoursTenths, struck: { isNot: null } },
    });
    await tx.aircraftReading.create({ data: { id, aircraftId, meter, hoursTenths, readOn, again, recordedAt: now } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'aircraft', id: aircraft.id }],
      facts: { registration: aircraft.registration },
    };
  },
});
