import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { inHandOf } from './in-hand.ts';
import { refuseLastAdministrator } from './last-administrator.ts';
import { endSessions, forgetDevices } from './sessions.ts';

/** A person leaves. Everything they could get in or sign with ends now; their name and what they signed stay. */
export const endPerson = defineCommand(accessOperations.endPerson, {
  locks: () => ['people'],
  async execute({ tx, input, actor, expectedVersion, now, today }) {
    const { personId } = input;
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    sameVersion(person.version, expectedVersion);
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left already`);
    await refuseLastAdministrator(tx, person);
    if (personId === actor.personId) throw new Problem('not-yourself', 'Someone else ends an account');
    const inHand = await inHandOf(tx, personId, today);
    const day = toDbDate(today);
    const ended = await tx.authorisation.updateMany({
      where: { personId, OR: [{ revokedOn: null }, { revokedOn: { gt: day } }] },
      data: { revokedOn: day },
    });
    await tx.badge.updateMany({ where: { personId, revokedAt: null }, data: { revokedAt: now } });
    await tx.secondFactor.deleteMany({ where: { personId } });
    await tx.recoveryCode.deleteMany({ where: { personId } });
    const version = person.version + 1;
    const off = { active: false, pinHash: null, secretsOwn: false };
    await tx.person.update({
      where: { id: personId },
      data: { ...off, leftOn: day, leaveReason: input.reason, version },
    });
    await endSessions(tx, personId);
    await forgetDevices(tx, personId);
    return {
      reply: { id: personId, version, leftOn: today, inHand },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { roles: person.roles, authorisationsEnded: ended.count, inHand },
      reason: input.reason,
    };
  },
});
