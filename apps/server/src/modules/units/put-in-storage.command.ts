import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseAhead, unitNamed, writeStorage } from './keeping.ts';

/** Also of a time that is over: owners tell it when the unit comes back. */
export const putInStorage = defineCommand(keepingOperations.putInStorage, {
  locks: (input) => [`item:${input.itemId}`],
  async execute(context) {
    const { tx, input, today } = context;
    const item = await unitNamed(tx, input.itemId);
    const { itemId, preservation, from, to = null, basis } = input;
    refuseAhead(from, today, '/from');
    if (to !== null) refuseAhead(to, today, '/to');
    const { periodId } = await writeStorage(context, { itemId, preservation, from, to, inspectedOn: null }, { basis });
    return {
      reply: { id: periodId, version: 1 },
      subjects: [{ kind: 'unit', id: item.id }],
      facts: { preservation, from, to },
      reason: basis,
    };
  },
});
