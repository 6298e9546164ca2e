import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { BoardsQueries } from './boards.queries.ts';
import { closeWorkOrder } from './close-work-order.command.ts';
import { declareInspected } from './declare-inspected.command.ts';
import { liftHold } from './lift-hold.command.ts';
import { okToShip } from './ok-to-ship.command.ts';
import { placeHold } from './place-hold.command.ts';
import { receiveUnit } from './receive-unit.command.ts';
import { returnUnrepaired } from './return-unrepaired.command.ts';
import { setApplication } from './set-application.command.ts';
import { setPromise } from './set-promise.command.ts';
import { shipUnit } from './ship-unit.command.ts';
import { signPreliminaryInspection } from './sign-preliminary-inspection.command.ts';
import { WorkOrderDetailQueries } from './work-order-detail.queries.ts';
import { WorkOrdersQueries } from './work-orders.queries.ts';

@Controller()
export class WorkOrdersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(WorkOrdersQueries) private readonly queries: WorkOrdersQueries,
    @Inject(WorkOrderDetailQueries) private readonly details: WorkOrderDetailQueries,
    @Inject(BoardsQueries) private readonly boards: BoardsQueries,
  ) {}

  @Operation(workOrderOperations.listWorkOrders)
  list(@Query() call: ReadCall<typeof workOrderOperations.listWorkOrders>) {
    return this.queries.list(call.input);
  }

  @Operation(workOrderOperations.workOrder)
  one(@Query() call: ReadCall<typeof workOrderOperations.workOrder>) {
    return this.details.detail(call.input.workOrderId);
  }

  @Operation(workOrderOperations.returningUnit)
  returning(@Query() call: ReadCall<typeof workOrderOperations.returningUnit>) {
    return this.queries.returning(call.input);
  }

  @Operation(workOrderOperations.deskBoard)
  desk() {
    return this.boards.desk();
  }

  @Operation(workOrderOperations.managerBoard)
  manager(@Query() call: ReadCall<typeof workOrderOperations.managerBoard>) {
    return this.boards.manager(call.input);
  }

  @Operation(workOrderOperations.listHolds)
  holds(@Query() call: ReadCall<typeof workOrderOperations.listHolds>) {
    return this.queries.holds(call.input);
  }

  @Operation(workOrderOperations.receiveUnit)
  receive(@Call() call: CommandCall) {
    return this.runner.run(receiveUnit, call);
  }

  @Operation(workOrderOperations.signPreliminaryInspection)
  signPreliminaryInspection(@Call() call: CommandCall) {
    return this.runner.run(signPreliminaryInspection, call);
  }

  @Operation(workOrderOperations.declareInspected)
  declareInspected(@Call() call: CommandCall) {
    return this.runner.run(declareInspected, call);
  }

  @Operation(workOrderOperations.placeHold)
  placeHold(@Call() call: CommandCall) {
    return this.runner.run(placeHold, call);
  }

  @Operation(workOrderOperations.liftHold)
  liftHold(@Call() call: CommandCall) {
    return this.runner.run(liftHold, call);
  }

  @Operation(workOrderOperations.setApplication)
  setApplication(@Call() call: CommandCall) {
    return this.runner.run(setApplication, call);
  }

  @Operation(workOrderOperations.setPromise)
  setPromise(@Call() call: CommandCall) {
    return this.runner.run(setPromise, call);
  }

  @Operation(workOrderOperations.okToShip)
  okToShip(@Call() call: CommandCall) {
    return this.runner.run(okToShip, call);
  }

  @Operation(workOrderOperations.returnUnrepaired)
  returnUnrepaired(@Call() call: CommandCall) {
    return this.runner.run(returnUnrepaired, call);
  }

  @Operation(workOrderOperations.shipUnit)
  ship(@Call() call: CommandCall) {
    return this.runner.run(shipUnit, call);
  }

  @Operation(workOrderOperations.closeWorkOrder)
  close(@Call() call: CommandCall) {
    return this.runner.run(closeWorkOrder, call);
  }
}
