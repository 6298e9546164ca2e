import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** One of one's own sessions; another's does not exist here. */
export const endOwnSession = defineCommand(accessOperations.endOwnSession, {
  locks: () => [],
  async execute({ tx, input, actor }) {
    const ended = await endByRef(tx, input.ref);
    if (ended.personId !== actor.personId) found(undefined, 'This session');
    return { reply: { ok: true as const }, subjects: [{ kind: 'person', id: actor.personId }], facts: { ended } };
  },
});

/** Anyone's session. */
export const endSession = defineCommand(accessOperations.endSession, {
  locks: () => [],
  async execute({ tx, input }) {
    const ended = await endByRef(tx, input.ref);
    return { reply: { ok: true as const }, subjects: [{ kind: 'person', id: ended.personId }], facts: { ended } };
  },
});

async function endByRef(tx: Tx, ref: string): Promise<{ personId: string; device: string }> {
  const rows = await tx.$queryRaw<{ personId: string; device: string }[]>`
    DELETE FROM session WHERE sess ->> 'ref' = ${ref}
    RETURNING sess ->> 'personId' AS "personId", coalesce(sess ->> 'device', '') AS device`;
  return found(rows[0], 'This session');
}
