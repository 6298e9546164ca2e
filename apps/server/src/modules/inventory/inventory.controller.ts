import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addCertificate } from './add-certificate.command.ts';
import { InventoryQueries } from './inventory.queries.ts';
import { judgeLot } from './judge-lot.command.ts';
import { moveLot } from './move-lot.command.ts';
import { MovementsQueries } from './movements.queries.ts';
import { putAway } from './put-away.command.ts';
import { quarantineLot } from './quarantine-lot.command.ts';
import { receiveLot } from './receive-lot.command.ts';
import { reverseMovement } from './reverse-movement.command.ts';

@Controller()
export class InventoryController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(InventoryQueries) private readonly queries: InventoryQueries,
    @Inject(MovementsQueries) private readonly movements: MovementsQueries,
  ) {}

  @Operation(inventoryOperations.listLots)
  listLots(@Query() call: ReadCall<typeof inventoryOperations.listLots>) {
    return this.queries.listLots(call.input);
  }

  @Operation(inventoryOperations.lotDetail)
  lotDetail(@Query() call: ReadCall<typeof inventoryOperations.lotDetail>) {
    return this.queries.lotDetail(call.input);
  }

  @Operation(inventoryOperations.listPartStock)
  listPartStock(@Query() call: ReadCall<typeof inventoryOperations.listPartStock>) {
    return this.queries.listPartStock(call.input);
  }

  @Operation(inventoryOperations.expiringStock)
  expiringStock(@Query() call: ReadCall<typeof inventoryOperations.expiringStock>) {
    return this.queries.expiringStock(call.input);
  }

  @Operation(inventoryOperations.listMovements)
  listMovements(@Query() call: ReadCall<typeof inventoryOperations.listMovements>) {
    return this.movements.listMovements(call.input);
  }

  @Operation(inventoryOperations.receiveLot)
  receiveLot(@Call() call: CommandCall) {
    return this.runner.run(receiveLot, call);
  }

  @Operation(inventoryOperations.addCertificate)
  addCertificate(@Call() call: CommandCall) {
    return this.runner.run(addCertificate, call);
  }

  @Operation(inventoryOperations.judgeLot)
  judgeLot(@Call() call: CommandCall) {
    return this.runner.run(judgeLot, call);
  }

  @Operation(inventoryOperations.putAway)
  putAway(@Call() call: CommandCall) {
    return this.runner.run(putAway, call);
  }

  @Operation(inventoryOperations.moveLot)
  moveLot(@Call() call: CommandCall) {
    return this.runner.run(moveLot, call);
  }

  @Operation(inventoryOperations.quarantineLot)
  quarantineLot(@Call() call: CommandCall) {
    return this.runner.run(quarantineLot, call);
  }

  @Operation(inventoryOperations.reverseMovement)
  reverseMovement(@Call() call: CommandCall) {
    return this.runner.run(reverseMovement, call);
  }
}
