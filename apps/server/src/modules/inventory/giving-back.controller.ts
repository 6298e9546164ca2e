import { givingBackOperations } from '@hubwright/contracts/inventory/giving-back-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { giveBackLot } from './give-back-lot.command.ts';

@Controller()
export class GivingBackController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(givingBackOperations.giveBackLot)
  giveBackLot(@Call() call: CommandCall) {
    return this.runner.run(giveBackLot, call);
  }
}
