import { Problem } from '@hubwright/contracts/problems';
import { type LetterState, letterStateTitles } from '@hubwright/contracts/reminders/shapes';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** A letter with where it stands. */
export async function deliveryOf(tx: Tx, letterId: string) {
  return found(
    await tx.reminderDelivery.findUnique({ where: { letterId }, include: { letter: { include: { customer: true } } } }),
    'This letter',
  );
}
export type Delivery = Awaited<ReturnType<typeof deliveryOf>>;

/** The same for a person's decision: the version they saw must hold, and it must stand where they may decide. */
export async function decidable(
  tx: Tx,
  { letterId, expectedVersion }: { letterId: string; expectedVersion: number | undefined },
  states: readonly LetterState[],
): Promise<Delivery> {
  const delivery = await deliveryOf(tx, letterId);
  const state = delivery.state as LetterState;
  if (!states.includes(state))
    throw new Problem('letter-done', `Letter ${delivery.letter.number} is ${letterStateTitles[state]}`, { state });
  sameVersion(delivery.version, expectedVersion);
  return delivery;
}

/** The day a customer asked for no letters; null where they get them. */
export async function refusedOn(tx: Tx, customerId: string): Promise<string | null> {
  const said = await tx.reminderChoice.findFirst({ where: { customerId }, orderBy: { sequence: 'desc' } });
  return said && !said.wantsLetters ? said.saidOn.toISOString().slice(0, 10) : null;
}

/** Each changes by one, so that a page that saw the letter before is told. */
export function letterSubject({ letterId, version }: Pick<Delivery, 'letterId' | 'version'>) {
  return { kind: 'reminder', id: letterId, before: version, after: version + 1 };
}
