import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { Controller, Inject } from '@nestjs/common';
import { type CommandCall, CommandRunner } from '../../platform/command/runner.ts';
import { Call, Operation, Query, type ReadCall } from '../../platform/http/operation.ts';
import { addEquipment } from './add-equipment.command.ts';
import { answerDoubt } from './answer-doubt.command.ts';
import { changeEquipment } from './change-equipment.command.ts';
import { EquipmentQueries } from './equipment.queries.ts';
import { recordAddition } from './record-addition.command.ts';
import { recordReadings } from './record-readings.command.ts';

@Controller()
export class EquipmentController {
  constructor(
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(EquipmentQueries) private readonly queries: EquipmentQueries,
  ) {}

  @Operation(equipmentOperations.listEquipment)
  list(@Query() call: ReadCall<typeof equipmentOperations.listEquipment>) {
    return this.queries.list(call.input);
  }

  @Operation(equipmentOperations.equipmentLog)
  log(@Query() call: ReadCall<typeof equipmentOperations.equipmentLog>) {
    return this.queries.log(call.input.equipmentId);
  }

  @Operation(equipmentOperations.addEquipment)
  add(@Call() call: CommandCall) {
    return this.runner.run(addEquipment, call);
  }

  @Operation(equipmentOperations.changeEquipment)
  change(@Call() call: CommandCall) {
    return this.runner.run(changeEquipment, call);
  }

  @Operation(equipmentOperations.recordReadings)
  recordReadings(@Call() call: CommandCall) {
    return this.runner.run(recordReadings, call);
  }

  @Operation(equipmentOperations.recordAddition)
  recordAddition(@Call() call: CommandCall) {
    return this.runner.run(recordAddition, call);
  }

  @Operation(equipmentOperations.listDoubts)
  doubts(@Query() call: ReadCall<typeof equipmentOperations.listDoubts>) {
    return this.queries.doubts(call.input);
  }

  @Operation(equipmentOperations.answerDoubt)
  answerDoubt(@Call() call: CommandCall) {
    return this.runner.run(answerDoubt, call);
  }
}
