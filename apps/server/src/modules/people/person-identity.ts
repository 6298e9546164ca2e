import { Problem } from '@hubwright/contracts/problems';
import type { Role } from '@hubwright/contracts/roles';
import { Inject, Injectable } from '@nestjs/common';
import type { Actor, Identity } from '../../platform/command/actor.ts';
import { Reads } from '../../platform/database/reads.ts';
import { secretMatches } from './passwords.ts';
import { SignInAttempts } from './sign-in-attempts.ts';

/** Who is behind a session, and whether a signature is theirs. */
@Injectable()
export class PersonIdentity implements Identity {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(SignInAttempts) private readonly attempts: SignInAttempts,
  ) {}

  async actor(personId: string): Promise<Actor | undefined> {
    const [row] = await this.reads.sql<{ roles: Role[] }>('SELECT roles FROM people WHERE id = $1 AND active', [
      personId,
    ]);
    return row && { personId, roles: row.roles };
  }

  async checkSignature(
    personId: string,
    signature: { password: string } | { pin: string },
  ): Promise<'password' | 'pin'> {
    const person = await this.reads.models.person.findUnique({ where: { id: personId } });
    if (!person?.active) throw new Problem('not-signed-in', 'This account is off');
    await this.attempts.count(person.signInName);
    const by = 'pin' in signature ? 'pin' : 'password';
    const matches =
      'pin' in signature
        ? await secretMatches(person.pinHash, signature.pin)
        : await secretMatches(person.passwordHash, signature.password);
    if (!matches) throw new Problem('signature-refused', `That ${by} is not yours`);
    await this.attempts.forget(person.signInName);
    return by;
  }
}
