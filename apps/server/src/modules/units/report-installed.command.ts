import { Problem } from '@hubwright/contracts/problems';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { refuseImpossible, refuseNonsense, writeInterval } from './intervals.ts';

/** The shop is not there when a unit is installed: it hears of it later, from the owner or from a log entry. */
export const reportInstalled = defineCommand(intervalOperations.reportInstalled, {
  locks: (input) => [`item:${input.itemId}`, `aircraft:${input.aircraftId}`],
  async execute(context) {
    const { tx, input } = context;
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This unit');
    if (item.kind !== 'assembly')
      throw new Problem('invalid-input', 'A part flies with the unit it sits in', {}, [
        { pointer: '/itemId', detail: 'Not a unit of its own' },
      ]);
    if (item.serial === null) throw new Problem('identity-open', 'Its serial was not read yet');
    const aircraft = found(await tx.aircraft.findUnique({ where: { id: input.aircraftId } }), 'This aircraft');
    await refuseImpossible(context, input);
    const { intervalId } = await writeInterval(context, input, { basis: input.basis });
    await refuseNonsense(context, item.id);
    return {
      reply: { id: intervalId, version: 1 },
      subjects: [
        { kind: 'unit', id: item.id },
        { kind: 'aircraft', id: aircraft.id },
      ],
      facts: { serial: item.serial, registration: aircraft.registration },
    };
  },
});
