import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation } from '../../platform/http/operation.ts';
import { takeBackPieces } from './take-back-pieces.command.ts';

@Controller()
export class VendorPiecesController {
  constructor(@Inject(CommandRunner) private readonly runner: CommandRunner) {}

  @Operation(vendorPieceOperations.takeBackPieces)
  takeBackPieces(@Call() call: CommandCall) {
    return this.runner.run(takeBackPieces, call);
  }
}
