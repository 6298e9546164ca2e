import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { z } from 'zod';
import { defineCommand } from '../../platform/command/command.ts';
import { givenPassword } from './passwords.ts';
import { endSessions, forgetDevices } from './sessions.ts';

const input = z.strictObject({ signInName: z.string().max(80), password: z.string(), reason: z.string() });

/**
 * The way back for the only administrator who lost password or second factor. No address leads here: it is run by whoever
 * may run programs on the shop's machine, and stands on record as the server's own doing.
 */
export const letAdministratorIn = defineCommand(
  {
    ...accessOperations.resetPassword,
    id: 'let-administrator-in',
    access: 'signed-in',
    input,
    problems: ['not-found'],
  },
  {
    locks: () => ['people'],
    async execute({ tx, input: { signInName, password, reason }, now }) {
      const person = await tx.person.findUnique({ where: { signInName: signInName.trim().toLowerCase() } });
      if (!person?.active || !person.roles.includes('administrator'))
        throw new Problem(
          'not-found',
          `“${signInName}” is no active administrator; administrators let everyone else in`,
        );
      await tx.secondFactor.deleteMany({ where: { personId: person.id } });
      await tx.recoveryCode.deleteMany({ where: { personId: person.id } });
      const version = person.version + 1;
      await tx.person.update({ where: { id: person.id }, data: { ...(await givenPassword(password, now)), version } });
      await endSessions(tx, person.id);
      await forgetDevices(tx, person.id);
      return {
        reply: { id: person.id, version },
        subjects: [{ kind: 'person', id: person.id, before: person.version, after: version }],
        facts: { password: 'given on the machine', secondFactor: 'taken away' },
        reason,
      };
    },
  },
);
