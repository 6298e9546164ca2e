import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addSupplier } from './add-supplier.command.ts';
import { SupplierQueries } from './supplier.queries.ts';

@Controller()
export class SupplierController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(SupplierQueries) private readonly queries: SupplierQueries,
  ) {}

  @Operation(supplierOperations.listSuppliers)
  list(@Query() call: ReadCall<typeof supplierOperations.listSuppliers>) {
    return this.queries.list(call.input);
  }

  @Operation(supplierOperations.addSupplier)
  add(@Call() call: CommandCall) {
    return this.runner.run(addSupplier, call);
  }
}
