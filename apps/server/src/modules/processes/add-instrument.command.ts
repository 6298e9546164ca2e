import { processOperations } from '@hubwright/contracts/processes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongDates } from './calibration-dates.ts';
import { writeCalibration } from './write-calibration.ts';

export const addInstrument = defineCommand(processOperations.addInstrument, {
  locks: (input) => [`instrument-tag:${input.tag}`],
  async execute(context) {
    const { tx, input, today, newId } = context;
    refuseWrongDates(input, today);
    const id = newId();
    await tx.instrument.create({
      data: {
        ...input,
        uncertainty: input.uncertainty ?? null,
        unit: input.unit ?? null,
        moreDoubts: input.moreDoubts ?? [],
        id,
        calibratedOn: toDbDate(input.calibratedOn),
        calibrationDueOn: toDbDate(input.calibrationDueOn),
      },
    });
    // It came from its calibration: until then it is known to be good.
    const { calibratedOn } = input;
    await writeCalibration(context, { instrumentId: id, calibratedOn, asFound: 'good', points: [] });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'instrument', id, after: 1 }], facts: { tag: input.tag } };
  },
});
