import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Controller, Inject, Req, Res, UseGuards } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall, type SignedInRequest } from '../../platform/http/operation.ts';
import { addPerson } from './add-person.command.ts';
import { changePerson } from './change-person.command.ts';
import { changeShop } from './change-shop.command.ts';
import { grantAuthorisation } from './grant-authorisation.command.ts';
import { LocalGuard } from './local.strategy.ts';
import { OwnAccount } from './own-account.ts';
import { PeopleQueries } from './people.queries.ts';
import { revokeAuthorisation } from './revoke-authorisation.command.ts';
import { setUpShop } from './set-up-shop.command.ts';
import { unlockSignIn } from './unlock-sign-in.command.ts';

@Controller()
export class PeopleController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PeopleQueries) private readonly queries: PeopleQueries,
    @Inject(OwnAccount) private readonly account: OwnAccount,
  ) {}

  @Operation(peopleOperations.setUpState)
  setUpState() {
    return this.queries.setUpNeeded();
  }

  @Operation(peopleOperations.setUpShop)
  setUpShop(@Call() call: CommandCall) {
    return this.runner.run(setUpShop, call);
  }

  @Operation(peopleOperations.signIn)
  @UseGuards(LocalGuard)
  async signIn(
    @Req() request: SignedInRequest & { user: { personId: string } },
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    await this.account.signedIn(request, reply, request.user.personId);
    return this.queries.me(request.user.personId);
  }

  @Operation(peopleOperations.signOut)
  async signOut(@Req() request: SignedInRequest) {
    await request.session.destroy();
    return { ok: true };
  }

  @Operation(peopleOperations.me)
  me(@Req() request: SignedInRequest, @Query() call: ReadCall<typeof peopleOperations.me>) {
    return this.queries.me(call.actor.personId, request.session.lockedAt !== undefined);
  }

  @Operation(peopleOperations.listPeople)
  list() {
    return this.queries.list();
  }

  @Operation(peopleOperations.addPerson)
  add(@Call() call: CommandCall) {
    return this.runner.run(addPerson, call);
  }

  @Operation(peopleOperations.changePerson)
  change(@Call() call: CommandCall) {
    return this.runner.run(changePerson, call);
  }

  @Operation(peopleOperations.unlockSignIn)
  unlock(@Call() call: CommandCall) {
    return this.runner.run(unlockSignIn, call);
  }

  @Operation(peopleOperations.grantAuthorisation)
  grant(@Call() call: CommandCall) {
    return this.runner.run(grantAuthorisation, call);
  }

  @Operation(peopleOperations.revokeAuthorisation)
  revoke(@Call() call: CommandCall) {
    return this.runner.run(revokeAuthorisation, call);
  }

  @Operation(peopleOperations.shop)
  shop() {
    return this.queries.shop();
  }

  @Operation(peopleOperations.changeShop)
  changeShop(@Call() call: CommandCall) {
    return this.runner.run(changeShop, call);
  }
}
