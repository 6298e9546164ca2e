import { processOperations } from '@hubwright/contracts/processes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongDates } from './calibration-dates.ts';
import { putUnderReview, refuseOlder, verdictOf, writeCalibration } from './write-calibration.ts';

export const calibrateInstrument = defineCommand(processOperations.calibrateInstrument, {
  locks: (input) => [`instrument:${input.instrumentId}`],
  async execute(context) {
    const { tx, input, today, expectedVersion } = context;
    const instrument = found(await tx.instrument.findUnique({ where: { id: input.instrumentId } }), 'This instrument');
    sameVersion(instrument.version, expectedVersion);
    refuseWrongDates(input, today);
    refuseOlder(instrument, input.calibratedOn);
    const asFound = verdictOf(input);
    const { calibratedOn, points, uncertainty, unit, moreDoubts } = input;
    const calibrationId = await writeCalibration(context, {
      instrumentId: instrument.id,
      calibratedOn,
      asFound,
      points,
    });
    const reviews =
      asFound === 'out' ? await putUnderReview(context, { instrumentId: instrument.id, calibrationId }) : 0;
    const version = instrument.version + 1;
    await tx.instrument.update({
      where: { id: instrument.id },
      data: {
        calibratedOn: toDbDate(calibratedOn),
        calibrationDueOn: toDbDate(input.calibrationDueOn),
        inService: input.inService,
        ...(uncertainty === undefined ? {} : { uncertainty }),
        ...(unit === undefined ? {} : { unit }),
        ...(moreDoubts === undefined ? {} : { moreDoubts }),
        version,
      },
    });
    return {
      reply: { id: instrument.id, version, asFound, reviews },
      subjects: [{ kind: 'instrument', id: instrument.id, before: instrument.version, after: version }],
      facts: { tag: instrument.tag, dueBefore: fromDbDate(instrument.calibrationDueOn), asFound, reviews },
    };
  },
});
