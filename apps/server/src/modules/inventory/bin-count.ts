import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';

/** Who is counting a bin now, if anybody. Call under the lock `bin-count:<bin>`. */
export async function countingOf(tx: Tx, bin: string) {
  return tx.binCount.findFirst({ where: { bin, endedAt: null } });
}

/** Throws `being-counted`, naming who, while somebody else counts there. */
export async function refuseCountedByOther(tx: Tx, bin: string | undefined, personId: string): Promise<void> {
  const counting = bin === undefined ? null : await countingOf(tx, bin);
  if (!counting || counting.personId === personId) return;
  const who = await tx.person.findUnique({ where: { id: counting.personId }, select: { displayName: true } });
  throw new Problem('being-counted', `${who?.displayName ?? 'Somebody'} is counting ${bin}`, {
    bin,
    since: counting.begunAt.toISOString(),
  });
}
