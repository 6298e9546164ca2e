import { Problem } from '@hubwright/contracts/problems';
import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { RuleError } from '@hubwright/rules/errors';
import { studyAnova } from '@hubwright/rules/measurement';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { cellsAsNumbers, type KeptCell } from './study-cells.ts';

export const recordStudy = defineCommand(studyOperations.recordGaugeStudy, {
  locks: (input) => [`instrument:${input.instrumentId}`],
  async execute({ tx, input, today, newId, entryId, actor }) {
    const { instrumentId, title, unit, tolerance, heldOn, cells } = input;
    const instrument = found(await tx.instrument.findUnique({ where: { id: instrumentId } }), 'This instrument');
    if (heldOn > today)
      throw new Problem('calibration-dates-wrong', `${heldOn} is still to come`, {}, [
        { pointer: '/heldOn', detail: `${heldOn} is still to come` },
      ]);
    refuseHalf(cells, tolerance);
    const id = newId();
    await tx.gaugeStudy.create({
      data: {
        ...{ id, instrumentId, title, unit, tolerance: tolerance ?? null, heldOn: toDbDate(heldOn) },
        ...{ cells: cells.map((cell) => ({ ...cell })), recordedBy: actor.personId, entryId },
      },
    });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'instrument', id: instrumentId }],
      facts: { tag: instrument.tag, study: id, title },
    };
  },
});

/** Throws `study-wrong` where the readings are no study, pointing at the cell. */
function refuseHalf(cells: readonly KeptCell[], tolerance: string | undefined): void {
  try {
    studyAnova(cellsAsNumbers(cells), tolerance === undefined ? undefined : Number(tolerance));
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    const pointer = `/${error.path.replace(/\[(\d+)\]/, '/$1')}`;
    throw new Problem('study-wrong', error.message, {}, [{ pointer, detail: error.message }]);
  }
}
