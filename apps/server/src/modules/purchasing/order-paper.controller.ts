import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { confirmOrder } from './confirm-order.command.ts';
import { markSent } from './mark-order-sent.command.ts';
import { OrderPaperQueries } from './order-paper.queries.ts';

@Controller()
export class OrderPaperController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(OrderPaperQueries) private readonly queries: OrderPaperQueries,
  ) {}

  @Operation(orderOperations.orderRevisions)
  orderRevisions(@Query() call: ReadCall<typeof orderOperations.orderRevisions>) {
    return this.queries.revisions(call.input);
  }

  @Operation(orderOperations.orderPdf)
  orderPdf(@Query() call: ReadCall<typeof orderOperations.orderPdf>) {
    return this.queries.pdf(call.input);
  }

  @Operation(orderOperations.markSent)
  markSent(@Call() call: CommandCall) {
    return this.runner.run(markSent, call);
  }

  @Operation(orderOperations.confirmOrder)
  confirmOrder(@Call() call: CommandCall) {
    return this.runner.run(confirmOrder, call);
  }
}
