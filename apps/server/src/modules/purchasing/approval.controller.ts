import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { allowSupplier } from './allow-supplier.command.ts';
import { ApprovalQueries } from './approval.queries.ts';
import { approveSupplier } from './approve-supplier.command.ts';
import { setLeastOrder } from './set-least-order.command.ts';

@Controller()
export class ApprovalController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(ApprovalQueries) private readonly queries: ApprovalQueries,
  ) {}

  @Operation(approvalOperations.supplierDetail)
  supplierDetail(@Query() call: ReadCall<typeof approvalOperations.supplierDetail>) {
    return this.queries.supplierDetail(call.input);
  }

  @Operation(approvalOperations.supplierDeliveries)
  supplierDeliveries(@Query() call: ReadCall<typeof approvalOperations.supplierDeliveries>) {
    return this.queries.supplierDeliveries(call.input);
  }

  @Operation(approvalOperations.approveSupplier)
  approveSupplier(@Call() call: CommandCall) {
    return this.runner.run(approveSupplier, call);
  }

  @Operation(approvalOperations.allowSupplier)
  allowSupplier(@Call() call: CommandCall) {
    return this.runner.run(allowSupplier, call);
  }

  @Operation(approvalOperations.setLeastOrder)
  setLeastOrder(@Call() call: CommandCall) {
    return this.runner.run(setLeastOrder, call);
  }
}
