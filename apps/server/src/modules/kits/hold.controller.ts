import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { holdFromTray } from './hold-from-tray.command.ts';
import { rejectFromTray } from './reject-from-tray.command.ts';

@Controller()
export class HoldController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(holdOperations.holdFromTray)
  holdFromTray(@Call() call: CommandCall) {
    return this.runner.run(holdFromTray, call);
  }

  @Operation(holdOperations.rejectFromTray)
  rejectFromTray(@Call() call: CommandCall) {
    return this.runner.run(rejectFromTray, call);
  }
}
