import type { Sent } from '@hubwright/contracts/operation';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { type CommandCall, CommandRunner, parseInput } from '../../platform/command/runner.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { Devices } from '../../platform/http/devices.ts';
import type { SignedInRequest } from '../../platform/http/operation.ts';
import { chooseOwnPassword } from './choose-own-password.command.ts';
import { chooseOwnPin } from './choose-own-pin.command.ts';
import { confirmSecondFactor } from './confirm-second-factor.command.ts';
import { PersonIdentity } from './person-identity.ts';
import { recoveryHash, SecondFactors } from './second-factor.ts';
import { startSession } from './sessions.ts';
import { SignInAttempts } from './sign-in-attempts.ts';

const hour = 60 * 60 * 1000;
const pendingMilliseconds = hour / 4;

type Input<K extends keyof typeof accessOperations> = Sent<(typeof accessOperations)[K]>;

/** What people do with their own session, password, PIN and second factor; each change asks for the password again. */
@Injectable()
export class OwnAccount {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(Reads) private readonly reads: Reads,
    @Inject(PersonIdentity) private readonly identity: PersonIdentity,
    @Inject(SignInAttempts) private readonly attempts: SignInAttempts,
    @Inject(SecondFactors) private readonly factors: SecondFactors,
    @Inject(Devices) private readonly devices: Devices,
  ) {}

  /** After name, password and code: a session, and a device that remembers it. */
  async signedIn(request: SignedInRequest, reply: FastifyReply, personId: string): Promise<void> {
    await startSession(request, personId, { by: 'password' });
    await this.devices.remember(request, reply, personId);
  }

  lock(request: SignedInRequest, call: CommandCall): { ok: true } {
    parseInput(accessOperations.lockSession, call.input);
    request.session.lockedAt ??= Date.now();
    return { ok: true };
  }

  async unlock(request: SignedInRequest, call: CommandCall): Promise<void> {
    const { signature } = parseInput(accessOperations.unlockSession, call.input) as Input<'unlockSession'>;
    await this.identity.checkSignature(call.actor.personId, signature);
    request.session.lockedAt = undefined;
  }

  /** Badge and PIN take over this device for what is left of the time since that person's full sign-in on it. */
  async switchTo(request: SignedInRequest, input: unknown): Promise<string> {
    const { badge, pin } = parseInput(accessOperations.switchPerson, input) as Input<'switchPerson'>;
    await this.attempts.countAddress(request.ip);
    const row = await this.reads.models.badge.findUnique({
      where: { code: badge.trim().toUpperCase() },
      include: { person: true },
    });
    const person = row && row.revokedAt === null && row.person.active && row.person.secretsOwn ? row.person : undefined;
    const left = person ? await this.timeLeft(request, person.id) : 0;
    if (!person || left <= 0)
      throw new Problem('full-sign-in-needed', 'There was no full sign-in with this badge on this device lately');
    await this.identity.checkPin(person, pin).catch((error: unknown) => {
      const isWrong = error instanceof Problem && error.type === 'signature-refused';
      throw isWrong ? new Problem('switch-refused', 'That badge and PIN do not match') : error;
    });
    await this.attempts.giveAddressBack(request.ip);
    await startSession(request, person.id, { by: 'badge', forMilliseconds: left });
    return person.id;
  }

  async choosePassword(request: SignedInRequest, call: CommandCall) {
    await this.passwordAgain(accessOperations.chooseOwnPassword, call);
    return this.runner.run(chooseOwnPassword(request.session.sessionId), call);
  }

  async choosePin(request: SignedInRequest, call: CommandCall) {
    await this.passwordAgain(accessOperations.chooseOwnPin, call);
    return this.runner.run(chooseOwnPin(request.session.sessionId), call);
  }

  /** The secret waits in the session, sealed, until a code of it comes back. */
  async beginSecondFactor(request: SignedInRequest, call: CommandCall) {
    const { code } = await this.passwordAgain(accessOperations.beginSecondFactor, call);
    const { personId } = call.actor;
    const [person, shop] = await Promise.all([
      this.reads.models.person.findUniqueOrThrow({ where: { id: personId } }),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 } }),
    ]);
    await this.attempts.count(person.signInName);
    await this.factors.use(personId, code);
    await this.attempts.forget(person.signInName);
    const made = this.factors.make({ shop: shop?.name ?? '', person: person.signInName });
    request.session.pendingFactor = {
      sealed: await this.factors.seal(made.secret, personId),
      recovery: made.recoveryCodes.map(recoveryHash),
      at: Date.now(),
    };
    return made;
  }

  async confirmSecondFactor(request: SignedInRequest, call: CommandCall) {
    const { code } = parseInput(accessOperations.confirmSecondFactor, call.input) as Input<'confirmSecondFactor'>;
    const pending = request.session.pendingFactor;
    if (!pending || Date.now() - pending.at > pendingMilliseconds)
      throw new Problem('no-code-pending', 'Nothing waits for a code here');
    const step = await this.factors.stepOf(pending.sealed, call.actor.personId, code);
    if (step === undefined) throw new Problem('code-refused', 'The code does not fit the picture shown');
    const command = confirmSecondFactor({ ...pending, step, session: request.session.sessionId });
    const reply = await this.runner.run(command, call);
    request.session.pendingFactor = undefined;
    return reply;
  }

  private async timeLeft(request: SignedInRequest, personId: string): Promise<number> {
    const since = await this.devices.sinceFullSignIn(request, personId);
    const shop = await this.reads.models.shopProfile.findUnique({ where: { id: 1 } });
    return since === undefined ? 0 : (shop?.badgeSwitchHours ?? 0) * hour - since;
  }

  private async passwordAgain<O extends (typeof accessOperations)[keyof typeof accessOperations]>(
    operation: O,
    call: CommandCall,
  ): Promise<{ password: string; code?: string }> {
    const input = parseInput(operation, call.input) as { password: string; code?: string };
    const person = found(
      await this.reads.models.person.findUnique({ where: { id: call.actor.personId } }),
      'This person',
    );
    await this.identity.checkPassword(person, input.password);
    return input;
  }
}
