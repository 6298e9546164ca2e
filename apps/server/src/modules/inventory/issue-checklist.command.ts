import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { shopSubjectId } from '../people/public.ts';

/** The next revision of what is looked at for a class of part; receipts before it keep the one they answered. */
export const issueChecklist = defineCommand(receivingOperations.issueChecklist, {
  locks: (input) => [`checklist:${input.partClass}`],
  async execute({ tx, input, now, newId, actor, entryId }) {
    const { partClass, items } = input;
    const revision = (await tx.receivingChecklist.count({ where: { partClass } })) + 1;
    const id = newId();
    await tx.receivingChecklist.create({
      data: { id, partClass, revision, items, personId: actor.personId, at: now, entryId },
    });
    return {
      reply: { id, revision },
      subjects: [{ kind: 'shop', id: shopSubjectId }],
      facts: { partClass, revision, items },
    };
  },
});
