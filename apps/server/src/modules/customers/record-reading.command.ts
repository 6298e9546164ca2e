import { customerOperations } from '@hubwright/contracts/customers/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

const millisecondsOfDay = 86_400_000;

/** A meter only goes up, and by no more than 24 hours a day. A replaced meter is not known here yet. */
export const recordReading = defineCommand(customerOperations.recordReading, {
  locks: (input) => [`aircraft:${input.aircraftId}`],
  async execute({ tx, input, now, today, newId }) {
    const { aircraftId, meter, hoursTenths } = input;
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: aircraftId } }), 'This aircraft');
    if (input.readOn > today) throw outOfLine(`${input.readOn} is still to come`, '/readOn');
    const readOn = toDbDate(input.readOn);
    const before = await tx.aircraftReading.findFirst({
      where: { aircraftId, meter, readOn: { lte: readOn } },
      orderBy: [{ readOn: 'desc' }, { hoursTenths: 'desc' }],
    });
    const after = await tx.aircraftReading.findFirst({
      where: { aircraftId, meter, readOn: { gt: readOn } },
      orderBy: [{ readOn: 'asc' }, { hoursTenths: 'asc' }],
    });
    if (before) refuseJump({ readOn: before.readOn, hoursTenths: before.hoursTenths }, { readOn, hoursTenths });
    if (after) refuseJump({ readOn, hoursTenths }, { readOn: after.readOn, hoursTenths: after.hoursTenths });
    const id = newId();
    await tx.aircraftReading.create({ data: { id, aircraftId, meter, hoursTenths, readOn, recordedAt: now } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'aircraft', id: aircraft.id }],
      facts: { registration: aircraft.registration },
    };
  },
});

interface Read {
  readonly readOn: Date;
  readonly hoursTenths: number;
}

function refuseJump(earlier: Read, later: Read): void {
  const hours = (read: Read) => `${(read.hoursTenths / 10).toFixed(1)} h on ${fromDbDate(read.readOn)}`;
  if (later.hoursTenths < earlier.hoursTenths)
    throw outOfLine(`The meter would run backwards: ${hours(earlier)}, then ${hours(later)}`, '/hoursTenths');
  const days = Math.round((later.readOn.getTime() - earlier.readOn.getTime()) / millisecondsOfDay) + 1;
  if (later.hoursTenths - earlier.hoursTenths > days * 240)
    throw outOfLine(`More than 24 hours a day between ${hours(earlier)} and ${hours(later)}`, '/hoursTenths');
}

function outOfLine(detail: string, pointer: string): Problem {
  return new Problem('reading-out-of-line', detail, {}, [{ pointer, detail }]);
}
