import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseAhead, unitNamed, writeUse } from './keeping.ts';

/** Told or told right later; due dates go by it, and while nobody said it the strictest limit counts. */
export const sayUse = defineCommand(keepingOperations.sayUse, {
  locks: (input) => [`item:${input.itemId}`],
  async execute(context) {
    const { tx, input, today } = context;
    const item = await unitNamed(tx, input.itemId);
    const { use = null, madeOn = null, basis } = input;
    if (madeOn !== null) refuseAhead(madeOn, today, '/madeOn');
    const id = await writeUse(context, { itemId: item.id, use, madeOn, basis });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'unit', id: item.id }],
      facts: { use, madeOn },
      reason: basis,
    };
  },
});
