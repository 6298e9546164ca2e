import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { cancelOrder } from './cancel-order.command.ts';
import { changeOrderLine } from './change-order-line.command.ts';
import { PurchasingQueries } from './purchasing.queries.ts';
import { raiseOrder } from './raise-order.command.ts';

@Controller()
export class PurchasingController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(PurchasingQueries) private readonly queries: PurchasingQueries,
  ) {}

  @Operation(purchasingOperations.listOrders)
  listOrders(@Query() call: ReadCall<typeof purchasingOperations.listOrders>) {
    return this.queries.listOrders(call.input);
  }

  @Operation(purchasingOperations.orderDetail)
  orderDetail(@Query() call: ReadCall<typeof purchasingOperations.orderDetail>) {
    return this.queries.orderDetail(call.input);
  }

  @Operation(purchasingOperations.expectedDeliveries)
  expectedDeliveries(@Query() call: ReadCall<typeof purchasingOperations.expectedDeliveries>) {
    return this.queries.expectedDeliveries(call.input);
  }

  @Operation(purchasingOperations.raiseOrder)
  raiseOrder(@Call() call: CommandCall) {
    return this.runner.run(raiseOrder, call);
  }

  @Operation(purchasingOperations.changeOrderLine)
  changeOrderLine(@Call() call: CommandCall) {
    return this.runner.run(changeOrderLine, call);
  }

  @Operation(purchasingOperations.cancelOrder)
  cancelOrder(@Call() call: CommandCall) {
    return this.runner.run(cancelOrder, call);
  }
}
