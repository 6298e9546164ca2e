import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { acceptFill } from './accept-fill.command.ts';
import { AllocationQueries } from './allocation.queries.ts';
import { changeAllocationPolicy } from './change-allocation-policy.command.ts';
import { FillQueries } from './fill.queries.ts';

@Controller()
export class AllocationController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FillQueries) private readonly fill: FillQueries,
    @Inject(AllocationQueries) private readonly queries: AllocationQueries,
  ) {}

  @Operation(allocationOperations.kitsToFill)
  kitsToFill() {
    return this.fill.kitsToFill();
  }

  @Operation(allocationOperations.kitsLeftOut)
  kitsLeftOut(@Query() call: ReadCall<typeof allocationOperations.kitsLeftOut>) {
    return this.fill.leftOut(call.input);
  }

  @Operation(allocationOperations.acceptFill)
  acceptFill(@Call() call: CommandCall) {
    return this.runner.run(acceptFill, call);
  }

  @Operation(allocationOperations.allocationPolicy)
  policy() {
    return this.queries.policy();
  }

  @Operation(allocationOperations.changeAllocationPolicy)
  changePolicy(@Call() call: CommandCall) {
    return this.runner.run(changeAllocationPolicy, call);
  }
}
