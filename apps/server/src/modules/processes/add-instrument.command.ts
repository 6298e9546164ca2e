import { processOperations } from '@hubwright/contracts/processes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { refuseWrongDates } from './calibration-dates.ts';

export const addInstrument = defineCommand(processOperations.addInstrument, {
  locks: (input) => [`instrument-tag:${input.tag}`],
  async execute({ tx, input, today, newId }) {
    refuseWrongDates(input, today);
    const id = newId();
    await tx.instrument.create({
      data: {
        ...input,
        id,
        calibratedOn: toDbDate(input.calibratedOn),
        calibrationDueOn: toDbDate(input.calibrationDueOn),
      },
    });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'instrument', id, after: 1 }], facts: { tag: input.tag } };
  },
});
