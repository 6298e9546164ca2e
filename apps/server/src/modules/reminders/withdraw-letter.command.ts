import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { decidable, letterSubject } from './delivery.ts';
import { tellOfLetters } from './letter-events.ts';

/** A letter that has not gone is taken back; what it told of counts as not told. */
export const withdrawLetter = defineCommand(reminderOperations.withdrawLetter, {
  locks: () => ['reminders'],
  async execute(context) {
    const { tx, input } = context;
    const { letterId, reason } = input;
    const delivery = await decidable(tx, { ...context, letterId }, ['waiting', 'failed', 'to-post']);
    const version = delivery.version + 1;
    await tx.reminderDelivery.update({
      where: { letterId },
      data: { state: 'withdrawn', nextTryAt: null, outcome: reason, version },
    });
    await tellOfLetters(context, [letterId], { what: 'withdrawn', detail: reason });
    return {
      reply: { id: letterId, version },
      subjects: [letterSubject(delivery)],
      facts: { number: delivery.letter.number },
      reason,
    };
  },
});
