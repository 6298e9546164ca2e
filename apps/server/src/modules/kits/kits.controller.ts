import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { BuildSheetQueries } from './build-sheet.queries.ts';
import { explodeKit } from './explode-kit.command.ts';
import { issueLot } from './issue-lot.command.ts';
import { KitsQueries } from './kits.queries.ts';
import { releaseReservation } from './release-reservation.command.ts';
import { reserveKit } from './reserve-kit.command.ts';
import { reserveLine } from './reserve-line.command.ts';
import { returnFromTray } from './return-from-tray.command.ts';
import { scrapFromTray } from './scrap-from-tray.command.ts';
import { setNeedBy } from './set-need-by.command.ts';

@Controller()
export class KitsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(KitsQueries) private readonly queries: KitsQueries,
    @Inject(BuildSheetQueries) private readonly sheets: BuildSheetQueries,
  ) {}

  @Operation(kitsOperations.kitBoard)
  kitBoard(@Query() call: ReadCall<typeof kitsOperations.kitBoard>) {
    return this.queries.kitBoard(call.input);
  }

  @Operation(kitsOperations.kitDetail)
  kitDetail(@Query() call: ReadCall<typeof kitsOperations.kitDetail>) {
    return this.queries.kitDetail(call.input);
  }

  @Operation(kitsOperations.shortages)
  shortages(@Query() call: ReadCall<typeof kitsOperations.shortages>) {
    return this.queries.shortages(call.input);
  }

  @Operation(kitsOperations.buildSheet)
  buildSheet(@Query() call: ReadCall<typeof kitsOperations.buildSheet>) {
    return this.sheets.buildSheet(call.input);
  }

  @Operation(kitsOperations.explodeKit)
  explodeKit(@Call() call: CommandCall) {
    return this.runner.run(explodeKit, call);
  }

  @Operation(kitsOperations.setNeedBy)
  setNeedBy(@Call() call: CommandCall) {
    return this.runner.run(setNeedBy, call);
  }

  @Operation(kitsOperations.reserveLine)
  reserveLine(@Call() call: CommandCall) {
    return this.runner.run(reserveLine, call);
  }

  @Operation(kitsOperations.reserveKit)
  reserveKit(@Call() call: CommandCall) {
    return this.runner.run(reserveKit, call);
  }

  @Operation(kitsOperations.releaseReservation)
  releaseReservation(@Call() call: CommandCall) {
    return this.runner.run(releaseReservation, call);
  }

  @Operation(kitsOperations.issueLot)
  issueLot(@Call() call: CommandCall) {
    return this.runner.run(issueLot, call);
  }

  @Operation(kitsOperations.returnFromTray)
  returnFromTray(@Call() call: CommandCall) {
    return this.runner.run(returnFromTray, call);
  }

  @Operation(kitsOperations.scrapFromTray)
  scrapFromTray(@Call() call: CommandCall) {
    return this.runner.run(scrapFromTray, call);
  }
}
