import type { Context } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import type { DueUnit, LetterDue } from './due-letters.ts';
import type { LetterContent } from './letter-text.ts';
import type { ReminderSettings } from './settings-in-force.ts';

export interface MadeLetter {
  readonly id: string;
  readonly number: string;
  readonly way: 'e-mail' | 'paper';
  readonly due: LetterDue;
}

type Writing = Pick<Context<never>, 'tx' | 'newId' | 'now' | 'today' | 'entryId'> & {
  readonly actor: { readonly personId: string };
};

/** Letters, the units each tells of, and their rows in the outbox: the content without to whom, which lies in the outbox. */
export async function writeLetters(
  context: Writing,
  letters: readonly MadeLetter[],
  settings: ReminderSettings,
): Promise<void> {
  const { tx, newId, now, today, entryId, actor } = context;
  const shop = await tx.shopProfile.findUniqueOrThrow({ where: { id: 1 } });
  const madeOn = toDbDate(today);
  await tx.reminderLetter.createMany({
    data: letters.map(({ id, number, way, due }) => ({
      ...{ id, number, way, customerId: due.customer.id, subject: settings.subject, madeOn },
      content: asJson(contentOf({ number, units: due.units }, settings, { shopName: shop.name, today })),
      ...{ personId: actor.personId, at: now, entryId },
    })),
  });
  await tx.reminderLetterUnit.createMany({
    data: letters.flatMap(({ id, due }) =>
      due.units.map(({ unitId, intervalDays, countsFrom, dueOn }) => ({
        ...{ id: newId(), letterId: id, unitId, intervalDays, entryId },
        ...{ countsFrom: toDbDate(countsFrom), dueOn: toDbDate(dueOn) },
      })),
    ),
  });
  await tx.reminderDelivery.createMany({
    data: letters.map(({ id, way, due: { to } }) => ({
      ...{
        letterId: id,
        toName: to.name,
        toEmail: to.email,
        toAddress: to.address,
        messageId: messageIdOf(id, settings),
      },
      ...(way === 'e-mail' ? { state: 'waiting', nextTryAt: now } : { state: 'to-post' }),
    })),
  });
}

export function contentOf(
  { number, units }: { number: string; units: readonly DueUnit[] },
  { senderName, replyTo, senderEmail, subject, opening, closing }: ReminderSettings,
  { shopName, today }: { shopName: string; today: string },
): LetterContent {
  return {
    ...{ number, shopName, senderName, subject, opening, closing, madeOn: today },
    replyTo: replyTo || senderEmail,
    units: units.map(({ countsFrom: _, ...unit }) => unit),
  };
}

/** Made from the outbox row's own id, once: the same letter sent again is recognised by it (RFC 5322 §3.6.4). */
function messageIdOf(letterId: string, { senderEmail }: ReminderSettings): string {
  return `<reminder-${letterId}@${senderEmail.split('@')[1] || 'hubwright.invalid'}>`;
}

function asJson(content: LetterContent) {
  return JSON.parse(JSON.stringify(content));
}
