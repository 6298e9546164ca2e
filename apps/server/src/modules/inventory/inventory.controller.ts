import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { InventoryQueries } from './inventory.queries.ts';
import { receiveLot } from './receive-lot.command.ts';

@Controller()
export class InventoryController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(InventoryQueries) private readonly queries: InventoryQueries,
  ) {}

  @Operation(inventoryOperations.listLots)
  listLots(@Query() call: ReadCall<typeof inventoryOperations.listLots>) {
    return this.queries.listLots(call.input);
  }

  @Operation(inventoryOperations.receiveLot)
  receiveLot(@Call() call: CommandCall) {
    return this.runner.run(receiveLot, call);
  }
}
