import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { abandonBalance } from './abandon-balance.command.ts';
import { enterData } from './enter-data.command.ts';
import { enterHardware } from './enter-hardware.command.ts';
import { FieldBalanceQueries } from './field-balance.queries.ts';
import { fitWeights } from './fit-weights.command.ts';
import { HardwareQueries } from './hardware.queries.ts';
import { planBalance } from './plan-balance.command.ts';
import { recordRun } from './record-run.command.ts';
import { releaseBalance } from './release-balance.command.ts';
import { signBalance } from './sign-balance.command.ts';
import { signSetUp } from './sign-set-up.command.ts';
import { takeOffWeights } from './take-off-weights.command.ts';

const op = fieldBalanceOperations;

@Controller()
export class FieldBalanceController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(FieldBalanceQueries) private readonly balances: FieldBalanceQueries,
    @Inject(HardwareQueries) private readonly stock: HardwareQueries,
  ) {}

  @Operation(op.listFieldBalances)
  list(@Query() call: ReadCall<typeof op.listFieldBalances>) {
    return this.balances.list(call.input);
  }

  @Operation(op.fieldBalance)
  detail(@Query() call: ReadCall<typeof op.fieldBalance>) {
    return this.balances.detail(call.input.fieldBalanceId);
  }

  @Operation(op.fieldBalancePdf)
  pdf(@Query() call: ReadCall<typeof op.fieldBalancePdf>) {
    return this.balances.pdf(call.input.fieldBalanceId);
  }

  @Operation(op.listFieldBalanceData)
  data() {
    return this.stock.data();
  }

  @Operation(op.enterFieldBalanceData)
  enterData(@Call() call: CommandCall) {
    return this.runner.run(enterData, call);
  }

  @Operation(op.listBalanceHardware)
  hardware() {
    return this.stock.hardware();
  }

  @Operation(op.enterBalanceHardware)
  enterHardware(@Call() call: CommandCall) {
    return this.runner.run(enterHardware, call);
  }

  @Operation(op.planFieldBalance)
  plan(@Call() call: CommandCall) {
    return this.runner.run(planBalance, call);
  }

  @Operation(op.signFieldSetUp)
  setUp(@Call() call: CommandCall) {
    return this.runner.run(signSetUp, call);
  }

  @Operation(op.recordFieldRun)
  run(@Call() call: CommandCall) {
    return this.runner.run(recordRun, call);
  }

  @Operation(op.fitFieldWeights)
  fit(@Call() call: CommandCall) {
    return this.runner.run(fitWeights, call);
  }

  @Operation(op.takeOffFieldWeights)
  takeOff(@Call() call: CommandCall) {
    return this.runner.run(takeOffWeights, call);
  }

  @Operation(op.signFieldBalance)
  sign(@Call() call: CommandCall) {
    return this.runner.run(signBalance, call);
  }

  @Operation(op.releaseFieldBalance)
  release(@Call() call: CommandCall) {
    return this.runner.run(releaseBalance, call);
  }

  @Operation(op.abandonFieldBalance)
  abandon(@Call() call: CommandCall) {
    return this.runner.run(abandonBalance, call);
  }
}
