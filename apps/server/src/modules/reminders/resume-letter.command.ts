import { Problem } from '@hubwright/contracts/problems';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { askIn } from '../kits/public.ts';
import { decidable, letterSubject, refusedOn } from './delivery.ts';
import { heldReason } from './due-letters.ts';
import { tellOfLetters } from './letter-events.ts';
import { settingsInForce } from './settings-in-force.ts';

/** A letter that could not be sent goes into the outbox again, with the address on record now, or onto paper. */
export const resumeLetter = defineCommand(reminderOperations.resumeLetter, {
  locks: () => ['reminders'],
  async execute(context) {
    const { tx, input, now } = context;
    const { letterId, way } = input;
    const delivery = await decidable(tx, { ...context, letterId }, ['failed']);
    const { customer } = delivery.letter;
    const settings = await settingsInForce(askIn(tx));
    const held = heldReason(await refusedOn(tx, customer.id), settings);
    if (held !== null) throw new Problem('letters-held', held);
    if (way === 'e-mail' && (customer.email === '' || settings.senderEmail === ''))
      throw new Problem(
        'cannot-mail',
        `${customer.name} has no e-mail address on record, or the shop none to send from`,
      );
    const version = delivery.version + 1;
    const to = { toName: customer.contactName, toEmail: customer.email, toAddress: customer.address };
    const next = way === 'e-mail' ? { state: 'waiting', nextTryAt: now, tries: 0 } : { state: 'to-post' };
    await tx.reminderDelivery.update({ where: { letterId }, data: { ...next, ...to, version } });
    const detail = way === 'e-mail' ? 'Put in the outbox again.' : 'To be printed and posted instead.';
    await tellOfLetters(context, [letterId], { what: 'resumed', detail });
    return {
      reply: { id: letterId, version },
      subjects: [letterSubject(delivery)],
      facts: { number: delivery.letter.number, way },
    };
  },
});
