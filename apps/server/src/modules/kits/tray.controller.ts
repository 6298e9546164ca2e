import { trayOperations } from '@hubwright/contracts/kits/tray-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { KitPaperQueries } from './kit-paper.queries.ts';
import { swapLot } from './swap-lot.command.ts';

@Controller()
export class TrayController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(KitPaperQueries) private readonly papers: KitPaperQueries,
  ) {}

  @Operation(trayOperations.swapLot)
  swapLot(@Call() call: CommandCall) {
    return this.runner.run(swapLot, call);
  }

  @Operation(trayOperations.trayLabelPdf)
  label(@Query() call: ReadCall<typeof trayOperations.trayLabelPdf>) {
    return this.papers.label(call.input);
  }

  @Operation(trayOperations.kitAuditPdf)
  audit(@Query() call: ReadCall<typeof trayOperations.kitAuditPdf>) {
    return this.papers.audit(call.input);
  }
}
