import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { changeExpected } from './change-expected.command.ts';
import { sendToVendor } from './send-to-vendor.command.ts';
import { takeBack } from './take-back.command.ts';
import { VendorQueries } from './vendors.queries.ts';

@Controller()
export class VendorsController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(VendorQueries) private readonly vendors: VendorQueries,
  ) {}

  @Operation(vendorOperations.sendToVendor)
  sendToVendor(@Call() call: CommandCall) {
    return this.runner.run(sendToVendor, call);
  }

  @Operation(vendorOperations.changeExpected)
  changeExpected(@Call() call: CommandCall) {
    return this.runner.run(changeExpected, call);
  }

  @Operation(vendorOperations.takeBack)
  takeBack(@Call() call: CommandCall) {
    return this.runner.run(takeBack, call);
  }

  @Operation(vendorOperations.listVendorOrders)
  listVendorOrders(@Query() call: ReadCall<typeof vendorOperations.listVendorOrders>) {
    return this.vendors.list(call.input);
  }

  @Operation(vendorOperations.outsideWork)
  outsideWork(@Query() _call: ReadCall<typeof vendorOperations.outsideWork>) {
    return this.vendors.outside();
  }
}
