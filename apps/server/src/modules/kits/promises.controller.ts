import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { freezeReservation, unfreezeReservation } from './freeze-reservation.command.ts';
import { moveLotToKit } from './move-lot-to-kit.command.ts';
import { PromisesQueries } from './promises.queries.ts';

@Controller()
export class PromisesController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PromisesQueries) private readonly queries: PromisesQueries,
  ) {}

  @Operation(promiseOperations.lotServes)
  lotServes(@Query() call: ReadCall<typeof promiseOperations.lotServes>) {
    return this.queries.lotServes(call.input);
  }

  @Operation(promiseOperations.orderServes)
  orderServes(@Query() call: ReadCall<typeof promiseOperations.orderServes>) {
    return this.queries.orderServes(call.input);
  }

  @Operation(promiseOperations.whatIf)
  whatIf(@Query() call: ReadCall<typeof promiseOperations.whatIf>) {
    return this.queries.whatIf(call.input);
  }

  @Operation(promiseOperations.moveLotToKit)
  moveLotToKit(@Call() call: CommandCall) {
    return this.runner.run(moveLotToKit, call);
  }

  @Operation(promiseOperations.freezeReservation)
  freeze(@Call() call: CommandCall) {
    return this.runner.run(freezeReservation, call);
  }

  @Operation(promiseOperations.unfreezeReservation)
  unfreeze(@Call() call: CommandCall) {
    return this.runner.run(unfreezeReservation, call);
  }
}
