import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import { AuthGuard, PassportStrategy } from '@nestjs/passport';
import type { FastifyRequest } from 'fastify';
import { Strategy } from 'passport-local';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { parseInput } from '../../platform/command/runner.ts';
import { Reads } from '../../platform/database/reads.ts';
import { rawInput } from '../../platform/http/operation.ts';
import { secretMatches } from './passwords.ts';
import { SecondFactors } from './second-factor.ts';
import { SignInAttempts } from './sign-in-attempts.ts';

/** Name, password and, where the person has one, second factor, checked by passport; a wrong name and a wrong password look the same and take the same time. */
@Injectable()
export class LocalStrategy extends PassportStrategy(Strategy, 'local') {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(SignInAttempts) private readonly attempts: SignInAttempts,
    @Inject(SecondFactors) private readonly factors: SecondFactors,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {
    super({ usernameField: 'signInName', passwordField: 'password', passReqToCallback: true });
  }

  async validate(request: FastifyRequest): Promise<{ personId: string }> {
    const given = parseInput(peopleOperations.signIn, rawInput(peopleOperations.signIn, request)) as {
      signInName: string;
      password: string;
      code?: string;
    };
    const signInName = given.signInName.trim().toLowerCase();
    await this.attempts.count(signInName, request.ip);
    const person = await this.reads.models.person.findUnique({ where: { signInName } });
    const matches = await secretMatches(person?.passwordHash, given.password);
    if (!matches || !person?.active) throw new Problem('sign-in-refused', 'That name and password do not match');
    // Told only to who knows the password, so it says nothing about who has an account.
    if (person.firstPasswordUntil && person.firstPasswordUntil <= this.clock.now())
      throw new Problem('first-password-expired', 'This first password was for 72 hours, and they are over');
    await this.useCode(person, given.code, request.ip);
    await this.attempts.forget(signInName, request.ip);
    await this.attempts.forgetPin(person.id);
    return { personId: person.id };
  }

  private async useCode(person: { id: string; signInName: string }, code: string | undefined, address: string) {
    try {
      await this.factors.use(person.id, code);
    } catch (error) {
      if (error instanceof Problem && error.type === 'code-needed')
        await this.attempts.giveBack(person.signInName, address);
      throw error;
    }
  }
}

/** Runs the strategy before the sign-in route; a malformed body is told apart from a wrong password. */
@Injectable()
export class LocalGuard extends AuthGuard('local') {
  override handleRequest<T>(error: unknown, person: T | false): T {
    if (error) throw error;
    if (!person)
      throw new Problem('invalid-input', 'Enter both name and password', {}, [
        { pointer: '/password', detail: 'Enter both name and password' },
      ]);
    return person;
  }
}
