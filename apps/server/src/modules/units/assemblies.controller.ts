import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { fitWithin } from './fit-within.command.ts';
import { takeOutOf } from './take-out-of.command.ts';

@Controller()
export class AssembliesController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(assemblyOperations.fitWithin)
  fit(@Call() call: CommandCall) {
    return this.runner.run(fitWithin, call);
  }

  @Operation(assemblyOperations.takeOutOf)
  takeOut(@Call() call: CommandCall) {
    return this.runner.run(takeOutOf, call);
  }
}
