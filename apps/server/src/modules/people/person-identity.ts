import { Problem } from '@hubwright/contracts/problems';
import type { Role } from '@hubwright/contracts/roles';
import { Inject, Injectable } from '@nestjs/common';
import type { Actor, Identity, Signature } from '../../platform/command/actor.ts';
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
    const [row] = await this.reads.sql<{ roles: Role[]; own: boolean; factorDue: boolean }>(
      `SELECT p.roles, p.secrets_own AS own, p.roles && coalesce((SELECT second_factor_roles FROM shop_profile WHERE id = 1), '{}')
         AND NOT EXISTS (SELECT 1 FROM second_factors f WHERE f.person_id = p.id) AS "factorDue"
       FROM people p WHERE p.id = $1 AND p.active`,
      [personId],
    );
    if (!row) return undefined;
    const due = row.own ? row.factorDue && 'second-factor' : 'own-password';
    return { personId, roles: row.roles, ...(due ? { due } : {}) };
  }

  async checkSignature(personId: string, signature: Signature): Promise<'password' | 'pin'> {
    if (signature.signer !== undefined && signature.signer !== personId)
      throw new Problem('signature-refused', 'Someone else has taken over this device since the page asked');
    const person = await this.reads.models.person.findUnique({ where: { id: personId } });
    if (!person?.active) throw new Problem('not-signed-in', 'This account is off');
    if (!person.secretsOwn) throw new Problem('own-password-due', 'The password in use was given by someone else');
    if ('pin' in signature) return this.checkPin(person, signature.pin);
    await this.checkPassword(person, signature.password);
    return 'password';
  }

  /** Throws `signature-refused` unless the password is this person's. */
  async checkPassword(person: { signInName: string; passwordHash: string }, password: string): Promise<void> {
    await this.attempts.count(person.signInName);
    if (!(await secretMatches(person.passwordHash, password)))
      throw new Problem('signature-refused', 'That password is not yours');
    await this.attempts.forget(person.signInName);
  }

  /** Throws `pin-locked` after five wrong ones, `signature-refused` for a wrong one. */
  async checkPin(person: { id: string; pinHash: string | null }, pin: string): Promise<'pin'> {
    await this.attempts.countPin(person.id);
    if (!(await secretMatches(person.pinHash, pin))) throw new Problem('signature-refused', 'That pin is not yours');
    await this.attempts.forgetPin(person.id);
    return 'pin';
  }
}
