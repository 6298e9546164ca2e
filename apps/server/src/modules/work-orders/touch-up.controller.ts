import { touchUpOperations } from '@hubwright/contracts/work-orders/touch-up-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { touchUp } from './touch-up.command.ts';

@Controller()
export class TouchUpController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(touchUpOperations.touchUp)
  touchUp(@Call() call: CommandCall) {
    return this.runner.run(touchUp, call);
  }
}
