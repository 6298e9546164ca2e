import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { nextNumbers } from '../../platform/database/counters.ts';
import { askIn } from '../kits/public.ts';
import { type LetterDue, lettersOf } from './due-letters.ts';
import { tellOfLetters } from './letter-events.ts';
import { settingsInForce } from './settings-in-force.ts';
import { type MadeLetter, writeLetters } from './write-letters.ts';

type Asked = Input<typeof reminderOperations.sendReminders>['letters'][number];

/**
 * Writes letters and puts them in the outbox; nothing is sent in here. What is due is worked out anew under the lock, and must be what
 * the page showed, so that no unit is told of twice at one interval whoever presses the button at the same moment.
 *
 * @param printOnlyBecause why this server sends no mail; null where it does
 */
export const sendReminders = (printOnlyBecause: string | null) =>
  defineCommand(reminderOperations.sendReminders, {
    locks: () => ['reminders'],
    execute: (context) => write(context, printOnlyBecause),
  });

async function write(context: Context<typeof reminderOperations.sendReminders>, printOnlyBecause: string | null) {
  const { tx, input, today, newId } = context;
  const settings = await settingsInForce(askIn(tx));
  const asked = { today, settings, printOnlyBecause };
  const due = await lettersOf(
    askIn(tx),
    input.letters.map(({ customerId }) => customerId),
    asked,
  );
  const numbers = await nextNumbers(tx, { kind: 'RL', width: 5, count: input.letters.length });
  const letters: MadeLetter[] = input.letters.map((letter, index) => ({
    ...{ id: newId(), number: numbers[index] ?? '', way: letter.way },
    due: stillDue(letter, due),
  }));
  await writeLetters(context, letters, settings);
  for (const way of ['e-mail', 'paper'] as const) {
    const ids = letters.filter((letter) => letter.way === way).map(({ id }) => id);
    const detail = way === 'e-mail' ? 'Put in the outbox.' : 'To be printed and posted.';
    await tellOfLetters(context, ids, { what: 'made', detail });
  }
  return {
    reply: { letters: letters.map(({ id, number, due: { customer } }) => ({ id, number, customerId: customer.id })) },
    subjects: subjectsOf(letters),
    facts: { letters: letters.map(factOf) },
  };
}

/** Throws unless the letter is due as it was seen, and may go the way asked for. */
function stillDue({ customerId, way, units }: Asked, due: readonly LetterDue[]): LetterDue {
  const letter = due.find(({ customer }) => customer.id === customerId);
  if (!letter) throw new Problem('letter-changed', 'No letter is due to this customer any more', { customerId });
  if (letter.heldBecause !== null) throw new Problem('letters-held', letter.heldBecause, { customerId });
  if (!letter.ways.includes(way))
    throw new Problem(
      'cannot-mail',
      `${letter.customer.name} has no e-mail address on record, or the shop none to send from`,
    );
  const [seen, now] = [units, letter.units].map((all) =>
    all.map(({ unitId, intervalDays }) => `${unitId} ${intervalDays}`).toSorted(),
  );
  if (seen?.join() !== now?.join())
    throw new Problem('letter-changed', `Other units come due for ${letter.customer.name} than were shown`, {
      customerId,
    });
  return letter;
}

function subjectsOf(letters: readonly MadeLetter[]) {
  const [first, ...rest] = letters.map(({ id }) => ({ kind: 'reminder', id, after: 1 }));
  if (!first) throw new Error('no letter was asked for');
  return [first, ...rest] as const;
}

function factOf({ number, way, due }: MadeLetter) {
  return { number, way, customer: due.customer.code, units: due.units.map((unit) => [unit.serial, unit.intervalDays]) };
}
