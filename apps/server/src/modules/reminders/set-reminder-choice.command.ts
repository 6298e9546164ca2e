import { Problem } from '@hubwright/contracts/problems';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { tellOfLetters } from './letter-events.ts';

/** A customer wants no more letters, or wants them again. What has not gone is withdrawn at once. */
export const setReminderChoice = defineCommand(reminderOperations.setReminderChoice, {
  locks: () => ['reminders'],
  async execute(context) {
    const { tx, input, actor, now, today, newId, entryId, expectedVersion } = context;
    const { customerId, wantsLetters, saidOn, reason } = input;
    const customer = found(await tx.customer.findUnique({ where: { id: customerId } }), 'This customer');
    if (saidOn > today)
      throw new Problem('invalid-input', 'Nobody has said it yet', {}, [
        { pointer: '/saidOn', detail: 'This day has not come' },
      ]);
    const last = await tx.reminderChoice.findFirst({ where: { customerId }, orderBy: { sequence: 'desc' } });
    const sequence = last?.sequence ?? 0;
    sameVersion(sequence, expectedVersion);
    const id = newId();
    await tx.reminderChoice.create({
      data: {
        ...{ id, customerId, sequence: sequence + 1, wantsLetters, reason, saidOn: toDbDate(saidOn) },
        ...{ personId: actor.personId, at: now, entryId },
      },
    });
    const open = wantsLetters ? [] : await openLetters(context, customerId);
    return {
      reply: { id: customerId, version: sequence + 1 },
      subjects: [{ kind: 'customer', id: customerId }, ...open.map((letter) => ({ kind: 'reminder', id: letter }))],
      facts: { customer: customer.code, wantsLetters, saidOn, withdrawn: open.length },
      reason,
    };
  },
});

type Writing = Parameters<typeof tellOfLetters>[0];

/** Withdraws what has not gone. A letter in the middle of being sent is let go: the mail server may have it already. */
async function openLetters(context: Writing, customerId: string): Promise<string[]> {
  const { tx } = context;
  const where = { state: { in: ['waiting', 'failed', 'to-post'] }, letter: { customerId } };
  const open = (await tx.reminderDelivery.findMany({ where, select: { letterId: true } })).map((row) => row.letterId);
  await tx.reminderDelivery.updateMany({
    where: { letterId: { in: open } },
    data: {
      state: 'withdrawn',
      nextTryAt: null,
      outcome: 'The customer asked for no letters.',
      version: { increment: 1 },
    },
  });
  await tellOfLetters(context, open, { what: 'withdrawn', detail: 'The customer asked for no letters.' });
  return open;
}
