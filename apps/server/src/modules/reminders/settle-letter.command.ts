import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { waitAfter } from '@hubwright/rules/reminders';
import { z } from 'zod';
import { defineCommand } from '../../platform/command/command.ts';
import { deliveryOf, letterSubject } from './delivery.ts';
import { tellOfLetters } from './letter-events.ts';

const kinds = ['accepted', 'refused', 'not-reached'] as const;
const input = z.strictObject({ letterId: z.uuid(), tries: z.int(), kind: z.enum(kinds), words: z.string() });

/**
 * What the mail server said of a try, written by the sending job: no address leads here. An outcome of a try that was given up for lost changes
 * nothing any more.
 */
export const settleLetter = defineCommand(
  { ...reminderOperations.resumeLetter, id: 'settle-letter', access: 'signed-in', versioned: false, input },
  {
    locks: () => ['reminders'],
    async execute(context) {
      const { tx, now } = context;
      const { letterId, tries, kind, words } = context.input;
      const delivery = await deliveryOf(tx, letterId);
      const { number } = delivery.letter;
      const facts = { number, try: tries, kind };
      if (delivery.state !== 'sending' || delivery.tries !== tries)
        return {
          reply: { id: letterId, version: delivery.version },
          subjects: [{ kind: 'reminder', id: letterId }],
          facts,
        };
      const version = delivery.version + 1;
      const next = nextOf(context.input, now);
      await tx.reminderDelivery.update({ where: { letterId }, data: { ...next, outcome: words, version } });
      const what = { accepted: 'sent', refused: 'refused', 'not-reached': next.nextTryAt ? 'not reached' : 'given up' };
      await tellOfLetters(context, [letterId], { what: what[kind], detail: words });
      return { reply: { id: letterId, version }, subjects: [letterSubject(delivery)], facts };
    },
  },
);

/** Sent, to be tried again later, or for a person to decide. */
function nextOf({ kind, tries }: z.output<typeof input>, now: Date) {
  if (kind === 'accepted') return { state: 'sent', sentAt: now, nextTryAt: null };
  const minutes = kind === 'refused' ? null : waitAfter(tries);
  if (minutes === null) return { state: 'failed', nextTryAt: null };
  return { state: 'waiting', nextTryAt: new Date(now.getTime() + minutes * 60_000) };
}
