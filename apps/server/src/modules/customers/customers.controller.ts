import { customerOperations } from '@hubwright/contracts/customers/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addAircraft } from './add-aircraft.command.ts';
import { addCustomer } from './add-customer.command.ts';
import { changeCustomer } from './change-customer.command.ts';
import { CustomerQueries } from './customers.queries.ts';
import { recordReading } from './record-reading.command.ts';

@Controller()
export class CustomersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(CustomerQueries) private readonly queries: CustomerQueries,
  ) {}

  @Operation(customerOperations.listCustomers)
  list(@Query() call: ReadCall<typeof customerOperations.listCustomers>) {
    return this.queries.list(call.input);
  }

  @Operation(customerOperations.showCustomer)
  show(@Query() call: ReadCall<typeof customerOperations.showCustomer>) {
    return this.queries.show(call.input.customerId);
  }

  @Operation(customerOperations.listAircraft)
  listAircraft(@Query() call: ReadCall<typeof customerOperations.listAircraft>) {
    return this.queries.listAircraft(call.input);
  }

  @Operation(customerOperations.addCustomer)
  add(@Call() call: CommandCall) {
    return this.runner.run(addCustomer, call);
  }

  @Operation(customerOperations.changeCustomer)
  change(@Call() call: CommandCall) {
    return this.runner.run(changeCustomer, call);
  }

  @Operation(customerOperations.addAircraft)
  addAircraft(@Call() call: CommandCall) {
    return this.runner.run(addAircraft, call);
  }

  @Operation(customerOperations.recordReading)
  recordReading(@Call() call: CommandCall) {
    return this.runner.run(recordReading, call);
  }
}
