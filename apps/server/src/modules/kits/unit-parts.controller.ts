import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { clearRack } from './clear-rack.command.ts';
import { installFromTray } from './install-from-tray.command.ts';
import { passRackPart } from './pass-rack-part.command.ts';
import { replaceRackPart } from './replace-rack-part.command.ts';
import { reuseFromRack } from './reuse-from-rack.command.ts';
import { takeOff } from './take-off.command.ts';
import { takeOut } from './take-out.command.ts';

@Controller()
export class UnitPartsController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(kitsOperations.takeOff)
  takeOff(@Call() call: CommandCall) {
    return this.runner.run(takeOff, call);
  }

  @Operation(kitsOperations.passRackPart)
  passRackPart(@Call() call: CommandCall) {
    return this.runner.run(passRackPart, call);
  }

  @Operation(kitsOperations.replaceRackPart)
  replaceRackPart(@Call() call: CommandCall) {
    return this.runner.run(replaceRackPart, call);
  }

  @Operation(kitsOperations.clearRack)
  clearRack(@Call() call: CommandCall) {
    return this.runner.run(clearRack, call);
  }

  @Operation(kitsOperations.installFromTray)
  installFromTray(@Call() call: CommandCall) {
    return this.runner.run(installFromTray, call);
  }

  @Operation(kitsOperations.reuseFromRack)
  reuseFromRack(@Call() call: CommandCall) {
    return this.runner.run(reuseFromRack, call);
  }

  @Operation(kitsOperations.takeOut)
  takeOut(@Call() call: CommandCall) {
    return this.runner.run(takeOut, call);
  }
}
