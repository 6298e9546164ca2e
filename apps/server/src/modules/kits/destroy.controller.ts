import { destroyOperations } from '@hubwright/contracts/kits/destroy-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { destroyFromTray } from './destroy-from-tray.command.ts';

@Controller()
export class DestroyController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(destroyOperations.destroyFromTray)
  destroyFromTray(@Call() call: CommandCall) {
    return this.runner.run(destroyFromTray, call);
  }
}
