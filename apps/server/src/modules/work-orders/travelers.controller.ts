import { printOperations } from '@hubwright/contracts/work-orders/print-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { beginTeardown } from './begin-teardown.command.ts';
import { BenchQueries } from './bench.queries.ts';
import { closeBuild } from './close-build.command.ts';
import { correctSignOff } from './correct-sign-off.command.ts';
import { PrintQueries } from './print.queries.ts';
import { rebaseRevision } from './rebase-revision.command.ts';
import { signStep } from './sign-step.command.ts';
import { TravelerQueries } from './travelers.queries.ts';

@Controller()
export class TravelersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PrintQueries) private readonly prints: PrintQueries,
    @Inject(TravelerQueries) private readonly travelers: TravelerQueries,
    @Inject(BenchQueries) private readonly bench: BenchQueries,
  ) {}

  @Operation(travelerOperations.beginTeardown)
  beginTeardown(@Call() call: CommandCall) {
    return this.runner.run(beginTeardown, call);
  }

  @Operation(travelerOperations.listTravelers)
  listTravelers(@Query() call: ReadCall<typeof travelerOperations.listTravelers>) {
    return this.travelers.list(call.input);
  }

  @Operation(travelerOperations.traveler)
  traveler(@Query() call: ReadCall<typeof travelerOperations.traveler>) {
    return this.travelers.detail(call.input);
  }

  @Operation(printOperations.travelerPdf)
  travelerPdf(@Query() call: ReadCall<typeof printOperations.travelerPdf>) {
    return this.prints.one(call.input);
  }

  @Operation(printOperations.travelersPdf)
  travelersPdf(@Query() call: ReadCall<typeof printOperations.travelersPdf>) {
    return this.prints.all(call.input);
  }

  @Operation(travelerOperations.signStep)
  signStep(@Call() call: CommandCall) {
    return this.runner.run(signStep, call);
  }

  @Operation(travelerOperations.correctSignOff)
  correctSignOff(@Call() call: CommandCall) {
    return this.runner.run(correctSignOff, call);
  }

  @Operation(travelerOperations.revisionDifferences)
  revisionDifferences(@Query() call: ReadCall<typeof travelerOperations.revisionDifferences>) {
    return this.travelers.differences(call.input);
  }

  @Operation(travelerOperations.rebaseRevision)
  rebaseRevision(@Call() call: CommandCall) {
    return this.runner.run(rebaseRevision, call);
  }

  @Operation(travelerOperations.benchBoard)
  benchBoard(@Query() call: ReadCall<typeof travelerOperations.benchBoard>) {
    return this.bench.board(call.input, call.actor);
  }

  @Operation(travelerOperations.inspectionQueue)
  inspectionQueue(@Query() call: ReadCall<typeof travelerOperations.inspectionQueue>) {
    return this.bench.inspections(call.input, call.actor);
  }

  @Operation(travelerOperations.closeBuild)
  closeBuild(@Call() call: CommandCall) {
    return this.runner.run(closeBuild, call);
  }
}
