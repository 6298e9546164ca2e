import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { MeterQueries } from './meters.queries.ts';
import { recordMeterChange } from './record-meter-change.command.ts';
import { recordReadings } from './record-readings.command.ts';
import { strikeReading } from './strike-reading.command.ts';
import { withdrawMeterChange } from './withdraw-meter-change.command.ts';

@Controller()
export class MetersController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(MeterQueries) private readonly queries: MeterQueries,
  ) {}

  @Operation(meterOperations.metersOfAircraft)
  meters(@Query() call: ReadCall<typeof meterOperations.metersOfAircraft>) {
    return this.queries.ofAircraft(call.input.aircraftId);
  }

  @Operation(meterOperations.recordMeterChange)
  change(@Call() call: CommandCall) {
    return this.runner.run(recordMeterChange, call);
  }

  @Operation(meterOperations.withdrawMeterChange)
  withdraw(@Call() call: CommandCall) {
    return this.runner.run(withdrawMeterChange, call);
  }

  @Operation(meterOperations.strikeReading)
  strike(@Call() call: CommandCall) {
    return this.runner.run(strikeReading, call);
  }

  @Operation(readingsOperations.recordReadings)
  readings(@Call() call: CommandCall) {
    return this.runner.run(recordReadings, call);
  }
}
