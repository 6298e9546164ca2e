import { processOperations } from '@hubwright/contracts/processes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongDates } from './calibration-dates.ts';

export const calibrateInstrument = defineCommand(processOperations.calibrateInstrument, {
  locks: (input) => [`instrument:${input.instrumentId}`],
  async execute({ tx, input, today, expectedVersion }) {
    const instrument = found(await tx.instrument.findUnique({ where: { id: input.instrumentId } }), 'This instrument');
    sameVersion(instrument.version, expectedVersion);
    refuseWrongDates(input, today);
    const version = instrument.version + 1;
    await tx.instrument.update({
      where: { id: instrument.id },
      data: {
        calibratedOn: toDbDate(input.calibratedOn),
        calibrationDueOn: toDbDate(input.calibrationDueOn),
        inService: input.inService,
        version,
      },
    });
    return {
      reply: { id: instrument.id, version },
      subjects: [{ kind: 'instrument', id: instrument.id, before: instrument.version, after: version }],
      facts: { tag: instrument.tag, dueBefore: fromDbDate(instrument.calibrationDueOn) },
    };
  },
});
