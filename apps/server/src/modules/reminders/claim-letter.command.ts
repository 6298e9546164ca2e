import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { z } from 'zod';
import { defineCommand } from '../../platform/command/command.ts';
import { askIn } from '../kits/public.ts';
import { type Delivery, deliveryOf, letterSubject, refusedOn } from './delivery.ts';
import { tellOfLetters } from './letter-events.ts';
import { settingsInForce } from './settings-in-force.ts';

/** A try whose outcome was not written down in this time will not be: the server stopped in between. */
const lostAfterMilliseconds = 10 * 60_000;

const input = z.strictObject({ letterId: z.uuid() });
const output = z.object({ claimed: z.boolean(), tries: z.int() });

/**
 * The sending job takes a letter up: no address leads here. Written before the mail server is spoken to, so that a try is on record whatever
 * comes of it. Whether the customer still wants letters, and where they are reached, is what is on record now.
 */
export const claimLetter = defineCommand(
  { ...reminderOperations.resumeLetter, id: 'claim-letter', access: 'signed-in', versioned: false, input, output },
  {
    locks: () => ['reminders'],
    async execute(context) {
      const { tx, now } = context;
      const delivery = await deliveryOf(tx, context.input.letterId);
      const isDue = delivery.nextTryAt !== null && delivery.nextTryAt <= now;
      const stop = isDue ? await stopReason(context, delivery) : undefined;
      const claimed = isDue && stop === undefined;
      if (stop) await end(context, delivery, stop);
      if (claimed) await take(context, delivery);
      const { letterId } = delivery;
      return {
        reply: { claimed, tries: delivery.tries + 1 },
        subjects: [claimed || stop ? letterSubject(delivery) : { kind: 'reminder', id: letterId }],
        facts: { number: delivery.letter.number, claimed, ...(stop ? { stop: stop.outcome } : {}) },
      };
    },
  },
);

type Claiming = Parameters<typeof tellOfLetters>[0];
interface Stop {
  readonly state: 'withdrawn' | 'failed';
  readonly outcome: string;
}

/** What changed since the letter was made so that it must not, or cannot, go. */
async function stopReason({ tx }: Pick<Claiming, 'tx'>, { letter: { customer } }: Delivery): Promise<Stop | undefined> {
  if ((await refusedOn(tx, customer.id)) !== null)
    return { state: 'withdrawn', outcome: 'The customer asked for no letters.' };
  if (!(await settingsInForce(askIn(tx))).isOn)
    return { state: 'failed', outcome: 'Reminder letters were turned off before it could go.' };
  if (customer.email === '')
    return { state: 'failed', outcome: 'The customer’s e-mail address was taken off the record before it could go.' };
  return undefined;
}

async function end(context: Claiming, { letterId, version }: Delivery, { state, outcome }: Stop): Promise<void> {
  const data = { state, outcome, nextTryAt: null, version: version + 1 };
  await context.tx.reminderDelivery.update({ where: { letterId }, data });
  await tellOfLetters(context, [letterId], { what: state, detail: outcome });
}

async function take(context: Claiming, delivery: Delivery): Promise<void> {
  const { tx, now } = context;
  const { letterId, letter, tries, state, version } = delivery;
  const { contactName: toName, email: toEmail, address: toAddress } = letter.customer;
  const nextTryAt = new Date(now.getTime() + lostAfterMilliseconds);
  await tx.reminderDelivery.update({
    where: { letterId },
    data: {
      ...{ state: 'sending', tries: tries + 1, claimedAt: now, nextTryAt, version: version + 1 },
      ...{ toName, toEmail, toAddress },
    },
  });
  const words = [
    `Try ${tries + 1}.`,
    state === 'sending'
      ? 'What became of the one before was never learnt; the customer may get the letter twice, under one Message-ID.'
      : '',
    toEmail === delivery.toEmail ? '' : 'It goes to the address that is on record now.',
  ];
  await tellOfLetters(context, [letterId], { what: 'tried', detail: words.filter(Boolean).join(' ') });
}
