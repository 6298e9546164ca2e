import { Problem } from '@hubwright/contracts/problems';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { decidable, letterSubject } from './delivery.ts';
import { tellOfLetters } from './letter-events.ts';

/** A person printed the letter and posted it: the program sends nothing here. */
export const markLetterPosted = defineCommand(reminderOperations.markLetterPosted, {
  locks: () => ['reminders'],
  async execute(context) {
    const { tx, input, now, today } = context;
    const { letterId, postedOn } = input;
    const delivery = await decidable(tx, { ...context, letterId }, ['to-post']);
    const madeOn = fromDbDate(delivery.letter.madeOn);
    if (postedOn > today || postedOn < madeOn)
      throw new Problem('invalid-input', 'It was made on another day', {}, [
        { pointer: '/postedOn', detail: `This lies between ${madeOn} and today` },
      ]);
    const version = delivery.version + 1;
    const outcome = `Posted on ${postedOn}.`;
    await tx.reminderDelivery.update({ where: { letterId }, data: { state: 'posted', sentAt: now, outcome, version } });
    await tellOfLetters(context, [letterId], { what: 'posted', detail: outcome });
    return {
      reply: { id: letterId, version },
      subjects: [letterSubject(delivery)],
      facts: { number: delivery.letter.number, postedOn },
    };
  },
});
