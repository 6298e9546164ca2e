import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { endSessions, forgetDevices } from './sessions.ts';

/** What waited in the session, and the step of the code that confirmed it: that code is used. */
interface Confirmed {
  readonly sealed: string;
  readonly recovery: readonly string[];
  readonly step: number;
  /** The secret id of the session that goes on. */
  readonly session: string;
}

export const confirmSecondFactor = ({ sealed, recovery, step, session }: Confirmed) =>
  defineCommand(accessOperations.confirmSecondFactor, {
    locks: () => ['people'],
    async execute({ tx, actor, now }) {
      const person = await tx.person.findUniqueOrThrow({ where: { id: actor.personId } });
      const personId = person.id;
      const data = { sealed, lastStep: step, confirmedAt: now };
      await tx.secondFactor.upsert({ where: { personId }, create: { personId, ...data }, update: data });
      await tx.recoveryCode.deleteMany({ where: { personId } });
      await tx.recoveryCode.createMany({ data: recovery.map((hash) => ({ hash, personId })) });
      const version = person.version + 1;
      await tx.person.update({ where: { id: personId }, data: { version } });
      await endSessions(tx, personId, session);
      await forgetDevices(tx, personId);
      return {
        reply: { id: personId, version },
        subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
        facts: { secondFactor: 'set up' },
      };
    },
  });
