import { Problem } from '@hubwright/contracts/problems';
import { recordOperations } from '@hubwright/contracts/records/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/**
 * The name goes, the id stays: every chain refers to people by id, and what entries said about the person lies beside the
 * chain under a salted hash. Names on signatures that must still be kept are not erased: the law asks for them.
 */
export const erasePerson = defineCommand(recordOperations.erasePerson, {
  locks: (input) => [`person:${input.personId}`],
  async execute({ tx, input }) {
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    await refuseWhileNeeded(tx, person);
    await tx.person.update({
      where: { id: person.id },
      data: {
        signInName: `erased-${person.id}`,
        displayName: 'Erased person',
        initials: '··',
        email: null,
        certificateNumber: null,
        passwordHash: '',
        pinHash: null,
        version: person.version + 1,
      },
    });
    // Why somebody was away was theirs; that they were stays, as working time rests on it.
    await tx.absence.updateMany({ where: { personId: person.id }, data: { kind: 'other', note: '' } });
    const erased = await tx.personalValue.deleteMany({ where: { subjectKind: 'person', subjectId: person.id } });
    return {
      reply: { ok: true as const, values: erased.count },
      subjects: [{ kind: 'person', id: person.id, before: person.version, after: person.version + 1 }],
      facts: { erasedValues: erased.count },
      reason: input.reason,
    };
  },
});

async function refuseWhileNeeded(tx: Tx, person: { id: string; active: boolean }): Promise<void> {
  if (person.active) throw new Problem('still-needed', 'The account of this person is still on');
  const signed = await tx.signOff.count({ where: { personId: person.id } });
  if (signed > 0)
    throw new Problem('still-needed', `${signed} signatures of this person are on records that are still kept`, {
      signed,
    });
}
