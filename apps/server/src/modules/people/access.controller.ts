import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Controller, Inject, Req } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall, type SignedInRequest } from '../../platform/http/operation.ts';
import { endPerson } from './end-person.command.ts';
import { endOwnSession, endSession } from './end-session.command.ts';
import { issueBadge } from './issue-badge.command.ts';
import { OwnAccount } from './own-account.ts';
import { PeopleQueries } from './people.queries.ts';
import { resetPassword } from './reset-password.command.ts';
import { resetSecondFactor } from './reset-second-factor.command.ts';
import { revokeBadge } from './revoke-badge.command.ts';
import { SignatureQueries } from './signatures.queries.ts';
import { takeBackPerson } from './take-back-person.command.ts';

/** Sessions, badges, second factors; people leaving and coming back. */
@Controller()
export class AccessController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(OwnAccount) private readonly account: OwnAccount,
    @Inject(PeopleQueries) private readonly people: PeopleQueries,
    @Inject(SignatureQueries) private readonly signatures: SignatureQueries,
  ) {}

  @Operation(accessOperations.lockSession)
  lock(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.account.lock(request, call);
  }

  @Operation(accessOperations.unlockSession)
  async unlock(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    await this.account.unlock(request, call);
    return this.people.me(call.actor.personId);
  }

  @Operation(accessOperations.switchPerson)
  async switchPerson(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.people.me(await this.account.switchTo(request, call.input));
  }

  @Operation(accessOperations.ownSessions)
  ownSessions(@Req() request: SignedInRequest, @Query() call: ReadCall<typeof accessOperations.ownSessions>) {
    return this.people.sessions(request.session.sessionId, call.actor.personId);
  }

  @Operation(accessOperations.endOwnSession)
  endOwnSession(@Call() call: CommandCall) {
    return this.runner.run(endOwnSession, call);
  }

  @Operation(accessOperations.listSessions)
  sessions(@Req() request: SignedInRequest) {
    return this.people.sessions(request.session.sessionId);
  }

  @Operation(accessOperations.endSession)
  endSession(@Call() call: CommandCall) {
    return this.runner.run(endSession, call);
  }

  @Operation(accessOperations.chooseOwnPassword)
  choosePassword(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.account.choosePassword(request, call);
  }

  @Operation(accessOperations.chooseOwnPin)
  choosePin(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.account.choosePin(request, call);
  }

  @Operation(accessOperations.beginSecondFactor)
  beginSecondFactor(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.account.beginSecondFactor(request, call);
  }

  @Operation(accessOperations.confirmSecondFactor)
  confirmSecondFactor(@Req() request: SignedInRequest, @Call() call: CommandCall) {
    return this.account.confirmSecondFactor(request, call);
  }

  @Operation(accessOperations.resetSecondFactor)
  resetSecondFactor(@Call() call: CommandCall) {
    return this.runner.run(resetSecondFactor, call);
  }

  @Operation(accessOperations.resetPassword)
  resetPassword(@Call() call: CommandCall) {
    return this.runner.run(resetPassword, call);
  }

  @Operation(accessOperations.issueBadge)
  issueBadge(@Call() call: CommandCall) {
    return this.runner.run(issueBadge, call);
  }

  @Operation(accessOperations.revokeBadge)
  revokeBadge(@Call() call: CommandCall) {
    return this.runner.run(revokeBadge, call);
  }

  @Operation(accessOperations.badgeToPrint)
  badge(@Query() call: ReadCall<typeof accessOperations.badgeToPrint>) {
    return this.people.badge(call.input.personId);
  }

  @Operation(accessOperations.endPerson)
  endPerson(@Call() call: CommandCall) {
    return this.runner.run(endPerson, call);
  }

  @Operation(accessOperations.takeBackPerson)
  takeBack(@Call() call: CommandCall) {
    return this.runner.run(takeBackPerson, call);
  }

  @Operation(accessOperations.listSignatures)
  listSignatures(@Query() call: ReadCall<typeof accessOperations.listSignatures>) {
    return this.signatures.list(call.input);
  }
}
