import { freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { FrozenLotQueries } from './frozen-lots.queries.ts';
import { moveFrozenLot } from './move-frozen-lot.command.ts';

@Controller()
export class FreezerController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FrozenLotQueries) private readonly queries: FrozenLotQueries,
  ) {}

  @Operation(freezerOperations.listFrozenLots)
  list() {
    return this.queries.list();
  }

  @Operation(freezerOperations.moveFrozenLot)
  move(@Call() call: CommandCall) {
    return this.runner.run(moveFrozenLot, call);
  }
}
